import type { Finding } from '../base/problem.ts'
import { heading, type Point, turnBetween } from '../geometry/point.ts'
import type { Piece, Seam } from '../pattern/piece.ts'
import { directionOnSeam, seamLength } from '../pattern/seam.ts'
import { baseName } from '../pattern/side-names.ts'
import type { Check } from './check.ts'
import { cornerOf, seamAfter } from './corners.ts'
import { sayAngle } from './words.ts'

/** A center that is off square by more than this shows a point or a nick when unfolded: 2°. */
const SQUARE = (2 * Math.PI) / 180

/** Neckline and waist run square into the center lines, so that no point stands or dips there when the other half is laid beside it. */
export const squareCorners: Check = {
  name: 'square-corners',
  looksAt: 'neckline and waist square to the center lines',
  run: ({ pattern }) =>
    pattern.pieces.flatMap((piece) => [
      ...piece.seams
        .filter((seam) => /^center (front|back)\b/.test(seam.id))
        .flatMap((seam) =>
          (['start', 'end'] as const).flatMap((which) => {
            const { angle, neighbor } = cornerOf(piece, seam, which)
            return square(piece, neighbor, seam.id, angle)
          }),
        ),
      ...(piece.side === 'whole' ? acrossCenter(piece) : []),
    ]),
}

/** The halves of a whole piece, each against the center line, which is upright. */
function acrossCenter(piece: Piece): Finding[] {
  const center = piece.lines.find((line) => /^center (front|back)$/.test(line.id))?.id ?? 'center'
  return piece.seams.flatMap((seam) => {
    const next = seamAfter(piece, seam)
    if (seam.id === next.id || baseName(seam.id) !== baseName(next.id)) return []
    const arriving = directionOnSeam(seam, seamLength(seam))
    const leaving = directionOnSeam(next, 0)
    // Anticlockwise the upper edge runs toward −x, the lower one toward +x.
    const level = arriving.x + leaving.x < 0 ? Math.PI : 0
    const tilt = (p: Point) => turnBetween(heading(level), p)
    return [
      ...square(piece, seam, center, Math.PI / 2 + tilt(arriving)),
      ...square(piece, next, center, Math.PI / 2 - tilt(leaving)),
    ]
  })
}

function square(piece: Piece, seam: Seam, center: string, angle: number): Finding[] {
  if (Math.abs(angle - Math.PI / 2) <= SQUARE) return []
  return [
    {
      code: 'center-not-square',
      severity: 'warning',
      where: { piece: piece.id, seam: seam.id },
      actual: `${seam.id} meets ${center} at ${sayAngle(angle)}`,
      expected: `90°, within ${sayAngle(SQUARE)}`,
      hint: `true ${seam.id} square to ${center} over the last 10 mm`,
    },
  ]
}
