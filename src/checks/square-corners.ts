import type { Finding } from '../base/problem.ts'
import type { Piece, Seam } from '../pattern/piece.ts'
import type { Check } from './check.ts'
import { cornerOf } from './corners.ts'
import { sayAngle } from './words.ts'

/** A center that is off square by more than this shows a point or a nick when unfolded: 2°. */
const SQUARE = (2 * Math.PI) / 180

/** Neckline and waist run square into the center lines, so that no point stands or dips there when the other half is laid beside it. */
export const squareCorners: Check = {
  name: 'square-corners',
  looksAt: 'neckline and waist square to the center lines',
  run: ({ pattern }) =>
    pattern.pieces.flatMap((piece) =>
      piece.seams
        .filter((seam) => /^center (front|back)\b/.test(seam.id))
        .flatMap((seam) => (['start', 'end'] as const).flatMap((which) => square(piece, seam, which))),
    ),
}

function square(piece: Piece, seam: Seam, which: 'start' | 'end'): Finding[] {
  const { angle, neighbor } = cornerOf(piece, seam, which)
  if (Math.abs(angle - Math.PI / 2) <= SQUARE) return []
  return [
    {
      code: 'center-not-square',
      severity: 'warning',
      where: { piece: piece.id, seam: neighbor.id },
      actual: `${neighbor.id} meets ${seam.id} at ${sayAngle(angle)}`,
      expected: `90°, within ${sayAngle(SQUARE)}`,
      hint: `true ${neighbor.id} square to ${seam.id} over the last 10 mm`,
    },
  ]
}
