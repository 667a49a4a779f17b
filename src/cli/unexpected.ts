import type { Problem } from '../index.ts'
import type { Status } from './run.ts'
import { wrappedToWidth } from './table.ts'
import type { Terminal } from './terminal.ts'

/**
 * A fault of the program's own as a problem: what a person can do about it, and the trace only where SCYE_DEBUG is set,
 * for whoever mends it.
 */
export function unexpectedProblem(error: unknown, file?: string): Problem {
  const message = error instanceof Error ? error.message : String(error)
  return {
    code: 'unexpected',
    where: file === undefined ? {} : { file },
    actual: `a fault in scye itself: ${message.split('\n')[0] ?? ''}`,
    expected: 'a pattern, or a problem with a place and a remedy',
    hint: 'run it again with SCYE_DEBUG=1 before the command, and send what it prints, and what you typed, to the maintainers',
  }
}

/** The trace of a fault, where SCYE_DEBUG asks for it. */
export function traceOf(error: unknown): string | undefined {
  if (!process.env.SCYE_DEBUG) return undefined
  return error instanceof Error ? (error.stack ?? error.message) : String(error)
}

/** Says a fault calmly: one sentence and what to do, or problems/1; the trace only where it is asked for. */
export function reportUnexpected(error: unknown, args: readonly string[], terminal: Terminal): Status {
  const problem = unexpectedProblem(error)
  const trace = traceOf(error)
  if (trace !== undefined) terminal.err(`${trace}\n`)
  if (args.includes('--json')) {
    terminal.out(`${JSON.stringify({ scyewright: 'problems/1', problems: [problem] }, null, 2)}\n`)
  } else
    terminal.err(`${wrappedToWidth(`scye stopped: ${problem.actual}. To report it, ${problem.hint}.`).join('\n')}\n`)
  return 2
}
