import { nearest } from '../geometry/nearest.ts'
import { pathLength } from '../geometry/path-length.ts'
import { distance, dot, type Point, rightOf, scale, subtract } from '../geometry/point.ts'
import type { Pattern } from '../pattern/pattern.ts'
import type { Piece, Seam } from '../pattern/piece.ts'
import { directionOnSeam, seamLength } from '../pattern/seam.ts'
import { type JoinLengths, joinLengths } from '../pattern/sewn-line.ts'
import { splitPattern } from '../pattern/split-pattern.ts'
import { comparePiece, type PieceComparison } from './compare-piece.ts'
import { describePlace } from './describe-place.ts'
import { type FarthestMove, farthestMove, stretchMoves } from './farthest-move.ts'
import type { SeamPlace } from './position.ts'
import type { PatternVersion } from './replay.ts'
import { type SeamRun, seamRun } from './seam-run.ts'

/** Where a stretch of a line moved most. */
export interface MovePeak {
  /** How far, as the versions lie over each other, mm. */
  readonly move: number
  /** Outwards, inwards, or along itself where it only became longer or shorter. */
  readonly way: 'out' | 'in' | 'along'
  /** The point as it was and as it is, and where that is on the seam as it is. */
  readonly from: Point
  /** The point as it is, mm. */
  readonly to: Point
  /** Where it is on the seam as it is, mm of sewn length from the start. */
  readonly along: number
  /** The same place as a draper says it. */
  readonly place: SeamPlace
}

/** One stitching line in two versions of a pattern; lengths with darts closed, mm. */
export interface SeamMove {
  /** Id of the piece. */
  readonly piece: string
  /** Id of the seam. */
  readonly seam: string
  /** Length in the earlier version. */
  readonly before: number
  /** Length in the later version. */
  readonly after: number
  /** The farthest that any of it moved, mm; 0 where it is the same line. */
  readonly move: number
  /** Where it moved most, then the most of every other stretch that moved; none where it is the same line. */
  readonly peaks: readonly MovePeak[]
}

/** A join whose sides or ease differ, or one of whose seams moved, mm. */
export interface JoinDifference {
  /** Id of the join. */
  readonly join: string
  /** Both sides in the earlier version. */
  readonly before: JoinLengths
  /** Both sides in the later version. */
  readonly after: JoinLengths
}

/** Two versions of a pattern laid over each other. */
export interface VersionComparison {
  /** Labels of the versions. */
  readonly from: string
  /** Label of the later version. */
  readonly to: string
  /** Every stitching line of both. */
  readonly seams: readonly SeamMove[]
  /** What became of each piece. */
  readonly pieces: readonly PieceComparison[]
  /** The joins that differ, also where a seam moved and kept its length. */
  readonly joins: readonly JoinDifference[]
  /** The versions with left and right apart alike: where one has them apart, so has the other. */
  readonly before: Pattern
  /** The later version, left and right apart alike. */
  readonly after: Pattern
}

/** Between two stretches a line stays within this, mm: a quarter of a pencil line. */
const LEAST_PEAK = 0.05

/** Peaks nearer to the largest than this are the largest, mm. */
const SAME_PEAK = 5

/** Moves and differences smaller than this are none, mm: far below a pencil line. */
const SAME_LINE = 0.005

/**
 * What became of every seam and every piece from one version of a pattern to another, as they lie over each other in
 * the frame of the draft. A piece that is apart left and right in one of them is taken apart in the other, so that
 * like is compared with like. Either version may be the earlier one. Pieces that only one of them has are left out.
 */
export function compareVersions(earlier: PatternVersion, later: PatternVersion): VersionComparison {
  const before = splitAs(earlier.pattern, later.pattern)
  const after = splitAs(later.pattern, earlier.pattern)
  const pairs = after.pieces.flatMap((piece) => {
    const old = before.pieces.find((p) => p.id === piece.id)
    return old ? [[old, piece] as const] : []
  })
  const seams = pairs.flatMap(([old, now]) => seamMoves(old, now))
  return {
    from: earlier.label,
    to: later.label,
    seams,
    pieces: pairs.map(([old, now]) => comparePiece(old, now, wasApart(earlier.pattern, now))),
    joins: joinDifferences(before, after, seams),
    before,
    after,
  }
}

/** The pattern with every piece apart that the other pattern has apart. */
export function splitAs(pattern: Pattern, other: Pattern): Pattern {
  return pattern.pieces.reduce((split, piece) => {
    const apart = other.pieces.some(
      (p) => p.id === `${piece.id} left` || p.id === `${piece.id} right` || (p.id === piece.id && p.side === 'whole'),
    )
    return apart ? splitPattern(split, piece.id) : split
  }, pattern)
}

/** The id of the piece before its sides were taken apart; undefined where the version has it as it is. */
function wasApart(earlier: Pattern, piece: Piece): string | undefined {
  const old =
    earlier.pieces.find((p) => p.id === piece.id) ?? earlier.pieces.find((p) => piece.id.startsWith(`${p.id} `))
  return old && old.side !== piece.side && (old.side === 'pair' || old.side === 'fold') ? old.id : undefined
}

function seamMoves(old: Piece, now: Piece): SeamMove[] {
  return now.seams.flatMap((seam) => {
    const was = old.seams.find((s) => s.id === seam.id)
    return was ? [seamMove(was, now, seam)] : []
  })
}

function seamMove(old: Seam, piece: Piece, now: Seam): SeamMove {
  const row = { piece: piece.id, seam: now.id, before: seamLength(old), after: seamLength(now) }
  if (old.parts === now.parts) return { ...row, move: 0, peaks: [] }
  const most = farthestMove(old.parts, now.parts)
  if (most.distance < SAME_LINE) return { ...row, move: 0, peaks: [] }
  const run = seamRun(piece, [now.id])
  const others = stretchMoves(old.parts, now.parts, LEAST_PEAK).filter((move) => distance(move.to, most.to) > SAME_PEAK)
  return { ...row, move: most.distance, peaks: [most, ...others].map((move) => movePeak(move, run, now)) }
}

function movePeak({ from, to, distance: move }: FarthestMove, run: SeamRun, seam: Seam): MovePeak {
  const along = alongSeam(seam, to)
  const outwards = dot(scale(subtract(to, from), 1 / move), rightOf(directionOnSeam(seam, along)))
  const way = outwards > 0.5 ? 'out' : outwards < -0.5 ? 'in' : 'along'
  return { move, way, from, to, along, place: describePlace(run, along) }
}

function alongSeam(seam: Seam, p: Point): number {
  let start = 0
  let best = { distance: Number.POSITIVE_INFINITY, along: 0 }
  for (const part of seam.parts) {
    const near = nearest(part, p)
    if (near.distance < best.distance) best = { distance: near.distance, along: start + near.along }
    start += pathLength(part)
  }
  return best.along
}

function joinDifferences(before: Pattern, after: Pattern, seams: readonly SeamMove[]): JoinDifference[] {
  return after.joins.flatMap((join) => {
    const old = before.joins.find((j) => j.id === join.id)
    if (!old) return []
    const row = { join: join.id, before: joinLengths(before, old), after: joinLengths(after, join) }
    const same = Math.abs(row.before.a - row.after.a) < SAME_LINE && Math.abs(row.before.b - row.after.b) < SAME_LINE
    const moved = [...join.a, ...join.b].some((part) =>
      seams.some(({ piece, seam, move }) => move > 0 && piece === part.piece && seam === part.seam),
    )
    return same && !moved ? [] : [row]
  })
}
