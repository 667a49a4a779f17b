import type { Command } from './command.ts'
import { FILES, MAKING, OUTPUT, SHEETS, UNTIL } from './shared-options.ts'

export const draft: Command = {
  name: 'draft',
  takes: '<files..>',
  about: 'write the pieces, the report and the alteration slip',
  words: FILES,
  options: {
    ...MAKING,
    ...UNTIL,
    ...OUTPUT,
    ...SHEETS,
    overlap: {
      type: 'string',
      requiresArg: true,
      describe: 'how far pages are laid over each other, as 12mm or 1/2in; by default 10mm',
    },
    'square-measured': {
      type: 'string',
      requiresArg: true,
      describe:
        'sides of the 100 mm square as your printer made it, across and up, as 97.2x98.0: scales the tiles true',
    },
    under: {
      type: 'string',
      requiresArg: true,
      describe: 'an earlier version to draw thin under this one: previous, draft, or the label of a fitting',
      complete: ['previous', 'draft'],
    },
    'mirror-pairs': { type: 'boolean', describe: 'draw a pair as its left and its right piece' },
    projector: {
      type: 'boolean',
      describe: 'also write projector.svg and projector.pdf: one page, bold lines, a calibration grid',
    },
    pieces: {
      type: 'string',
      requiresArg: true,
      describe: 'to print, as sleeve,bodice-back; by default all (pattern.json holds all)',
      complete: ['sleeve', 'bodice-front', 'bodice-back'],
    },
  },
  load: async () => (await import('../draft-command.ts')).draftCommand,
}
