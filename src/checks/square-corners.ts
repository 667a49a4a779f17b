import type { Finding } from '../base/problem.ts'
import { centerJunctions, type EdgeEnd, type Junction } from '../pattern/junctions.ts'
import type { Check } from './check.ts'
import { sayAngle } from './words.ts'

/** A center that is off square by more than this shows a point or a nick when unfolded: 2°. */
const SQUARE = (2 * Math.PI) / 180

/** Neckline and waist run square into the center lines, so that no point stands or dips there when the other half is laid beside it. */
export const squareCorners: Check = {
  name: 'square-corners',
  looksAt: 'neckline and waist square to the center lines',
  mild: true,
  run: ({ pattern }) => centerJunctions(pattern).flatMap(square),
}

function square({ across, edges, corner }: Junction): Finding[] {
  if (Math.abs(corner) <= SQUARE) return []
  const { piece, seam } = edges[0] as EdgeEnd
  return [
    {
      code: 'center-not-square',
      severity: 'warning',
      where: { piece: piece.id, seam: seam.id },
      actual: `${seam.id} meets ${across} at ${sayAngle(corner + Math.PI / 2)}`,
      expected: `90°, within ${sayAngle(SQUARE)}`,
      hint: `true ${seam.id} square to ${across}`,
    },
  ]
}
