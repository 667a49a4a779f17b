import type { Problem } from '../index.ts'

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
