import { confirm, input, select } from '@inquirer/prompts'

export interface Choice<T> {
  readonly name: string
  readonly value: T
  readonly description?: string
}

/** The kinds of questions there are: choose one, write something, yes or no. */
export interface Prompts {
  select<T>(question: { readonly message: string; readonly choices: readonly Choice<T>[] }): Promise<T>
  input(question: {
    readonly message: string
    readonly default?: string
    /** True, or what is wrong in words. */
    readonly validate?: (text: string) => true | string
  }): Promise<string>
  confirm(question: { readonly message: string; readonly default: boolean }): Promise<boolean>
}

/** Questions on the process's own terminal. */
export function terminalPrompts(): Prompts {
  return {
    select: ({ message, choices }) => select({ message, choices: [...choices], pageSize: 12, loop: false }),
    input: (question) => input(question),
    confirm: (question) => confirm(question),
  }
}

/** Whether somebody left the questions with Ctrl-C. */
export function isLeft(error: unknown): boolean {
  return error instanceof Error && error.name === 'ExitPromptError'
}
