import type { Options, PositionalOptions } from 'yargs'
import type { Status, Typed } from '../run.ts'
import type { Terminal } from '../terminal.ts'

/** What a shell offers for a word: a file, a folder, names of one kind that the library knows, or these words. */
export type Completion = 'file' | 'folder' | 'format' | 'paper' | 'place' | readonly string[]

export type CommandOption = Options & { readonly complete?: Completion }

export type CommandWord = PositionalOptions & { readonly complete?: Completion }

/** A command as help, parsing and shell completion know it; what it does is loaded when it is asked for. */
export interface Command {
  readonly name: string
  /** What stands after the name: `<files..>` one or more, `[words..]` any number. */
  readonly takes: string
  readonly about: string
  readonly words: Readonly<Record<string, CommandWord>>
  readonly options: Readonly<Record<string, CommandOption>>
  /** Options that the library names, such as the settings of corrections: loaded for this command alone. */
  readonly moreOptions?: () => Promise<Readonly<Record<string, CommandOption>>>
  readonly load: () => Promise<(typed: Typed, terminal: Terminal) => Status | Promise<Status>>
}
