import type { Command } from './command.ts'

/** It completes all the commands, itself among them: they are asked for when it runs. */
export const completionOf = (commands: () => readonly Command[]): Command => ({
  name: 'completion',
  takes: '<shell>',
  about: 'print what a shell needs to complete commands, options and their values',
  words: { shell: { type: 'string', describe: 'bash, zsh or fish', complete: ['bash', 'zsh', 'fish'] } },
  options: {},
  load: async () => {
    const { completionCommand } = await import('../completion-command.ts')
    return (typed, terminal) => completionCommand(typed, commands(), terminal)
  },
})
