import type { Join, JoinPart, Pattern } from '../pattern/pattern.ts'
import type { Notch } from '../pattern/piece.ts'
import { pieceOf } from '../pattern/seam.ts'
import { baseName } from '../pattern/side-names.ts'
import { type CapLine, capLine } from './cap-line.ts'

/**
 * Where joins and the shoulder notch divide the cap near the crown, they keep their distance from it: a turn of the
 * sleeve stays the same turn.
 */
export function holdMatchPoints(before: Pattern, after: Pattern, cap: CapLine): Pattern {
  const now = capLine(pieceOf(after, cap.piece.id))
  const held = (seam: string, old: number, mapped: number): number => {
    const index = cap.halves.findIndex((half) => half.seam.id === seam)
    const half = cap.halves[index]
    const next = now.halves[index]
    if (!half || !next) return mapped
    const fromCrown = half.runsUp ? half.length - old : old
    if (fromCrown > half.length / 2) return mapped
    return half.runsUp ? next.length - fromCrown : fromCrown
  }
  const part = (old: JoinPart, mapped: JoinPart): JoinPart => {
    if (mapped.piece !== cap.piece.id) return mapped
    return {
      ...mapped,
      ...(old.from === undefined || mapped.from === undefined ? {} : { from: held(old.seam, old.from, mapped.from) }),
      ...(old.to === undefined || mapped.to === undefined ? {} : { to: held(old.seam, old.to, mapped.to) }),
    }
  }
  const joins = after.joins.map((join, i) => {
    const old = before.joins[i] as Join
    if (!join.a.some(({ piece, from, to }) => piece === cap.piece.id && (from ?? to) !== undefined)) return join
    return { ...join, a: join.a.map((p, k) => part(old.a[k] as JoinPart, p)) }
  })
  const piece = pieceOf(after, cap.piece.id)
  const notches = piece.notches.map((notch, i) => {
    if (baseName(notch.id) !== 'shoulder notch') return notch
    const along = held(notch.seam, (cap.piece.notches[i] as Notch).along, notch.along)
    return along === notch.along ? notch : { ...notch, along }
  })
  return { pieces: after.pieces.map((p) => (p === piece ? { ...p, notches } : p)), joins }
}
