import type { Prompts } from './prompts.ts'

/** Where a command reads and writes: the process's own streams, or a test's. */
export interface Terminal {
  /** What was asked for; nothing but one JSON document with --json. */
  readonly out: (text: string) => void
  /** Problems and remarks. */
  readonly err: (text: string) => void
  readonly styleOut: Style
  readonly styleErr: Style
  /** Asks who sits there; absent where nobody does. */
  readonly ask?: () => Promise<Prompts>
  /** Whether someone watches stderr, so that a progress bar is worth drawing. */
  readonly interactive?: boolean
}

export interface Style {
  readonly strong: (text: string) => string
  readonly quiet: (text: string) => string
  readonly bad: (text: string) => string
  readonly doubtful: (text: string) => string
  readonly good: (text: string) => string
}

const plain = (text: string) => text

const PLAIN: Style = { strong: plain, quiet: plain, bad: plain, doubtful: plain, good: plain }

const COLORED: Style = {
  strong: ansi(1, 22),
  quiet: ansi(2, 22),
  bad: ansi(31, 39),
  doubtful: ansi(33, 39),
  good: ansi(32, 39),
}

function ansi(on: number, off: number): (text: string) => string {
  return (text) => (text === '' ? '' : `\u001b[${on}m${text}\u001b[${off}m`)
}

/** The process's own terminal: colors where someone looks, or FORCE_COLOR asks, and NO_COLOR (no-color.org) is not set. */
export function processTerminal(): Terminal {
  // A reader that has seen enough (`scye check … | head`) is no failure.
  for (const stream of [process.stdout, process.stderr]) {
    stream.on('error', (error: NodeJS.ErrnoException) => {
      if (error.code !== 'EPIPE') throw error
      process.exit()
    })
  }
  return {
    out: (text) => process.stdout.write(text),
    err: (text) => process.stderr.write(text),
    styleOut: styleFor(process.stdout.isTTY === true),
    styleErr: styleFor(process.stderr.isTTY === true),
    ...(process.stdin.isTTY && process.stdout.isTTY
      ? { ask: async () => (await import('./prompts.ts')).terminalPrompts() }
      : {}),
    interactive: process.stderr.isTTY === true && process.env.TERM !== 'dumb',
  }
}

function styleFor(isTerminal: boolean): Style {
  const { NO_COLOR, FORCE_COLOR, TERM } = process.env
  if (NO_COLOR) return PLAIN
  if (FORCE_COLOR) return FORCE_COLOR === '0' || FORCE_COLOR === 'false' ? PLAIN : COLORED
  return TERM !== 'dumb' && isTerminal ? COLORED : PLAIN
}
