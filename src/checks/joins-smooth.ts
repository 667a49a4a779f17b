import type { Finding } from '../base/problem.ts'
import type { CornerMade } from '../fitting/operation.ts'
import type { Join, Pattern } from '../pattern/pattern.ts'
import { isCapJoin, joinLines } from '../pattern/sewn-line.ts'
import { baseName } from '../pattern/side-names.ts'
import type { Check } from './check.ts'
import { cornerOfLine, type LineCorner } from './corners.ts'
import { sayAngle } from './words.ts'

/** The largest corner that a pressed seam hides: 5°. */
const SMOOTH = (5 * Math.PI) / 180

/** The line of which a seam is the front or the back half. */
const FAMILY = /^(?:front|back) (.+)$/

/** Edges run on smoothly where a seam is sewn: neckline and armscye over the shoulder, cap and wrist over the underarm seam. */
export const joinsSmooth: Check = {
  name: 'joins-smooth',
  looksAt: 'edges run on without a corner across every sewn join',
  run: ({ pattern, corners = [] }) =>
    // A set-in sleeve meets the armscye at a corner all round: nothing runs on across a cap join.
    pattern.joins
      .filter((join) => !isCapJoin(join))
      .flatMap((join) => (['start', 'end'] as const).flatMap((which) => across(pattern, join, which, corners))),
}

function across(pattern: Pattern, join: Join, which: 'start' | 'end', corners: readonly CornerMade[]): Finding[] {
  const lines = joinLines(pattern, join)
  if (!lines) return []
  const a = cornerOfLine(lines.a, which)
  const b = cornerOfLine(lines.b, which)
  if (!a || !b) return []
  const corner = a.angle + b.angle - Math.PI
  const meant = Math.min(meantPeak(corners, a), meantPeak(corners, b))
  if (Math.abs(corner) <= SMOOTH || (meant > 0 && Math.abs(corner + meant) <= SMOOTH)) return []
  return [
    {
      code: 'corner-across-join',
      severity: 'warning',
      where: { join: join.id, piece: a.piece.id, seam: a.neighbor.id },
      actual: `${a.neighbor.id} ${corner > 0 ? 'dips' : 'peaks'} by ${sayAngle(Math.abs(corner))} across the ${join.id}`,
      expected: `a smooth edge, within ${sayAngle(SMOOTH)}`,
      hint: `pin the ${join.id} closed and true ${a.neighbor.id} across it`,
    },
  ]
}

/** By how much corrections meant the edge to peak here, radians; told of the piece before or after its sides were split. */
function meantPeak(corners: readonly CornerMade[], { piece, neighbor }: LineCorner): number {
  return corners
    .filter((made) => made.piece === piece.id || made.piece === baseName(piece.id))
    .filter((made) => made.seam === neighbor.id || FAMILY.exec(baseName(neighbor.id))?.[1] === made.seam)
    .reduce((sum, { angle }) => sum + angle, 0)
}
