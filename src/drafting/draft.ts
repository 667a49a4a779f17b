import type { Finding } from '../base/problem.ts'
import type { BodySide } from '../base/side.ts'
import type { MeasureName } from '../body/measure.ts'
import type { Pattern } from '../pattern/pattern.ts'

/** One asked measure beside what was drafted; mm or radians. */
export interface MeasureRow {
  /** Which measure. */
  readonly name: MeasureName
  /** `both` where the sides agree. */
  readonly side: BodySide | 'both'
  /** On the body. */
  readonly body: number
  /** What is added to it. */
  readonly ease: number
  /** Body and ease together. */
  readonly asked: number
  /** Measured again on the flat pattern, darts closed. */
  readonly drafted: number
  /** True where nobody took it. */
  readonly estimated: boolean
  /** Standard error of the estimate, where one is known. */
  readonly standardError?: number
  /** Which reading was drafted where there was a choice: `relaxed`, `flexed`, … */
  readonly from?: string
}

/** The pattern before any fitting, what it was drafted to, and what the draft noticed on the way. */
export interface Draft {
  /** Bodice front, bodice back and sleeve, and their joins. */
  readonly pattern: Pattern
  /** What was asked beside what the flat pattern has. */
  readonly measures: readonly MeasureRow[]
  /** What looks unlikely about the draft. */
  readonly findings: readonly Finding[]
}
