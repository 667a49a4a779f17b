import { offset } from '../geometry/offset.ts'
import type { Path } from '../geometry/path.ts'
import type { Line, Notch, Piece, Seam } from './piece.ts'
import { seamLength, seamSpan } from './seam.ts'

/** Distances of the two rows outside the stitching line, mm: 1/8 and 1/4 in, drawn up together (common practice). */
export const EASE_STITCHING = [3, 6] as const

/**
 * The two rows of ease stitching in the allowance of every cap of a piece, from the front notch over the shoulder to
 * the back notch's mark nearer the shoulder, where all the ease is worked in. Derived from the present seams and
 * notches, so that it follows every correction. None where the piece has no cap, or its allowance has no room.
 */
export function easeStitching(piece: Piece): Line[] {
  const front = piece.seams.find((seam) => seam.id === 'front cap')
  const back = piece.seams.find((seam) => seam.id === 'back cap')
  if (!front || !back) return []
  const room = Math.min(front.allowance, back.allowance)
  const spans = inOutlineOrder(piece, front, back).flatMap((seam) => aboveNotch(piece, seam))
  if (spans.length === 0) return []
  return EASE_STITCHING.filter((row) => row < room).map((row, k) => ({
    id: `ease stitching ${k + 1}`,
    path: offset(spans, row),
  }))
}

function inOutlineOrder(piece: Piece, front: Seam, back: Seam): Seam[] {
  const first = piece.seams.indexOf(front)
  return piece.seams[(first + 1) % piece.seams.length] === back ? [front, back] : [back, front]
}

/** The part of one half of the cap between its notch and the crown; the crown is where the halves meet. */
function aboveNotch(piece: Piece, seam: Seam): Path {
  const notch = piece.notches.find((n) => n.seam === seam.id && /^(front|back) notch$/.test(n.id))
  if (!notch) return []
  const at = lastMark(notch)
  const length = seamLength(seam)
  const underarm = piece.landmarks.find((l) => l.id === 'underarm' && 'seam' in l && l.seam === seam.id)
  const fromUnderarm = underarm && 'along' in underarm ? underarm.along < length / 2 : true
  return (fromUnderarm ? seamSpan(seam, at, length) : seamSpan(seam, 0, at)).flat()
}

function lastMark(notch: Notch): number {
  return notch.along + (notch.marks - 1) * (notch.step ?? 0)
}
