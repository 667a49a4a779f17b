import type { LengthUnit } from './base/units.ts'
import type { GivenMeasures } from './body/given.ts'
import type { MockUpAllowances } from './drafting/allowances.ts'
import type { Choices } from './drafting/choices.ts'
import type { FittingRecord } from './fitting/record.ts'

/** Everything a performer file says, read and checked for form: lengths in mm, angles in radians. */
export interface Performer {
  /** A role or a code, not a legal name. */
  readonly performer: string
  readonly production?: string
  readonly units: LengthUnit
  readonly measured?: string
  readonly body: GivenMeasures
  readonly choices: Choices
  readonly allowances: MockUpAllowances
  readonly fittings: readonly FittingRecord[]
}
