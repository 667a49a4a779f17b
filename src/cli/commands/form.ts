import type { Command } from './command.ts'
import { JSON_OPTION } from './shared-options.ts'

export const form: Command = {
  name: 'form',
  takes: '[files..]',
  about: 'print a measuring sheet and a fitting sheet to write on',
  words: {
    files: {
      type: 'string',
      describe: 'a performer file, which may be without its measures yet; - is standard input; none: blank sheets',
      complete: 'file',
    },
  },
  options: {
    ...JSON_OPTION,
    quiet: { alias: 'q', type: 'boolean', describe: 'print problems only' },
    output: {
      alias: 'o',
      type: 'string',
      requiresArg: true,
      describe: 'folder to write to; by default NAME-pattern beside the file, for blank sheets the one you are in',
      complete: 'folder',
    },
    as: {
      type: 'string',
      requiresArg: true,
      describe: 'pdf, svg (a file for each page) or both; by default pdf',
      complete: ['pdf', 'svg'],
    },
    paper: {
      type: 'string',
      requiresArg: true,
      describe: 'a4, letter, a0, roll-36in, 210x148mm or several; by default letter for inches, else a4',
      complete: 'paper',
    },
  },
  load: async () => (await import('../form-command.ts')).formCommand,
}
