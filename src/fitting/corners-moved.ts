import { equalPoints } from '../geometry/point.ts'
import type { Piece, Seam } from '../pattern/piece.ts'
import { seamStart } from '../pattern/seam.ts'
import type { MovedPoint } from './follow-marks.ts'

/** The corners of a piece that are elsewhere now: where each of its seams began, and begins. */
export function cornersMoved(piece: Piece, seams: readonly Seam[]): MovedPoint[] {
  return piece.seams.flatMap((seam, i) => {
    const from = seamStart(seam)
    const to = seamStart(seams[i] as Seam)
    return equalPoints(from, to) ? [] : [{ from, to }]
  })
}
