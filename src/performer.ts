import type { GivenMeasures } from './body/given.ts'
import type { Choices } from './drafting/choices.ts'
import type { FittingRecord } from './fitting/record.ts'
import type { LengthUnit } from './base/units.ts'

/** Everything a performer file says, read and checked for form: lengths in mm, angles in radians. */
export interface Performer {
  /** A role or a code, not a legal name. */
  readonly performer: string
  readonly production?: string
  readonly units: LengthUnit
  readonly measured?: string
  readonly body: GivenMeasures
  readonly choices: Choices
  readonly allowances: Allowances
  readonly fittings: readonly FittingRecord[]
}

/** Seam allowances of mock-ups, mm: by seam id, `cap`, `underarm seam` or `default`; `byMockUp` overrides by number. */
export interface Allowances {
  readonly standard: Readonly<Record<string, number>>
  readonly byMockUp: Readonly<Record<number, Readonly<Record<string, number>>>>
}
