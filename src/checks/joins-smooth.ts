import type { Finding } from '../base/problem.ts'
import { meantPeak } from '../fitting/meant-peak.ts'
import type { CornerMade } from '../fitting/operation.ts'
import { type EdgeEnd, type Junction, joinJunctions } from '../pattern/junctions.ts'
import type { Check } from './check.ts'
import { sayAngle } from './words.ts'

/** The largest corner that a pressed seam hides: 5°. */
const SMOOTH = (5 * Math.PI) / 180

/** Edges run on smoothly where a seam is sewn: neckline and armscye over the shoulder, cap and wrist over the underarm seam. */
export const joinsSmooth: Check = {
  name: 'joins-smooth',
  looksAt: 'edges run on without a corner across every sewn join',
  mild: true,
  run: ({ pattern, corners = [] }) => joinJunctions(pattern).flatMap((junction) => smooth(junction, corners)),
}

function smooth({ across, edges, corner }: Junction, corners: readonly CornerMade[]): Finding[] {
  const meant = meantPeak(corners, edges)
  if (Math.abs(corner) <= SMOOTH || (meant > 0 && Math.abs(corner + meant) <= SMOOTH)) return []
  const { piece, seam } = edges[0] as EdgeEnd
  return [
    {
      code: 'corner-across-join',
      severity: 'warning',
      where: { join: across, piece: piece.id, seam: seam.id },
      actual: `${seam.id} ${corner > 0 ? 'dips' : 'peaks'} by ${sayAngle(Math.abs(corner))} across the ${across}`,
      expected: `a smooth edge, within ${sayAngle(SMOOTH)}`,
      hint: `pin the ${across} closed and true ${seam.id} across it`,
    },
  ]
}
