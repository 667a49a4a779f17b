import type { Pattern } from '../pattern/pattern.ts'
import { isCapJoin, lineOf, notchesOn } from '../pattern/sewn-line.ts'

/** A stretch of a cap and the stretch of the armscye that it is sewn to, mm. */
export interface CapSpan {
  readonly from: string
  readonly to: string
  readonly cap: number
  readonly armscye: number
}

/** Cap ease of one join: all of it, and what lies above the notches, mm. */
export interface CapEase {
  readonly join: string
  readonly total: number
  /** Absent where the join has no notch on both sides. */
  readonly aboveNotch?: number
  /** Underarm to notch to shoulder; in one where there is no notch on both sides. */
  readonly spans: readonly CapSpan[]
}

/**
 * The ease of every cap join that the piece takes part in as the sleeve, total and from its notch to the shoulder, and
 * the lengths between the notches, on stitching lines with darts closed.
 */
export function capEase(pattern: Pattern, pieceId: string): CapEase[] {
  return pattern.joins
    .filter((join) => isCapJoin(join) && join.a.some((part) => part.piece === pieceId))
    .map((join) => {
      const [cap, armscye] = [lineOf(pattern, join.a), lineOf(pattern, join.b)]
      const total = cap.length - armscye.length
      const notch = join.id.startsWith('front') ? 'front notch' : 'back notch'
      const [a, b] = [cap, armscye].map((line) => new Map(notchesOn(line)).get(notch))
      if (a === undefined || b === undefined) {
        const whole = { from: 'underarm', to: 'shoulder', cap: cap.length, armscye: armscye.length }
        return { join: join.id, total, spans: [whole] }
      }
      const spans = [
        { from: 'underarm', to: 'notch', cap: a, armscye: b },
        { from: 'notch', to: 'shoulder', cap: cap.length - a, armscye: armscye.length - b },
      ]
      return { join: join.id, total, aboveNotch: total - (a - b), spans }
    })
}
