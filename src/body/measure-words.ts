import { formatAngle } from '../base/angles.ts'
import { capital } from '../base/capital.ts'
import { formatLength } from '../base/format-length.ts'
import { MEASURES, type MeasureName } from './measure.ts'

/** A measure's value in words with its unit, to a tenth: `393.7 mm`, `22 deg`. The reader's unit takes its place later. */
export function measureText(name: MeasureName, value: number): string {
  if (!Number.isFinite(value)) return String(value)
  return MEASURES[name].kind === 'angle' ? formatAngle(value) : formatLength(value, 'mm')
}

/** The same of a figure that nobody measured, to a whole millimetre. */
export function roundText(name: MeasureName, value: number): string {
  return measureText(name, MEASURES[name].kind === 'angle' ? value : Math.round(value))
}

/** The measures' names with the side they were taken on, for the reader of a finding: `left wrist girth`. */
export function sidedName(name: MeasureName, side: string | undefined): string {
  return side !== undefined && MEASURES[name].sided ? `${side} ${name}` : name
}

/** How to take the measures again. */
export function measureAgain(names: readonly MeasureName[]): string {
  return `measure again. ${names.map((name) => `${capital(name)}: ${lower(MEASURES[name].how)}`).join(' ')}`
}

function lower(text: string): string {
  return `${text.charAt(0).toLowerCase()}${text.slice(1)}`
}
