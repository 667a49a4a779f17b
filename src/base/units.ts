/** Units a length may be written in. */
export type LengthUnit = 'in' | 'cm' | 'mm'

/** The units, in the order in which they are offered. */
export const LENGTH_UNITS: readonly LengthUnit[] = ['in', 'cm', 'mm']

/** Exact by definition. */
export const MM_PER_INCH = 25.4

/** Millimetres in one of each, as exact fractions, so that a fraction of an inch is rounded once only. */
export const MM_IN_UNIT: Readonly<Record<LengthUnit, { readonly numerator: number; readonly denominator: number }>> = {
  in: { numerator: 127, denominator: 5 },
  cm: { numerator: 10, denominator: 1 },
  mm: { numerator: 1, denominator: 1 },
}
