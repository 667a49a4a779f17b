import { readFileSync } from 'node:fs'
import yargs, { type Argv } from 'yargs'
import { processTerminal, type Terminal } from './terminal.ts'

/** Exit statuses: 0 fine, 1 findings of severity error, 2 input that cannot be used. */
export type Status = 0 | 1 | 2

/** What was typed after a command: names of options without dashes, files under `files` and `--`. */
export type Typed = Readonly<Record<string, unknown>>

/** yargs drops a lone `-`, the name of standard input: it travels under this name, which no file can have. */
const STANDARD_INPUT = '\u0000'

const JSON_HELP = 'print one JSON document on stdout, everything else on stderr'

/** Runs `scye` with the arguments after its name; returns the exit status. Never throws for what a user typed. */
export async function run(args: readonly string[], terminal: Terminal = processTerminal()): Promise<Status> {
  let status: Status = 0
  const typed = args.map((arg) => (arg === '-' ? STANDARD_INPUT : arg))
  const parser = yargs()
    .scriptName('scye')
    .usage(
      '$0 COMMAND FILE…\n\nDrafts a bodice and a sleeve from a performer file, replays its fittings, checks and prints them.',
    )
    .command('draft <files..>', 'write the pieces, the report and the alteration slip', draftOptions, async (argv) => {
      const { draftCommand } = await import('./draft-command.ts')
      status = await draftCommand(restored(argv), terminal)
    })
    .command('check <files..>', 'walk every seam and check; writes nothing', checkOptions, async (argv) => {
      const { checkCommand } = await import('./check-command.ts')
      status = checkCommand(restored(argv), terminal)
    })
    .command(
      'compare <files..>',
      'lay two versions over each other, and say what moved by how much',
      compareOptions,
      async (argv) => {
        const { compareCommand } = await import('./compare-command.ts')
        status = await compareCommand(restored(argv), terminal)
      },
    )
    .command('view <files..>', 'write one page to look at and measure in, for a browser', viewOptions, async (argv) => {
      const { viewCommand } = await import('./view-command.ts')
      status = viewCommand(restored(argv), terminal)
    })
    .command('advise [words..]', 'from what is seen on the body to what to try', adviseOptions, async (argv) => {
      const { adviseCommand } = await import('./advise-command.ts')
      status = adviseCommand(restored(argv), terminal)
    })
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
    .version(version())
    .help()
    .epilogue('Exit status: 0 fine, 1 findings of severity error, 2 input that cannot be used.')
    .wrap(Math.min(100, process.stdout.columns ?? 100))
    .exitProcess(false)
    .fail((message, error) => {
      // yargs throws its own kind of error for some of what can be typed wrongly.
      if (error && error.name !== 'YError') throw error
      throw new UsageError(message ?? error.message)
    })
  try {
    await parser.parseAsync(typed, {}, (_error, _argv, output) => {
      if (output) terminal.out(`${output}\n`)
    })
    return status
  } catch (error) {
    if (!(error instanceof UsageError)) throw error
    const { reportUsage } = await import('./usage.ts')
    return reportUsage(error.message, args, terminal)
  }
}

class UsageError extends Error {}

function commonOptions(y: Argv) {
  return y
    .positional('files', { type: 'string', describe: 'performer files; - is standard input' })
    .option('json', { type: 'boolean', describe: JSON_HELP })
    .option('quiet', { alias: 'q', type: 'boolean', describe: 'print problems and findings of severity error only' })
    .option('no-true', { type: 'boolean', describe: 'leave the seams as the corrections made them, small corners too' })
}

function checkOptions(y: Argv) {
  return commonOptions(y).option('until', {
    type: 'string',
    requiresArg: true,
    describe: 'stop after the fitting with this label; none: before any',
  })
}

function withOutput(y: Argv) {
  return y.option('output', {
    alias: 'o',
    type: 'string',
    requiresArg: true,
    describe: 'folder to write to; by default NAME-pattern beside the file',
  })
}

function compareOptions(y: Argv) {
  return withOutput(commonOptions(y))
    .option('from', {
      type: 'string',
      requiresArg: true,
      describe: 'the version before: the label of the fitting it comes after; by default none, the draft',
    })
    .option('to', {
      type: 'string',
      requiresArg: true,
      describe: 'the version after; by default that of the last fitting',
    })
}

function viewOptions(y: Argv) {
  return withOutput(checkOptions(y))
}

function adviseOptions(y: Argv) {
  return y
    .positional('words', {
      type: 'string',
      describe: 'what is seen, in plain words, or the name of an entry; none: the list',
    })
    .option('place', {
      type: 'string',
      requiresArg: true,
      describe: 'only what is seen there: cap, underarm, elbow, shoulder, neck, front, back or waist',
    })
    .option('json', { type: 'boolean', describe: JSON_HELP })
}

function draftOptions(y: Argv) {
  return withOutput(checkOptions(y))
    .option('as', {
      type: 'string',
      requiresArg: true,
      describe: 'svg, pdf, dxf, json or several, as svg,pdf; by default svg, pdf and json',
    })
    .option('paper', {
      type: 'string',
      requiresArg: true,
      describe: 'of the tiles: a4, letter, a0, roll-36in, 610x914mm or several; by default letter for inches, else a4',
    })
    .option('overlap', {
      type: 'string',
      requiresArg: true,
      describe: 'how far pages are laid over each other, as 12mm or 1/2in; by default 10mm',
    })
    .option('square-measured', {
      type: 'string',
      requiresArg: true,
      describe:
        'sides of the 100 mm square as your printer made it, across and up, as 97.2x98.0: scales the tiles true',
    })
    .option('under', {
      type: 'string',
      requiresArg: true,
      describe: 'an earlier version to draw thin under this one: previous, draft, or the label of a fitting',
    })
    .option('mirror-pairs', { type: 'boolean', describe: 'draw a pair as its left and its right piece' })
    .option('projector', {
      type: 'boolean',
      describe: 'also write projector.svg and projector.pdf: one page, bold lines, a calibration grid',
    })
    .option('pieces', {
      type: 'string',
      requiresArg: true,
      describe: 'to print, as sleeve,bodice-back; by default all (pattern.json holds all)',
    })
}

function restored(argv: Typed): Typed {
  const restore = (value: unknown): unknown =>
    value === STANDARD_INPUT ? '-' : Array.isArray(value) ? value.map(restore) : value
  return Object.fromEntries(Object.entries(argv).map(([key, value]) => [key, restore(value)]))
}

function version(): string {
  const file = new URL('../package.json', import.meta.url)
  return (JSON.parse(readFileSync(file, 'utf8')) as { version: string }).version
}
