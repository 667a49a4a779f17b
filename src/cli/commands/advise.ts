import type { Command } from './command.ts'
import { JSON_OPTION } from './shared-options.ts'

export const advise: Command = {
  name: 'advise',
  takes: '[words..]',
  about: 'from what is seen on the body to what to try',
  words: {
    words: { type: 'string', describe: 'what is seen, in plain words, or the name of an entry; none: the list' },
  },
  options: {
    place: {
      type: 'string',
      requiresArg: true,
      describe: 'only what is seen there: cap, underarm, elbow, shoulder, neck, front, back or waist',
      complete: 'place',
    },
    ...JSON_OPTION,
    quiet: { alias: 'q', type: 'boolean', describe: 'print problems only' },
  },
  load: async () => (await import('../advise-command.ts')).adviseCommand,
}
