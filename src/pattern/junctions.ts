import { atan2, cos, sin } from '../base/trig.ts'
import { polyline } from '../geometry/path.ts'
import { distance, heading, type Point, turnBetween } from '../geometry/point.ts'
import { cornerOf, cornerOfLine, insideAngle, type LineCorner, seamAfter } from './corners.ts'
import type { Join, Pattern } from './pattern.ts'
import type { Dart, Piece, Seam } from './piece.ts'
import { directionOnSeam, seamLength } from './seam.ts'
import { isCapJoin, joinLines } from './sewn-line.ts'
import { baseName } from './side-names.ts'

/** An end of a part of a seam: where an edge comes to a junction. */
export interface EdgeEnd {
  readonly piece: Piece
  readonly seam: Seam
  /** Index of the part of the seam, and which of its ends. */
  readonly part: number
  readonly which: 'start' | 'end'
}

/** A place where an edge runs on from one cloth to the next, or into a center: what truing looks at. */
export interface Junction {
  /** The join, the dart or the center line that the edge runs across or into. */
  readonly across: string
  /** The edges that meet there, two across a join or a dart, one at a center. */
  readonly edges: readonly EdgeEnd[]
  /** By how much the edge dips there, radians; negative where it peaks, 0 where it runs on smoothly or square. */
  readonly corner: number
}

/** A mouth's points lie this near to the ends of the parts that it parts, mm. */
const AT_MOUTH = 0.01

/** Edges across every sewn join: neckline and armscye over the shoulder, cap and wrist over the underarm seam. */
export function joinJunctions(pattern: Pattern): Junction[] {
  // A set-in sleeve meets the armscye at a corner all round: nothing runs on across a cap join.
  return pattern.joins
    .filter((join) => !isCapJoin(join))
    .flatMap((join) => (['start', 'end'] as const).flatMap((which) => acrossJoin(pattern, join, which) ?? []))
}

function acrossJoin(pattern: Pattern, join: Join, which: 'start' | 'end'): Junction | undefined {
  const lines = joinLines(pattern, join)
  const a = lines && cornerOfLine(lines.a, which)
  const b = lines && cornerOfLine(lines.b, which)
  if (!a || !b) return undefined
  return { across: join.id, edges: [edgeOf(a), edgeOf(b)], corner: a.angle + b.angle - Math.PI }
}

function edgeOf({ piece, neighbor, neighborEnd }: LineCorner): EdgeEnd {
  const part = neighborEnd === 'start' ? 0 : neighbor.parts.length - 1
  return { piece, seam: neighbor, part, which: neighborEnd }
}

/** Seams across the mouths of folded darts; a mouth that is no gap of its seam has none. */
export function dartJunctions(pattern: Pattern): Junction[] {
  return pattern.pieces.flatMap((piece) => piece.darts.flatMap((dart) => acrossDart(piece, dart) ?? []))
}

function acrossDart(piece: Piece, dart: Dart): Junction | undefined {
  const seam = piece.seams.find((s) => s.id === dart.seam)
  const part = seam?.parts.findIndex((path) => isNear(path[path.length - 1]?.p3, dart.mouth[0])) ?? -1
  const [before, after] = [seam?.parts[part], seam?.parts[part + 1]]
  if (!seam || !before || !after || !isNear(after[0]?.p0, dart.mouth[1])) return undefined
  const one = insideAngle(before, polyline([dart.mouth[0], dart.point]))
  const other = insideAngle(polyline([dart.point, dart.mouth[1]]), after)
  return {
    across: dart.id,
    edges: [
      { piece, seam, part, which: 'end' },
      { piece, seam, part: part + 1, which: 'start' },
    ],
    // A leg that leaves the piece is a corner of less than half a turn, the other way.
    corner: atan2(-sin(one + other), -cos(one + other)),
  }
}

function isNear(p: Point | undefined, q: Point): boolean {
  return p !== undefined && distance(p, q) < AT_MOUTH
}

/** Neckline and waist into the center lines, square; also over the center of a piece that was opened. */
export function centerJunctions(pattern: Pattern): Junction[] {
  return pattern.pieces.flatMap((piece) => [
    ...piece.seams
      .filter((seam) => /^center (front|back)\b/.test(seam.id))
      .flatMap((seam) => (['start', 'end'] as const).map((which) => intoCenter(piece, seam, which))),
    ...(piece.side === 'whole' ? overCenter(piece) : []),
  ])
}

function intoCenter(piece: Piece, center: Seam, which: 'start' | 'end'): Junction {
  const corner = cornerOf(piece, center, which)
  return { across: center.id, edges: [edgeOf({ ...corner, piece })], corner: corner.angle - Math.PI / 2 }
}

/** The halves of a whole piece, each against the center line, which is upright. */
function overCenter(piece: Piece): Junction[] {
  const across = piece.lines.find((line) => /^center (front|back)$/.test(line.id))?.id ?? 'center'
  return piece.seams.flatMap((seam) => {
    const next = seamAfter(piece, seam)
    if (seam.id === next.id || baseName(seam.id) !== baseName(next.id)) return []
    const arriving = directionOnSeam(seam, seamLength(seam))
    const leaving = directionOnSeam(next, 0)
    // Anticlockwise the upper edge runs toward −x, the lower one toward +x.
    const level = heading(arriving.x + leaving.x < 0 ? Math.PI : 0)
    const one: EdgeEnd = { piece, seam, part: seam.parts.length - 1, which: 'end' }
    const other: EdgeEnd = { piece, seam: next, part: 0, which: 'start' }
    return [
      { across, edges: [one], corner: turnBetween(level, arriving) },
      { across, edges: [other], corner: -turnBetween(level, leaving) },
    ]
  })
}
