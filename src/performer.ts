import type { LengthUnit } from './base/units.ts'
import type { GivenMeasures } from './body/given.ts'
import type { MockUpAllowances } from './drafting/allowances.ts'
import type { Choices } from './drafting/choices.ts'
import type { FittingRecord } from './fitting/record.ts'

/** Everything a performer file says, read and checked for form: lengths in mm, angles in radians. */
export interface Performer {
  /** A role or a code, not a legal name. */
  readonly performer: string
  /** Name of the production. */
  readonly production?: string
  /** What a plain number in the file means, and what words speak in. */
  readonly units: LengthUnit
  /** Day when the measures were taken, `2026-10-02`. */
  readonly measured?: string
  /** The measures that were given, mm and radians. */
  readonly body: GivenMeasures
  /** What was asked of the draft, with the defaults for what was not. */
  readonly choices: Choices
  /** Seam allowances of the mock-ups, mm. */
  readonly allowances: MockUpAllowances
  /** The fittings, oldest first. */
  readonly fittings: readonly FittingRecord[]
}
