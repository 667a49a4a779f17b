import { mirrorPathX, mirrorX } from '../../src/geometry/transform.ts'
import type { Piece } from '../../src/pattern/piece.ts'

/** The piece turned over, its seams again anticlockwise. Marks are left out: these tests need the lines. */
export function mirrorPiece(piece: Piece): Piece {
  const flip = mirrorX()
  return {
    ...piece,
    seams: piece.seams.map((s) => ({ ...s, parts: s.parts.map((p) => mirrorPathX(p)).reverse() })).reverse(),
    darts: piece.darts.map((d) => ({
      ...d,
      point: flip(d.point),
      mouth: [flip(d.mouth[1]), flip(d.mouth[0])] as const,
    })),
  }
}
