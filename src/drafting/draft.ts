import type { Finding } from '../base/problem.ts'
import type { BodySide } from '../base/side.ts'
import type { MeasureName } from '../body/measure.ts'
import type { Pattern } from '../pattern/pattern.ts'

/** One asked measure beside what was drafted; mm or radians. */
export interface MeasureRow {
  readonly name: MeasureName
  /** `both` where the sides agree. */
  readonly side: BodySide | 'both'
  readonly body: number
  readonly ease: number
  readonly asked: number
  /** Measured again on the flat pattern, darts closed. */
  readonly drafted: number
  readonly estimated: boolean
  readonly standardError?: number
  /** Which reading was drafted where there was a choice: `relaxed`, `flexed`, … */
  readonly from?: string
}

/** The pattern before any fitting, what it was drafted to, and what the draft noticed on the way. */
export interface Draft {
  readonly pattern: Pattern
  readonly measures: readonly MeasureRow[]
  readonly findings: readonly Finding[]
}
