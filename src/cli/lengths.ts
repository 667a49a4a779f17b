import { formatLength, type LengthUnit } from '../index.ts'

/** What the numbers of a table are in, for its head. */
export const UNIT_WORDS: Readonly<Record<LengthUnit, string>> = {
  in: 'inches, to 1/16',
  cm: 'centimeters',
  mm: 'millimeters',
}

/** A length without its unit, for a column of them: `15 1/2`, `39.37`, `393.7`. */
export function bare(mm: number, units: LengthUnit): string {
  if (units === 'in') return formatLength(mm, units).replace(/ in$/, '')
  return units === 'cm' ? (mm / 10).toFixed(2) : mm.toFixed(1)
}

/** An ease without its unit, always with its sign. */
export function bareEase(mm: number, units: LengthUnit): string {
  const size = bare(Math.abs(mm), units)
  return /[1-9]/.test(size) ? `${mm < 0 ? '−' : '+'}${size}` : size
}
