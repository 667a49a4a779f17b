import { formatLength } from '../base/format-length.ts'
import type { LengthUnit } from '../base/units.ts'

/** Half of the finest mark on a tape: what is less has no mark to say it with, mm. */
const UNMARKED = 25.4 / 32

/** A length in words for a finding: `9.5 mm`, or `3/8 in (9.5 mm)` where the file is in inches; too little for a tape in mm. */
export function sayLength(mm: number, units: LengthUnit): string {
  if (!Number.isFinite(mm)) return 'no length'
  if (units !== 'in') return formatLength(mm, units)
  const size = Math.abs(mm)
  if (size < 0.05) return formatLength(0, 'in')
  return size < UNMARKED ? formatLength(mm, 'mm') : `${formatLength(mm, 'in')} (${formatLength(mm, 'mm')})`
}

/** An ease in words, always with its sign: `+20.1 mm`. */
export function sayEase(mm: number, units: LengthUnit): string {
  const sign = Math.abs(mm) < 0.05 ? '' : mm < 0 ? '−' : '+'
  return `${sign}${sayLength(Math.abs(mm), units)}`
}

/** An angle in words, degrees: `92.5°`. */
export function sayAngle(radians: number): string {
  return `${((radians * 180) / Math.PI).toFixed(1)}°`
}
