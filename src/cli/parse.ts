import yargs from 'yargs'
import type { Command } from './commands/command.ts'
import { COMMANDS } from './commands/commands.ts'
import type { Typed } from './run.ts'

/** yargs drops a lone `-`, the name of standard input: it travels under this name, which no file can have. */
const STANDARD_INPUT = '\u0000'

/** A command with what was typed after it, a text that was asked for, or yargs's own words on what is wrong. */
export type Parsed =
  | { readonly command: Command; readonly typed: Typed }
  | { readonly text: string }
  | { readonly refused: string }

/** Reads the arguments after the program's name; runs nothing. */
export async function parse(args: readonly string[], version: string): Promise<Parsed> {
  let text: string | undefined
  const typed = args.map((arg) => (arg === '-' ? STANDARD_INPUT : arg))
  const parser = yargs()
    .scriptName('scye')
    .usage(
      '$0 COMMAND FILE…\n\nDrafts a bodice and a sleeve from a performer file, replays its fittings, checks and prints them.',
    )
    .parserConfiguration({
      'boolean-negation': false,
      'camel-case-expansion': false,
      'dot-notation': false,
      'parse-numbers': false,
      'parse-positional-numbers': false,
      'populate--': true,
    })
    .locale('en')
    .strict()
    .demandCommand(1, 'no command')
    .version(version)
    .help()
    .epilogue('Exit status: 0 fine, 1 findings of severity error, 2 input that cannot be used.')
    .wrap(Math.min(100, process.stdout.columns ?? (Number(process.env.COLUMNS) || 100)))
    .exitProcess(false)
    .fail((message, error) => {
      // yargs throws its own kind of error for some of what can be typed wrongly.
      if (error && error.name !== 'YError') throw error
      throw new UsageError(message ?? error.message)
    })
  for (const command of COMMANDS) {
    // Where yargs waits for options itself, it throws past its own handler.
    const more = args.includes(command.name) ? await command.moreOptions?.() : {}
    parser.command(
      `${command.name} ${command.takes}`,
      command.about,
      (y) => {
        for (const [name, word] of Object.entries(command.words)) y.positional(name, word)
        return y.options({ ...more, ...command.options })
      },
      (argv) => {
        // Thrown, not kept: after a handler that returns, yargs lays out the help that nobody asked for, which takes longer
        // than everything else it does.
        throw new Understood(command, restored(argv))
      },
    )
  }
  try {
    await parser.parseAsync(typed, {}, (_error, _argv, output) => {
      if (output) text = output
    })
  } catch (error) {
    if (error instanceof Understood) return error
    if (error instanceof UsageError) return { refused: error.message }
    throw error
  }
  return text === undefined ? { refused: 'no command' } : { text }
}

class UsageError extends Error {}

class Understood extends Error {
  constructor(
    readonly command: Command,
    readonly typed: Typed,
  ) {
    super(command.name)
  }
}

function restored(argv: Typed): Typed {
  const restore = (value: unknown): unknown =>
    value === STANDARD_INPUT ? '-' : Array.isArray(value) ? value.map(restore) : value
  return Object.fromEntries(Object.entries(argv).map(([key, value]) => [key, restore(value)]))
}
