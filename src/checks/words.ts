import { formatLength } from '../base/format-length.ts'
import type { LengthUnit } from '../base/units.ts'

/** A length in words for a finding: `9.5 mm`, or `3/8 in (9.5 mm)` where the file is in inches. */
export function sayLength(mm: number, units: LengthUnit): string {
  if (!Number.isFinite(mm)) return 'no length'
  return units === 'in' ? `${formatLength(mm, 'in')} (${formatLength(mm, 'mm')})` : formatLength(mm, units)
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
