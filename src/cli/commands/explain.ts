import type { Command } from './command.ts'
import { FILES, JSON_OPTION, OUTPUT } from './shared-options.ts'

export const explain: Command = {
  name: 'explain',
  takes: '<files..>',
  about: 'write the draft as numbered steps, to draw it by hand with ruler, set square and curve',
  words: FILES,
  options: {
    ...OUTPUT,
    as: {
      type: 'string',
      requiresArg: true,
      describe: 'html, pdf or both, as html,pdf; by default both',
      complete: ['html', 'pdf'],
    },
    paper: {
      type: 'string',
      requiresArg: true,
      describe: 'of the pages of the PDF: a4, letter, 210x297mm; by default letter for inches, else a4',
      complete: 'paper',
    },
    pieces: {
      alias: 'piece',
      type: 'string',
      requiresArg: true,
      describe: 'to explain, as sleeve or sleeve,bodice-back; by default all',
      complete: ['sleeve', 'bodice-front', 'bodice-back'],
    },
    ...JSON_OPTION,
    quiet: { alias: 'q', type: 'boolean', describe: 'print problems only' },
  },
  load: async () => (await import('../explain-command.ts')).explainCommand,
}
