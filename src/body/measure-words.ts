import { formatAngle } from '../base/angles.ts'
import { formatLength } from '../base/format-length.ts'
import { MEASURES, type MeasureName } from './measure.ts'

/** A measure's value in words with its units: `15 1/2 in (394 mm)`, `22 deg`. */
export function measureText(name: MeasureName, value: number): string {
  if (!Number.isFinite(value)) return String(value)
  if (MEASURES[name].kind === 'angle') return formatAngle(value)
  return `${formatLength(value, 'in')} (${Math.round(value)} mm)`
}

/** The measures' names with the side they were taken on, for the reader of a finding: `left wrist girth`. */
export function sidedName(name: MeasureName, side: string | undefined): string {
  return side !== undefined && MEASURES[name].sided ? `${side} ${name}` : name
}

/** How to take the measures again. */
export function measureAgain(names: readonly MeasureName[]): string {
  return `measure again. ${names.map((name) => `${capital(name)}: ${lower(MEASURES[name].how)}`).join(' ')}`
}

function capital(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`
}

function lower(text: string): string {
  return `${text.charAt(0).toLowerCase()}${text.slice(1)}`
}
