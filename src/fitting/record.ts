import type { Place } from '../base/problem.ts'

/** Which side of the body a correction is for; the wearer's left and right. */
export type CorrectionSide = 'left' | 'right' | 'both'

/** One correction as it was written down: what was done, where, and what was seen. */
export interface CorrectionRecord {
  /** Name of the correction, for example `let out`. */
  readonly do: string
  /** The wearer's side, or both. */
  readonly side: CorrectionSide
  /** What was seen on the body. */
  readonly seen?: string
  /** Why it no longer counts; a correction is never deleted. */
  readonly voided?: string
  /** The correction's own settings, read by its definition; lengths in mm, angles in radians. */
  readonly settings: unknown
  /** Where it stands in the performer file; empty for records that come from none. */
  readonly where: Place
  /** Where each setting's value stands, by its name, entries of lists as `at.2` from 1; problems point there. */
  readonly places?: Readonly<Record<string, Place>>
}

/** One fitting of one mock-up. */
export interface FittingRecord {
  /** Unique among a performer's fittings. */
  readonly label: string
  /** Day of the fitting, `2026-10-09`. */
  readonly date?: string
  /** Number of the mock-up that was on the body, from 1. */
  readonly mockUp: number
  /** Fitted on a stand-in or a dress form: reports say so. */
  readonly provisional?: string
  /** In the order in which they are made. */
  readonly corrections: readonly CorrectionRecord[]
  /** Where it stands in the performer file; empty for records that come from none. */
  readonly where: Place
}
