import type { Command } from './command.ts'
import { FILES, MAKING, OUTPUT, UNTIL } from './shared-options.ts'

export const view: Command = {
  name: 'view',
  takes: '<files..>',
  about: 'write one page to look at and measure in, for a browser',
  words: FILES,
  options: { ...MAKING, ...UNTIL, ...OUTPUT },
  load: async () => (await import('../view-command.ts')).viewCommand,
}
