import type { Finding } from '../base/problem.ts'
import type { CornerMade } from '../fitting/operation.ts'
import type { Join, Pattern } from '../pattern/pattern.ts'
import { seamLength } from '../pattern/seam.ts'
import { isCapJoin, joinLines, lineEnd, type SewnLine } from '../pattern/sewn-line.ts'
import { baseName } from '../pattern/side-names.ts'
import type { Check } from './check.ts'
import { cornerOf } from './corners.ts'
import { sayAngle } from './words.ts'

/** The largest corner that a pressed seam hides: 5°. */
const SMOOTH = (5 * Math.PI) / 180

/** The line of which a seam is the front or the back half. */
const FAMILY = /^(?:front|back) (.+)$/

/** A line that ends this near to the end of its seam ends at a corner of the piece, mm. */
const SEAM_END = 0.001

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
  const a = cornerAt(lines.a, which)
  const b = cornerAt(lines.b, which)
  if (!a || !b) return []
  const corner = a.angle + b.angle - Math.PI
  const meant = Math.min(meantPeak(corners, a), meantPeak(corners, b))
  if (Math.abs(corner) <= SMOOTH || (meant > 0 && Math.abs(corner + meant) <= SMOOTH)) return []
  return [
    {
      code: 'corner-across-join',
      severity: 'warning',
      where: { join: join.id, piece: a.piece, seam: a.neighbor },
      actual: `${a.neighbor} ${corner > 0 ? 'dips' : 'peaks'} by ${sayAngle(Math.abs(corner))} across the ${join.id}`,
      expected: `a smooth edge, within ${sayAngle(SMOOTH)}`,
      hint: `pin the ${join.id} closed and true ${a.neighbor} across it`,
    },
  ]
}

/** By how much corrections meant the edge to peak here, radians; told of the piece before or after its sides were split. */
function meantPeak(corners: readonly CornerMade[], { piece, neighbor }: { piece: string; neighbor: string }): number {
  return corners
    .filter((made) => made.piece === piece || made.piece === baseName(piece))
    .filter((made) => made.seam === neighbor || FAMILY.exec(baseName(neighbor))?.[1] === made.seam)
    .reduce((sum, { angle }) => sum + angle, 0)
}

/** The corner of the piece where the line begins or ends; undefined where that is not the end of a seam. */
function cornerAt(line: SewnLine, which: 'start' | 'end') {
  const { stretch, along } = lineEnd(line, which)
  const atStart = along < SEAM_END
  if (!atStart && along < seamLength(stretch.seam) - SEAM_END) return undefined
  const { angle, neighbor } = cornerOf(stretch.piece, stretch.seam, atStart ? 'start' : 'end')
  return { angle, neighbor: neighbor.id, piece: stretch.piece.id }
}
