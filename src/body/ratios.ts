import type { MeasureName } from './measure.ts'

/** An estimate from one other measure where no survey has the column: plus + times · measure, mm. */
export interface Ratio {
  readonly target: MeasureName
  readonly from: MeasureName
  readonly times: number
  readonly plus: number
  readonly source: string
}

/**
 * Lines through the five bodies of ASTM D5585-95, sizes 6–14 (from memory: bust 34–39 in, upper arm 10 1/2–11 3/4 in);
 * within 1/8 in of each of them. Common practice; how far people lie from such a line is not published, so the standard
 * error is that of a like column of the survey (`RATIO_ERRORS`).
 */
const SOURCE = 'common practice (ASTM D5585-95, from memory; standard error by a like measure of ANSUR II)'

export const RATIOS: readonly Ratio[] = [
  // Cross-chest over cross-back: 0.930 to 0.936.
  { target: 'front width', from: 'back width', times: 0.933, plus: 0, source: SOURCE },
  // 9 5/8, 9 3/4, 9 7/8, 10 1/8, 10 3/8 in at upper arms of 10 1/2 … 11 3/4 in.
  { target: 'elbow girth', from: 'upper arm girth', times: 0.6, plus: 84.5, source: SOURCE },
  // 9 3/4, 10, 10 1/4, 10 5/8, 11 in at busts of 34 … 39 in.
  { target: 'neck to bust point', from: 'bust girth', times: 0.25, plus: 32, source: SOURCE },
  // 7 1/2, 7 3/4, 8, 8 1/4, 8 1/2 in at busts of 34 … 39 in.
  { target: 'bust point width', from: 'bust girth', times: 0.2, plus: 18, source: SOURCE },
]
