import type { Command } from './command.ts'
import { JSON_OPTION } from './shared-options.ts'

export const begin: Command = {
  name: 'begin',
  takes: '<files..>',
  about: 'write a performer file to fill in',
  words: {
    files: {
      type: 'string',
      describe: 'the file to write, which must not be there yet; - prints it',
      complete: 'file',
    },
  },
  options: {
    units: { type: 'string', requiresArg: true, describe: 'in, cm or mm; by default in, or those of --from' },
    from: {
      type: 'string',
      requiresArg: true,
      describe: 'a performer file to take production, draft choices and allowances from, but nothing of its body',
    },
    ...JSON_OPTION,
    quiet: { alias: 'q', type: 'boolean', describe: 'print problems only' },
  },
  load: async () => (await import('../begin-command.ts')).beginCommand,
}
