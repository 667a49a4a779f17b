import type { Command } from './command.ts'

export const completion: Command = {
  name: 'completion',
  takes: '<shell>',
  about: 'print what a shell needs to complete commands, options and their values',
  words: { shell: { type: 'string', describe: 'bash, zsh or fish', complete: ['bash', 'zsh', 'fish'] } },
  options: {},
  load: async () => (await import('../completion-command.ts')).completionCommand,
}
