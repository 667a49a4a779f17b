import type { Finding } from '../base/problem.ts'
import { polyline } from '../geometry/path.ts'
import type { Dart, Piece } from '../pattern/piece.ts'
import type { Check } from './check.ts'
import { insideAngle } from './corners.ts'
import { sayAngle } from './words.ts'

/** The largest corner that a pressed dart hides: 5°. */
const SMOOTH = (5 * Math.PI) / 180

/** With a dart folded and stitched, its seam runs on across it without a corner. */
export const dartMouths: Check = {
  name: 'dart-mouths',
  looksAt: 'seams run on without a corner across closed darts',
  run: ({ pattern }) => pattern.pieces.flatMap((piece) => piece.darts.flatMap((dart) => folded(piece, dart))),
}

function folded(piece: Piece, dart: Dart): Finding[] {
  const parts = piece.seams.find((s) => s.id === dart.seam)?.parts ?? []
  const before = parts.find((part) => isAt(part[part.length - 1]?.p3, dart.mouth[0]))
  const after = parts.find((part) => isAt(part[0]?.p0, dart.mouth[1]))
  // A mouth that is no gap of its seam is dart-legs' to report.
  if (!before || !after) return []
  const one = insideAngle(before, polyline([dart.mouth[0], dart.point]))
  const other = insideAngle(polyline([dart.point, dart.mouth[1]]), after)
  // A leg that leaves the piece is a corner of less than half a turn, the other way.
  const corner = Math.atan2(-Math.sin(one + other), -Math.cos(one + other))
  if (Math.abs(corner) <= SMOOTH) return []
  return [
    {
      code: 'corner-across-dart',
      severity: 'warning',
      where: { piece: piece.id, seam: dart.seam },
      actual: `${dart.seam} ${corner > 0 ? 'dips' : 'peaks'} by ${sayAngle(Math.abs(corner))} across the closed ${dart.id}`,
      expected: `a smooth seam, within ${sayAngle(SMOOTH)}`,
      hint: 'fold the dart closed and true its mouth',
    },
  ]
}

function isAt(p: { x: number; y: number } | undefined, q: { x: number; y: number }): boolean {
  return p !== undefined && Math.hypot(p.x - q.x, p.y - q.y) < 0.01
}
