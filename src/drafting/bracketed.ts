import type { Pair } from './newton.ts'

export interface BracketOptions {
  readonly low: number
  readonly high: number
  /** 1 where both residuals rise with the first unknown, −1 where they fall. */
  readonly rising: 1 | -1
  /** The second unknown lies between −most and most. */
  readonly most: number
  /** Both residuals are at most this at the solution. */
  readonly accuracy: number
}

/**
 * A zero of two functions by nested bisection, for where Newton does not get there: for each value of the first
 * unknown the second one that makes the residuals equal, then the value at which they are none. The second residual
 * less the first must rise with the second unknown. Undefined where low and high do not enclose a zero.
 */
export function bracketed(
  residuals: (value: number, shift: number) => Pair | undefined,
  { low, high, rising, most, accuracy }: BracketOptions,
): Pair | undefined {
  const shiftFor = (value: number): number =>
    bisect((shift) => difference(residuals(value, shift)), -most + 1e-6, most - 1e-6)
  const total = (value: number) => {
    const f = residuals(value, shiftFor(value))
    return f ? rising * (f[0] + f[1]) : Number.NaN
  }
  if (!(total(low) < 0 && total(high) > 0)) return undefined
  const value = bisect(total, low, high)
  const shift = shiftFor(value)
  const f = residuals(value, shift)
  return f && Math.max(Math.abs(f[0]), Math.abs(f[1])) <= accuracy ? [value, shift] : undefined
}

function difference(f: Pair | undefined): number {
  return f ? f[1] - f[0] : Number.NaN
}

/** A zero of an increasing function between low and high, to rounding. */
function bisect(f: (x: number) => number, low: number, high: number): number {
  let a = low
  let b = high
  for (let i = 0; i < 100; i++) {
    const middle = (a + b) / 2
    if (middle === a || middle === b) break
    if (f(middle) > 0) b = middle
    else a = middle
  }
  return (a + b) / 2
}
