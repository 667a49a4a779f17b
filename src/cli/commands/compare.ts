import type { Command } from './command.ts'
import { FILES, MAKING, OUTPUT } from './shared-options.ts'

export const compare: Command = {
  name: 'compare',
  takes: '<files..>',
  about: 'lay two versions over each other, and say what moved by how much',
  words: FILES,
  options: {
    ...MAKING,
    ...OUTPUT,
    from: {
      type: 'string',
      requiresArg: true,
      describe: 'the version before: the label of the fitting it comes after; by default draft (none is the same)',
    },
    to: {
      type: 'string',
      requiresArg: true,
      describe: 'the version after; by default that of the last fitting',
    },
  },
  load: async () => (await import('../compare-command.ts')).compareCommand,
}
