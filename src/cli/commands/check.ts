import type { Command } from './command.ts'
import { FILES, MAKING, UNTIL } from './shared-options.ts'

export const check: Command = {
  name: 'check',
  takes: '<files..>',
  about: 'walk every seam and check; writes nothing',
  words: FILES,
  options: { ...MAKING, ...UNTIL },
  load: async () => (await import('../check-command.ts')).checkCommand,
}
