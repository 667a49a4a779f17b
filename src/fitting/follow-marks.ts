import type { Problem } from '../base/problem.ts'
import { collect, failure, type Result, success } from '../base/result.ts'
import { SAME_POINT } from '../geometry/defaults.ts'
import { add, distance, type Point } from '../geometry/point.ts'
import type { Join, JoinPart, Pattern } from '../pattern/pattern.ts'
import type { Dart, Landmark, Notch, Piece, Seam } from '../pattern/piece.ts'
import { followLine } from './follow-lines.ts'
import type { AlongMap } from './position-map.ts'

export interface MovedPoint {
  readonly from: Point
  readonly to: Point
}

/** What an operation did to the outline of a piece, for everything on it that must follow. */
export interface OutlineChange {
  /** All seams of the piece as they now are, in the same order. */
  readonly seams: readonly Seam[]
  /** Where places on changed seams went. */
  readonly maps: ReadonlyMap<string, AlongMap>
  /** Ids of the seams that changed. */
  readonly moved: ReadonlySet<string>
  readonly corners: readonly MovedPoint[]
  /** By how much the mouths of darts moved. */
  readonly darts: ReadonlyMap<string, readonly [Point, Point]>
}

/**
 * The piece with its new outline and everything that belongs to it: notches, landmarks and join parts keep their
 * place on the cloth, darts are lengthened to their seam, lines that ended on a moved seam are lengthened or cut to it. Fails
 * when a mark lies where the seam was cut off: nothing is lost silently.
 */
export function followMarks(
  pattern: Pattern,
  piece: Piece,
  change: OutlineChange,
): Result<{ piece: Piece; joins: readonly Join[] }> {
  const notches = collect(piece.notches.map((notch) => followNotch(piece, notch, change)))
  const landmarks = collect(piece.landmarks.map((landmark) => followLandmark(piece, landmark, change)))
  const joins = collect(pattern.joins.map((join) => followJoin(piece, join, change)))
  if (!notches.ok) return notches
  if (!landmarks.ok) return landmarks
  if (!joins.ok) return joins
  const lines = piece.lines.map((line) => followLine(line, piece.seams, change))
  return success({
    piece: {
      ...piece,
      seams: change.seams,
      darts: same(
        piece.darts,
        piece.darts.map((dart) => followDart(dart, change)),
      ),
      notches: same(piece.notches, notches.value),
      landmarks: same(piece.landmarks, landmarks.value),
      lines: same(piece.lines, lines),
    },
    joins: same(pattern.joins, joins.value),
  })
}

/** The old list where every entry is still the same object. */
function same<T>(old: readonly T[], now: readonly T[]): readonly T[] {
  return now.every((entry, i) => entry === old[i]) ? old : now
}

function followNotch(piece: Piece, notch: Notch, change: OutlineChange): Result<Notch> {
  const move = change.maps.get(notch.seam)
  if (!move) return success(notch)
  const along = move(notch.along)
  if (typeof along !== 'number') return failure(cutOff(piece, notch.seam, notch.id))
  return success(along === notch.along ? notch : { ...notch, along })
}

function followLandmark(piece: Piece, landmark: Landmark, change: OutlineChange): Result<Landmark> {
  if ('at' in landmark) {
    const corner = change.corners.find(({ from }) => distance(from, landmark.at) <= SAME_POINT)
    return success(corner ? { ...landmark, at: corner.to } : landmark)
  }
  const move = change.maps.get(landmark.seam)
  if (!move) return success(landmark)
  const along = move(landmark.along)
  if (typeof along !== 'number') return failure(cutOff(piece, landmark.seam, landmark.id))
  return success(along === landmark.along ? landmark : { ...landmark, along })
}

function followJoin(piece: Piece, join: Join, change: OutlineChange): Result<Join> {
  const isMoved = (part: JoinPart) => part.piece === piece.id && change.maps.has(part.seam)
  if (!join.a.some(isMoved) && !join.b.some(isMoved)) return success(join)
  const a = collect(join.a.map((part) => followPart(piece, join, part, change)))
  const b = collect(join.b.map((part) => followPart(piece, join, part, change)))
  if (!a.ok) return a
  if (!b.ok) return b
  const partsA = same(join.a, a.value)
  const partsB = same(join.b, b.value)
  return success(partsA === join.a && partsB === join.b ? join : { ...join, a: partsA, b: partsB })
}

function followPart(piece: Piece, join: Join, part: JoinPart, change: OutlineChange): Result<JoinPart> {
  const move = part.piece === piece.id ? change.maps.get(part.seam) : undefined
  if (!move || (part.from === undefined && part.to === undefined)) return success(part)
  const from = part.from === undefined ? undefined : move(part.from)
  const to = part.to === undefined ? undefined : move(part.to)
  if (typeof from === 'object' || typeof to === 'object') return failure(cutOff(piece, part.seam, `join ${join.id}`))
  if (from === part.from && to === part.to) return success(part)
  return success({
    ...part,
    ...(from === undefined ? {} : { from }),
    ...(to === undefined ? {} : { to }),
  })
}

function followDart(dart: Dart, change: OutlineChange): Dart {
  const by = change.darts.get(dart.id)
  if (!by) return dart
  return { ...dart, mouth: [add(dart.mouth[0], by[0]), add(dart.mouth[1], by[1])] }
}

function cutOff(piece: Piece, seam: string, mark: string): Problem {
  return {
    code: 'mark-cut-off',
    where: { piece: piece.id, seam },
    actual: `${mark} lies where the ${seam} would be cut off`,
    expected: 'every mark on cloth that stays',
    hint: `take a smaller amount, or move ${mark} first`,
  }
}
