import { nearestName } from '../base/names.ts'
import { failure, type Result, success } from '../base/result.ts'
import type { PatternVersion } from './replay.ts'

/**
 * The version to compare the last one with: `previous` for the one before it, `draft` or `none`, or the label of an earlier
 * fitting. Problem: no such version before the last.
 */
export function versionUnder(versions: readonly PatternVersion[], name: string): Result<PatternVersion> {
  const earlier = versions.slice(0, -1)
  const found =
    earlier.findLast((version) => version.label === name) ??
    (name === 'previous' ? earlier.at(-1) : name === 'none' ? earlier[0] : undefined)
  if (found) return success(found)
  const labels = earlier.map((version) => version.label)
  const near = nearestName(name, labels)
  return failure({
    code: 'no-earlier-version',
    where: { field: '--under' },
    actual: `"${name}"`,
    expected:
      labels.length === 0 ? 'a fitting to compare with the draft' : `one of ${['previous', ...labels].join(', ')}`,
    hint:
      labels.length === 0
        ? 'this is the draft, and nothing was before it: leave --under out'
        : near === undefined
          ? 'name an earlier version: draft, or the label of a fitting before the last'
          : `did you mean "${near}"?`,
  })
}
