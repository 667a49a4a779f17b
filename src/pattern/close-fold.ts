import type { BodySide } from '../base/side.ts'
import { line as straight } from '../geometry/cubic.ts'
import { SAME_POINT } from '../geometry/defaults.ts'
import { distance } from '../geometry/point.ts'
import type { Landmark, Line, Piece } from './piece.ts'
import { seamEnd, seamStart } from './seam.ts'
import { baseName, namedSide } from './side-names.ts'

/**
 * A whole piece folded along its center line again: the half of one side of the wearer, its names without the side,
 * and the fold as a seam without allowance. The other half is let go; whether it is the same is the caller's to know.
 * Undoes `openFold`. Throws when the seams of that side do not begin and end on the center line.
 */
export function closeFold(piece: Piece, drawn: BodySide): Piece {
  const own = <T extends { readonly id: string }>(item: T): boolean => namedSide(item.id) === drawn
  const plain = <T extends { readonly id: string }>(item: T): T => ({ ...item, id: baseName(item.id) })
  const onSeam = <T extends { readonly id: string; readonly seam: string }>(item: T): T => ({
    ...plain(item),
    seam: baseName(item.seam),
  })
  const half = inOrder(piece, drawn).map(plain)
  const [first, last] = [half[0], half[half.length - 1]]
  if (!first || !last) throw new RangeError(`${piece.id} has no seams of the ${drawn} side`)
  const [from, to] = [seamEnd(last), seamStart(first)]
  if (Math.abs(from.x) > SAME_POINT || Math.abs(to.x) > SAME_POINT) {
    throw new RangeError(`the ${drawn} half of ${piece.id} does not end on its center line`)
  }
  const fold = centerName(piece)
  return {
    ...piece,
    side: 'fold',
    seams: [...half, { id: fold, parts: [[straight(from, to)]], allowance: 0 }],
    darts: piece.darts.filter(own).map(onSeam),
    notches: piece.notches.filter(own).map(onSeam),
    lines: piece.lines.flatMap((line) => closeLine(line, drawn, fold)),
    landmarks: piece.landmarks.flatMap((item): Landmark[] => {
      if (namedSide(item.id) === undefined) return [item]
      if (!own(item)) return []
      return ['at' in item ? plain(item) : onSeam(item)]
    }),
  }
}

/** The name of the center seam of a bodice piece. */
export function centerName(piece: Piece): string {
  return /\bfront\b/.test(piece.id) ? 'center front' : 'center back'
}

/** The seams of one side, beginning where they leave the center line. */
function inOrder(piece: Piece, drawn: BodySide) {
  const seams = piece.seams.filter((seam) => namedSide(seam.id) === drawn)
  const first = seams.findIndex((seam, i) => {
    const before = seams[(i + seams.length - 1) % seams.length]
    return before !== undefined && distance(seamEnd(before), seamStart(seam)) > SAME_POINT
  })
  return first < 0 ? seams : [...seams.slice(first), ...seams.slice(0, first)]
}

/** What runs across the center is cut off at it; the center line becomes the fold. */
function closeLine(line: Line, drawn: BodySide, fold: string): Line[] {
  const side = namedSide(line.id)
  if (side !== undefined) return side === drawn ? [{ ...line, id: baseName(line.id) }] : []
  if (line.id === fold) return []
  const onCenter = line.path.every((c) => Math.abs(c.p0.x) <= SAME_POINT && Math.abs(c.p3.x) <= SAME_POINT)
  if (onCenter) return [line]
  // The half that is drawn lies towards +x.
  const path = line.path.filter((c) => c.p0.x >= -SAME_POINT && c.p3.x >= -SAME_POINT)
  return path.length === 0 ? [] : [{ ...line, path: path.length === line.path.length ? line.path : path }]
}
