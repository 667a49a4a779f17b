import type { Command } from './command.ts'
import { MAKING, SHEETS, UNTIL } from './shared-options.ts'

export const cast: Command = {
  name: 'cast',
  takes: '<folder>',
  about: 'draft and check every performer file of a folder, with one summary and an index page',
  words: {
    folder: { type: 'string', describe: 'folder whose .yaml and .yml files are drafted', complete: 'folder' },
  },
  options: {
    ...MAKING,
    ...UNTIL,
    output: {
      alias: 'o',
      type: 'string',
      requiresArg: true,
      describe:
        'folder to write to, a folder in it for each file; by default NAME-pattern beside each, the index in cast-index',
      complete: 'folder',
    },
    ...SHEETS,
    design: {
      type: 'string',
      requiresArg: true,
      describe: 'performer file whose draft choices and mock-up allowances all are drafted with; nothing of its body',
      complete: 'file',
    },
    jobs: {
      type: 'string',
      requiresArg: true,
      describe: 'how many files at a time; by default as many as there are processor cores',
    },
  },
  load: async () => (await import('../cast-command.ts')).castCommand,
}
