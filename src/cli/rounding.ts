import type { LengthUnit } from '../index.ts'

/** The finest step in which tables show a length, mm: 1/16 in, else 0.1 mm. */
const STEP: Readonly<Record<LengthUnit, number>> = { in: 25.4 / 16, cm: 0.1, mm: 0.1 }

/** A length as a table shows it, mm. */
export function rounded(mm: number, units: LengthUnit): number {
  return Math.round(mm / STEP[units]) * STEP[units]
}

/**
 * Parts rounded so that they add up to `rounded` of their sum: each to the step below it or above it, those above that
 * have most left over (largest remainder). mm.
 */
export function roundedParts(parts: readonly number[], units: LengthUnit): number[] {
  const step = STEP[units]
  const below = parts.map((mm) => Math.floor(mm / step))
  const sum = (numbers: readonly number[]) => numbers.reduce((a, b) => a + b, 0)
  const missing = Math.round(sum(parts) / step) - sum(below)
  const byRest = parts.map((mm, i) => ({ i, rest: mm / step - (below[i] as number) })).sort((a, b) => b.rest - a.rest)
  const up = new Set(byRest.slice(0, missing).map(({ i }) => i))
  return below.map((steps, i) => (steps + (up.has(i) ? 1 : 0)) * step)
}
