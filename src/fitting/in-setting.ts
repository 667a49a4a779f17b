import type { Problem } from '../base/problem.ts'
import type { Result } from '../base/result.ts'

/**
 * The result with its problems laid to one setting of the correction: `by`, `taper to`, or one entry of a list such as
 * `at.2`, counted from 1. `replay` turns that into line and column of the value. Problems that name a setting already
 * keep it.
 */
export function inSetting<T>(setting: string, result: Result<T>): Result<T> {
  return result.ok ? result : { ok: false, problems: result.problems.map((problem) => ofSetting(setting, problem)) }
}

/** The problem laid to one setting of the correction; see `inSetting`. */
function ofSetting(setting: string, problem: Problem): Problem {
  return problem.where.field === undefined ? { ...problem, where: { ...problem.where, field: setting } } : problem
}
