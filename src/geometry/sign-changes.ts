import { roots } from './roots.ts'

// Relative size below which the sign of a polynomial cannot be told.
const ROUNDING = 1e-12

/**
 * The parameters strictly inside (0, 1) where the polynomial p[0] + p[1]·t + … changes sign, in rising order. A double
 * root (a touch, a handle on its end point) splits into two by rounding, with nothing to see between them: none.
 */
export function signChanges(p: readonly number[]): number[] {
  const zero = ROUNDING * p.reduce((total, coefficient) => total + Math.abs(coefficient), 0)
  const stops = [0, ...roots(p).filter((t) => t > 0 && t < 1), 1]
  const found: number[] = []
  let before = 0
  for (let k = 1; k < stops.length; k++) {
    const from = stops[k - 1] as number
    const here = valueAt(p, (from + (stops[k] as number)) / 2)
    if (!(Math.abs(here) > zero)) continue
    if (before !== 0 && here > 0 !== before > 0) found.push(from)
    before = here
  }
  return found
}

/** The value of the polynomial at t. */
export function valueAt(p: readonly number[], t: number): number {
  let value = 0
  for (let k = p.length - 1; k >= 0; k--) value = value * t + (p[k] as number)
  return value
}
