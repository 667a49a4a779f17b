import { type Result, success } from '../base/result.ts'
import { SAME_POINT } from '../geometry/defaults.ts'
import { endOf, type Path, startOf } from '../geometry/path.ts'
import { pathLength } from '../geometry/path-length.ts'
import { distance, equalPoints, type Point } from '../geometry/point.ts'
import type { Pattern } from '../pattern/pattern.ts'
import type { Piece, Seam } from '../pattern/piece.ts'
import { pieceOf, seamEnd, seamLength, seamOf, seamStart } from '../pattern/seam.ts'
import { type Bend, bendables, bendPath, bentPositions, largestMove } from './bend-path.ts'
import { cornersMoved } from './corners-moved.ts'
import { cutPath } from './cut-path.ts'
import { followMarks } from './follow-marks.ts'
import type { Effect, OperationResult } from './operation.ts'
import { type AlongMap, seamMap, tableMap } from './position-map.ts'

/** How a seam is bent between two positions, mm of sewn length from its start; it stays the same numbers outside. */
export interface SeamBend {
  readonly seam: string
  readonly from: number
  readonly to: number
  readonly bend: Bend
}

interface BentSeam {
  readonly seam: Seam
  readonly map: AlongMap
  readonly effect: Effect
}

/**
 * Moves seams of a piece by smooth displacements (see `bendPath`); notches, landmarks, join parts and balance lines
 * follow on the cloth. A displacement ends at zero, or at the end of its seam, where the neighbouring seam is bent by
 * the same. Problems: a mark that would be cut off. Throws where a stretch runs over a dart, and where neighbours part.
 */
export function bendSeams(pattern: Pattern, id: string, bends: readonly SeamBend[]): Result<OperationResult> {
  const piece = pieceOf(pattern, id)
  const bent = new Map(bends.map((bend) => [bend.seam, bendSeam(piece, bend)]))
  const seams = weld(
    piece.seams,
    piece.seams.map((seam) => bent.get(seam.id)?.seam ?? seam),
  )
  const maps = new Map([...bent].map(([seam, { map }]) => [seam, map]))
  const followed = followMarks(pattern, piece, {
    seams,
    maps,
    moved: new Set(bent.keys()),
    corners: cornersMoved(piece, seams),
    darts: new Map(),
  })
  if (!followed.ok) return followed
  return success({
    pattern: {
      ...pattern,
      pieces: pattern.pieces.map((p) => (p === piece ? followed.value.piece : p)),
      joins: followed.value.joins,
    },
    map: seamMap(id, maps),
    effects: [...bent.values()].map(({ effect }) => effect),
  })
}

function bendSeam(piece: Piece, { seam: id, from, to, bend }: SeamBend): BentSeam {
  const seam = seamOf(piece, id)
  const { index, start, part } = partHolding(seam, from, to)
  const length = pathLength(part)
  const parts = bendables(cutPath(part, from - start, to - start), from)
  const bentParts = bendPath(parts, bend)
  const before = from - start > SAME_POINT ? cutPath(part, 0, from - start) : []
  const after = length - (to - start) > SAME_POINT ? cutPath(part, to - start, length) : []
  const next: Seam = { ...seam, parts: seam.parts.map((p, i) => (i === index ? joined(before, bentParts, after) : p)) }
  const { old, now } = bentPositions(parts, bentParts, from)
  const end = now[now.length - 1] as number
  const whole = seamLength(seam)
  const inside = (at: number) => at > SAME_POINT && at < whole - SAME_POINT
  const kept = old.flatMap((at, i) => (inside(at) ? [i] : []))
  const map = tableMap(
    [0, ...kept.map((i) => old[i] as number), whole],
    [0, ...kept.map((i) => now[i] as number), seamLength(next)],
  )
  return {
    seam: next,
    map,
    effect: { kind: 'seam moved', piece: piece.id, seam: id, amount: largestMove(parts, bend), from, to: end },
  }
}

function partHolding(seam: Seam, from: number, to: number): { index: number; start: number; part: Path } {
  let start = 0
  for (const [index, part] of seam.parts.entries()) {
    const end = start + pathLength(part)
    if (from >= start - SAME_POINT && to <= end + SAME_POINT) return { index, start, part }
    start = end
  }
  throw new RangeError(`${from} to ${to} mm of ${seam.id} is not one stretch without a dart`)
}

/** The bent stretch between the untouched ones, ending on their very points. */
function joined(before: Path, bent: Path, after: Path): Path {
  const last = before[before.length - 1]
  const first = after[0]
  const middle = bent.map((c, i) => ({
    ...c,
    ...(i === 0 && last ? { p0: last.p3 } : {}),
    ...(i === bent.length - 1 && first ? { p3: first.p0 } : {}),
  }))
  return [...before, ...middle, ...after]
}

/** Bent seams end on the very points where their neighbours begin: they differ by rounding at most. */
function weld(old: readonly Seam[], now: readonly Seam[]): Seam[] {
  return now.map((seam, i) => {
    if (seam === old[i]) return seam
    const before = (i + now.length - 1) % now.length
    const after = (i + 1) % now.length
    const start = seamEnd(now[before] as Seam)
    const end = now[after] === old[after] ? seamStart(now[after] as Seam) : seamEnd(seam)
    if (distance(start, seamStart(seam)) > 10 * SAME_POINT || distance(end, seamEnd(seam)) > 10 * SAME_POINT) {
      throw new RangeError(`${seam.id} was bent away from its neighbour`)
    }
    return withEnds(seam, start, end)
  })
}

function withEnds(seam: Seam, start: Point, end: Point): Seam {
  const parts = seam.parts.map((part) => [...part])
  const first = parts[0] as Path[number][]
  first[0] = { ...(first[0] as Path[number]), p0: start }
  const last = parts[parts.length - 1] as Path[number][]
  last[last.length - 1] = { ...(last[last.length - 1] as Path[number]), p3: end }
  return {
    ...seam,
    parts: parts.map((part, i) => (isSame(part, seam.parts[i] as Path) ? (seam.parts[i] as Path) : part)),
  }
}

function isSame(a: Path, b: Path): boolean {
  return equalPoints(startOf(a), startOf(b)) && equalPoints(endOf(a), endOf(b))
}
