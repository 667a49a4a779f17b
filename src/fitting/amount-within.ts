import type { Problem } from '../base/problem.ts'

export interface AmountLimit {
  /** What the amount is of, for example `lengthen`. */
  readonly correction: string
  readonly most: number
  /** Why no more, in words that end a sentence. */
  readonly why: string
  /** The setting that says the amount; `by` when absent. */
  readonly field?: string
}

/** The problem of an amount that is larger than a correction can sensibly be, mm; undefined where it is not. */
export function amountWithin(by: number, { correction, most, why, field = 'by' }: AmountLimit): Problem | undefined {
  if (by <= most + 1e-9) return undefined
  return {
    code: 'amount-too-large',
    where: { field },
    actual: `${correction} by ${by.toFixed(1)} mm`,
    expected: `at most ${most.toFixed(0)} mm: ${why}`,
    hint: 'look at the unit it was written in, or do it over two mock-ups',
  }
}
