import type { Join, JoinPart, Pattern } from '../pattern/pattern.ts'
import { pieceOf, seamLength, seamOf } from '../pattern/seam.ts'

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
    .filter((join) => /^(front|back) cap\b/.test(join.id) && join.a.some((part) => part.piece === pieceId))
    .map((join) => {
      const cap = sewnLength(pattern, join.a)
      const armscye = sewnLength(pattern, join.b)
      const total = cap - armscye
      const notch = join.id.startsWith('front') ? 'front notch' : 'back notch'
      const a = placeOnJoin(pattern, join.a, notch)
      const b = placeOnJoin(pattern, join.b, notch)
      if (a === undefined || b === undefined) {
        return { join: join.id, total, spans: [{ from: 'underarm', to: 'shoulder', cap, armscye }] }
      }
      const spans = [
        { from: 'underarm', to: 'notch', cap: a, armscye: b },
        { from: 'notch', to: 'shoulder', cap: cap - a, armscye: armscye - b },
      ]
      return { join: join.id, total, aboveNotch: total - (a - b), spans }
    })
}

function range(pattern: Pattern, part: JoinPart): { from: number; to: number } {
  const seam = seamOf(pieceOf(pattern, part.piece), part.seam)
  return { from: part.from ?? 0, to: part.to ?? seamLength(seam) }
}

function sewnLength(pattern: Pattern, parts: Join['a']): number {
  return parts.reduce((sum, part) => {
    const { from, to } = range(pattern, part)
    return sum + (to - from)
  }, 0)
}

/** mm from the start of the joined line to the notch of that name. */
function placeOnJoin(pattern: Pattern, parts: Join['a'], notchId: string): number | undefined {
  let base = 0
  for (const part of parts) {
    const { from, to } = range(pattern, part)
    const notch = pieceOf(pattern, part.piece).notches.find(
      (n) =>
        (n.id === notchId || n.id.startsWith(`${notchId} `)) &&
        n.seam === part.seam &&
        n.along >= from &&
        n.along <= to,
    )
    if (notch) return base + (part.reversed ? to - notch.along : notch.along - from)
    base += to - from
  }
  return undefined
}
