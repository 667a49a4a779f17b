import type { Problem } from './problem.ts'

/**
 * Either a value or the problems that stood in its way. Bad input comes back as problems; only misuse of
 * the library (a programmer's mistake) throws.
 */
export type Result<T> = Success<T> | Failure

/** A result that is there. */
export interface Success<T> {
  /** Tells it from a failure. */
  readonly ok: true
  /** What was asked for. */
  readonly value: T
}

/** A result that could not be had, and every reason why. */
export interface Failure {
  /** Tells it from a success. */
  readonly ok: false
  /** At least one. */
  readonly problems: readonly Problem[]
}

/** Wraps a value as a success. */
export function success<T>(value: T): Success<T> {
  return { ok: true, value }
}

/** Wraps one or more problems as a failure. Throws when given none: a failure must say why. */
export function failure(...problems: readonly Problem[]): Failure {
  if (problems.length === 0) throw new TypeError('a failure needs at least one problem')
  return { ok: false, problems }
}

/** All values, or all the problems of all that failed: a draper sees every problem at once. */
export function collect<T>(results: readonly Result<T>[]): Result<T[]> {
  const values: T[] = []
  const problems: Problem[] = []
  for (const result of results) {
    if (result.ok) values.push(result.value)
    else problems.push(...result.problems)
  }
  return problems.length > 0 ? failure(...problems) : success(values)
}
