import type { Pattern } from '../pattern/pattern.ts'
import type { Notch, Piece } from '../pattern/piece.ts'
import { pieceOf } from '../pattern/seam.ts'
import { isCapJoin, lineOf, notchesOn, placeAlongLine } from '../pattern/sewn-line.ts'
import { baseName } from '../pattern/side-names.ts'

/** A notch within this of its place is in its place, mm. */
const RIGHT = 1e-5

/**
 * The pattern with front and back notch of a sleeve as far from the underarm as those of the armscye, so that no ease
 * lies below them; the same object where they are so already.
 */
export function walkCapNotches(pattern: Pattern, id: string): Pattern {
  const piece = pieceOf(pattern, id)
  const notches = piece.notches.map((notch) => walkNotch(pattern, piece, notch))
  if (notches.every((notch, i) => notch === piece.notches[i])) return pattern
  return { ...pattern, pieces: pattern.pieces.map((p) => (p === piece ? { ...p, notches } : p)) }
}

function walkNotch(pattern: Pattern, piece: Piece, notch: Notch): Notch {
  const name = baseName(notch.id)
  if (name !== 'front notch' && name !== 'back notch') return notch
  for (const join of pattern.joins) {
    if (!join.a.some((part) => part.piece === piece.id) || !isCapJoin(join)) continue
    const at = new Map(notchesOn(lineOf(pattern, join.b))).get(name)
    const place = at === undefined ? undefined : placeAlongLine(lineOf(pattern, join.a), at)
    if (!place || place.seam !== notch.seam || place.piece !== piece.id) continue
    return Math.abs(place.along - notch.along) < RIGHT ? notch : { ...notch, along: place.along }
  }
  return notch
}
