import { readFileSync } from 'node:fs'
import { processTerminal, type Terminal } from './terminal.ts'

/** Exit statuses: 0 fine, 1 findings of severity error, 2 input that cannot be used. */
export type Status = 0 | 1 | 2

/** What was typed after a command: names of options without dashes, files under `files` and `--`. */
export type Typed = Readonly<Record<string, unknown>>

/**
 * Runs `scye` with the arguments after its name; returns the exit status. Never throws: a fault of its own is said in a
 * sentence, with its trace where SCYE_DEBUG is set, and ends like input that cannot be used.
 */
export async function run(args: readonly string[], terminal: Terminal = processTerminal()): Promise<Status> {
  try {
    return await runCommand(args, terminal)
  } catch (error) {
    const { reportUnexpected } = await import('./unexpected.ts')
    return reportUnexpected(error, args, terminal)
  }
}

async function runCommand(args: readonly string[], terminal: Terminal): Promise<Status> {
  // Nothing is loaded for the one question that scripts ask first.
  if (args.length === 1 && args[0] === '--version') {
    terminal.out(`${version()}\n`)
    return 0
  }
  const { parse } = await import('./parse.ts')
  const parsed = await parse(args, version())
  if ('text' in parsed) {
    terminal.out(`${parsed.text}\n`)
    return 0
  }
  if ('refused' in parsed) {
    const { reportUsage } = await import('./usage.ts')
    return reportUsage(parsed.refused, args, terminal)
  }
  const command = await parsed.command.load()
  return command(parsed.typed, terminal)
}

function version(): string {
  const file = new URL('../package.json', import.meta.url)
  return (JSON.parse(readFileSync(file, 'utf8')) as { version: string }).version
}
