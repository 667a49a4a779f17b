import { failure, type Result, success } from '../base/result.ts'
import { isLine, moveCubic, line as straight } from '../geometry/cubic.ts'
import type { Path } from '../geometry/path.ts'
import { equalPoints, type Point } from '../geometry/point.ts'
import type { Pattern } from '../pattern/pattern.ts'
import type { Dart, Line, Piece, Seam } from '../pattern/piece.ts'
import { cornersMoved } from './corners-moved.ts'
import { followLine } from './follow-lines.ts'
import { followMarks } from './follow-marks.ts'
import type { Effect, OperationResult } from './operation.ts'
import { type AlongMap, type Moved, type PiecePoint, type PositionMap, seamMap } from './position-map.ts'
import { openCorner, weldSeams } from './weld-seams.ts'

/** A seam as it now is, and where its places went. */
export interface ReplacedSeam {
  readonly seam: Seam
  readonly map: AlongMap
}

/** What an operation made of a piece; everything that is not named here stays. */
export interface PieceChange {
  readonly seams: ReadonlyMap<string, ReplacedSeam>
  /** All darts of the piece as they now are. */
  readonly darts: readonly Dart[]
  /** Where points inside the piece went; absent: nowhere. */
  readonly inside?: (at: Point) => Point
  /** Why a point inside is no longer there, where that is so. */
  readonly gone?: (at: Point) => string | undefined
  readonly effects?: readonly Effect[]
}

/**
 * The pattern with seams of a piece replaced: notches, landmarks and join parts keep their place on the cloth, lines
 * inside go with it and end on the seams as they now are. Seams and lines that did not move are the same objects.
 * Problems: a mark that lies where cloth is gone. Throws when the new seams do not touch: that is a broken operation.
 */
export function replaceSeams(pattern: Pattern, piece: Piece, change: PieceChange): Result<OperationResult> {
  const gap = openCorner(piece, change.seams)
  if (gap) throw new RangeError(`${piece.id}: ${gap[1]} does not start at the end of ${gap[0]}`)
  const replaced = weldSeams(piece, change.seams)
  const seams = piece.seams.map((seam) => replaced.get(seam.id)?.seam ?? seam)
  const maps = new Map([...replaced].map(([id, { map }]): [string, AlongMap] => [id, map]))
  const corners = cornersMoved(piece, seams)
  const bare = { ...piece, darts: [], lines: [], landmarks: piece.landmarks.filter((mark) => 'seam' in mark) }
  const followed = followMarks(pattern, bare, {
    seams,
    maps,
    moved: new Set(maps.keys()),
    corners,
    darts: new Map(),
  })
  if (!followed.ok) return followed
  const inside = change.inside ?? ((at: Point) => at)
  for (const mark of piece.landmarks) {
    const why = 'at' in mark ? change.gone?.(mark.at) : undefined
    if (why !== undefined) return failure(markGone(piece, mark.id, why))
  }
  let next = 0
  const landmarks = piece.landmarks.map((mark) => {
    if (!('at' in mark)) return followed.value.piece.landmarks[next++] ?? mark
    const at = inside(mark.at)
    return equalPoints(at, mark.at) ? mark : { ...mark, at }
  })
  const lines = piece.lines.map((line) => {
    const moved = moveLine(line, inside)
    return followLine(moved, piece.seams, { seams, maps, corners }, line)
  })
  const now: Piece = {
    ...followed.value.piece,
    darts: same(piece.darts, change.darts),
    landmarks: same(piece.landmarks, landmarks),
    lines: same(piece.lines, lines),
  }
  return success({
    pattern: { ...pattern, pieces: pattern.pieces.map((p) => (p === piece ? now : p)), joins: followed.value.joins },
    map: changeMap(piece.id, maps, change),
    effects: change.effects ?? [],
  })
}

function changeMap(piece: string, maps: ReadonlyMap<string, AlongMap>, change: PieceChange): PositionMap {
  const along = seamMap(piece, maps)
  const { inside, gone } = change
  if (!inside) return along
  return {
    seam: along.seam,
    point: (position): readonly Moved<PiecePoint>[] => {
      if (position.piece !== piece) return [position]
      const why = gone?.(position.at)
      if (why !== undefined) return [{ gone: why }]
      const at = inside(position.at)
      return [equalPoints(at, position.at) ? position : { ...position, at }]
    },
  }
}

function moveLine(line: Line, inside: (at: Point) => Point): Line {
  let changed = false
  const path: Path = line.path.map((c) => {
    const moved = moveCubic(c, inside)
    if (
      equalPoints(moved.p0, c.p0) &&
      equalPoints(moved.p1, c.p1) &&
      equalPoints(moved.p2, c.p2) &&
      equalPoints(moved.p3, c.p3)
    )
      return c
    changed = true
    // A straight line of which only one end moved stays straight.
    return isLine(c) ? straight(moved.p0, moved.p3) : moved
  })
  return changed ? { ...line, path } : line
}

function same<T>(old: readonly T[], now: readonly T[]): readonly T[] {
  return now.length === old.length && now.every((entry, i) => entry === old[i]) ? old : now
}

function markGone(piece: Piece, mark: string, why: string) {
  return {
    code: 'mark-cut-off',
    where: { piece: piece.id },
    actual: `${mark} lies on cloth that is no longer there: ${why}`,
    expected: 'every mark on cloth that stays',
    hint: `take a smaller amount, or name another place, away from the ${mark}`,
  }
}
