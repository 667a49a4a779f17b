import type { Pattern } from '../pattern/pattern.ts'
import { isCapJoin, lineOf, notchesOn } from '../pattern/sewn-line.ts'

/** Cap ease of one join: all of it, and what lies above the notches, mm. */
export interface CapEase {
  readonly join: string
  readonly total: number
  /** Absent where the join has no notch on both sides. */
  readonly aboveNotch?: number
}

/**
 * The ease of every cap join that the piece takes part in as the sleeve, total and from its notch to the
 * shoulder, on stitching lines with darts closed.
 */
export function capEase(pattern: Pattern, pieceId: string): CapEase[] {
  return pattern.joins
    .filter((join) => isCapJoin(join) && join.a.some((part) => part.piece === pieceId))
    .map((join) => {
      const [a, b] = [lineOf(pattern, join.a), lineOf(pattern, join.b)]
      const total = a.length - b.length
      const notch = join.id.startsWith('front') ? 'front notch' : 'back notch'
      const [onA, onB] = [a, b].map((line) => new Map(notchesOn(line)).get(notch))
      if (onA === undefined || onB === undefined) return { join: join.id, total }
      return { join: join.id, total, aboveNotch: total - (onA - onB) }
    })
}
