import type { Finding } from '../base/problem.ts'
import { READ_ONCE } from '../base/read-once.ts'
import { makeReaders } from '../base/readers.ts'
import type { Result } from '../base/result.ts'
import { CORRECTIONS, correctionNamed } from '../fitting/corrections.ts'
import { type OperationResult, runOperations } from '../fitting/operation.ts'
import { IDENTITY } from '../fitting/position-map.ts'
import type { CorrectionSide } from '../fitting/record.ts'
import type { Check, CheckContext, Found, WrittenCorrection } from './check.ts'
import { presentMeasures } from './present-measures.ts'
import { roundUp } from './round-up.ts'

/** The finding as others see it, with nothing tried. */
export function withoutTries({ tries: _, ...finding }: Found): Finding {
  return finding
}

/**
 * The finding as others see it, with `mend` where one of the corrections that its check would try mends it: each is
 * read as from a performer file, made on the present pattern, and taken only when the checks then no longer find this
 * and find no error that was not there. Its amount is rounded up to a mark of
 * the tape where that mends it too. Never throws: what cannot be made mends nothing.
 */
export function withMend(
  found: Found,
  all: readonly Found[],
  context: CheckContext,
  checks: readonly Check[],
): Finding {
  const { tries = [], ...finding } = found
  const errors = new Set(all.filter(({ severity }) => severity === 'error').map(keyOf))
  const mends = (written: WrittenCorrection) => {
    const made = make(written, context)
    if (!made.ok) return false
    const { pattern } = made.value
    const after = { ...context, pattern, measures: presentMeasures(context.measures, pattern) }
    return checks.every((check) =>
      check.run(after).every((other) => {
        if (isSame(other, finding)) return false
        return other.severity !== 'error' || errors.has(keyOf(other))
      }),
    )
  }
  // The only one is tried as it goes on the tape first: that mends as a rule, and its exact amount need not be tried.
  const only = tries.length === 1 ? tries[0] : undefined
  const exact = only ?? tries.find(mends)
  if (!exact) return finding
  const onTape = roundUp(exact, context.units)
  if (onTape.by !== exact.by && mends(onTape)) return { ...finding, mend: snippet(onTape) }
  return only && !mends(only) ? finding : { ...finding, mend: snippet(exact) }
}

/** The same thing found again: also of one side of a piece that has been taken apart meanwhile. */
function isSame(other: Finding, { code, where }: Finding): boolean {
  if (other.code !== code) return false
  const within = (now: string | undefined, was: string | undefined) =>
    was === undefined || now?.startsWith(was) === true
  return (
    within(other.where.join, where.join) &&
    within(other.where.piece, where.piece) &&
    within(other.where.seam, where.seam) &&
    other.where.field === where.field
  )
}

function keyOf({ code, where }: Finding): string {
  return [code, where.join, where.piece, where.seam, where.field].join('|')
}

function make(
  { do: name, side = 'both', ...settings }: WrittenCorrection,
  { pattern }: CheckContext,
): Result<OperationResult> {
  const correction = correctionNamed(name, CORRECTIONS)
  if (!correction) throw new RangeError(`no correction "${name}"`)
  const read = correction.settings(makeReaders('mm')).parse(settings, READ_ONCE)
  const operations = correction.compile({ worn: pattern, side: side as CorrectionSide }, read)
  return operations.ok ? runOperations(pattern, IDENTITY, operations.value) : operations
}

/** As it stands in the list of corrections of a performer file. */
function snippet(written: WrittenCorrection): string {
  return Object.entries(written)
    .map(([key, value], i) => `${i === 0 ? '- ' : '  '}${key}: ${value}`)
    .join('\n')
}
