import type { Cubic } from '../geometry/cubic.ts'
import { endOf, type Path, startOf } from '../geometry/path.ts'
import { pathLength } from '../geometry/path-length.ts'
import type { Point } from '../geometry/point.ts'
import type { Pattern } from '../pattern/pattern.ts'
import { partStart, pieceOf, seamLength, seamOf } from '../pattern/seam.ts'
import { cutPath } from './cut-path.ts'
import { displace } from './displace.ts'
import type { OperationResult } from './operation.ts'
import { type AlongMap, tableMap } from './position-map.ts'
import type { Profile } from './profile.ts'
import { replaceSeams } from './replace-seams.ts'
import { smoothPaths } from './seam-run.ts'

/** An end of a part of a seam, by names: pieces are new objects after every turn. */
export interface EdgeName {
  readonly piece: string
  readonly seam: string
  readonly part: number
  readonly which: 'start' | 'end'
}

/** An edge with its end turned. */
export interface TurnedEdge {
  readonly result: OperationResult
  /** The farthest that any point of it moved, and how much longer its seam is now, mm. */
  readonly move: number
  readonly longer: number
}

/** A mark this near to the end of an edge is at the end, mm. */
const AT_END = 0.01

/**
 * How far an edge may be turned from its end, mm: half of its smooth part, so that both ends find room, and short of the
 * first notch, mark or end of a join's part: they stay where they are.
 */
export function roomToTurn(pattern: Pattern, { piece: id, seam: name, part, which }: EdgeName): number {
  const piece = pieceOf(pattern, id)
  const seam = seamOf(piece, name)
  const smooth = smoothPaths(seam.parts[part] as Path)
  const half = pathLength((which === 'start' ? smooth[0] : smooth[smooth.length - 1]) as Path) / 2
  const before = partStart(seam, which === 'start' ? part : part + 1)
  const marks = [
    ...piece.notches
      .filter((notch) => notch.seam === name)
      .flatMap(({ along, marks: count, step = 0 }) => [along, along + (count - 1) * step]),
    ...piece.landmarks.flatMap((mark) => ('seam' in mark && mark.seam === name ? [mark.along] : [])),
    ...pattern.joins
      .flatMap((join) => [...join.a, ...join.b])
      .filter((one) => one.piece === id && one.seam === name)
      .flatMap(({ from, to }) => [from ?? 0, to ?? 0]),
  ]
  const away = marks
    .map((at) => (which === 'start' ? at - before : before - at))
    .filter((distance) => distance > AT_END)
  return Math.min(half, ...away)
}

/**
 * An edge with its direction at one end turned by `slope` (mm outwards for every mm from the end) within `reach`: moved
 * along its outward normals by slope · s · (1 − s/reach)², s from the end. The end itself stays, so does everything
 * beyond the reach, with its direction there; nothing moves by more than 4/27 of slope · reach. Undefined where the edge
 * would fold over itself, or its seam would have a length that `allows` does not allow, mm.
 */
export function turnEdge(
  pattern: Pattern,
  edge: EdgeName,
  slope: number,
  reach: number,
  allows: (length: number) => boolean = () => true,
): TurnedEdge | undefined {
  const piece = pieceOf(pattern, edge.piece)
  const seam = seamOf(piece, edge.seam)
  const old = seam.parts[edge.part] as Path
  const length = pathLength(old)
  const starts = edge.which === 'start'
  const [from, to] = starts ? [0, reach] : [length - reach, length]
  const turned = displace(
    { path: cutPath(old, from, to), start: 0, length: reach, fade: reach },
    endProfile(slope, reach, starts),
  )
  if ('folds' in turned) return undefined
  const kept = starts ? cutPath(old, to, length) : cutPath(old, 0, from)
  const part = starts
    ? [...between(turned.path, startOf(old), startOf(kept)), ...kept]
    : [...kept, ...between(turned.path, endOf(kept), endOf(old))]
  const parts = seam.parts.map((path, i) => (i === edge.part ? part : path))
  const now = { ...seam, parts }
  const after = seamLength(now)
  if (!allows(after)) return undefined
  const before = seamLength(seam)
  const base = partStart(seam, edge.part) + from
  const map = seamTable({ base, old: turned.old, now: turned.now, before, after })
  const result = replaceSeams(pattern, piece, { seams: new Map([[seam.id, { seam: now, map }]]), darts: piece.darts })
  if (!result.ok) return undefined
  return { result: result.value, move: (Math.abs(slope) * reach * 4) / 27, longer: after - before }
}

function endProfile(slope: number, reach: number, starts: boolean): Profile {
  const from = (at: number) => Math.min(1, Math.max(0, starts ? at / reach : 1 - at / reach))
  const along = starts ? 1 : -1
  return {
    nodes: [
      { at: 0, amount: 0 },
      { at: reach, amount: 0 },
    ],
    amount: (at) => slope * reach * from(at) * (1 - from(at)) ** 2,
    slope: (at) => along * slope * (1 - from(at)) * (1 - 3 * from(at)),
  }
}

/** The path from one point to another, next to its own ends. */
function between(path: Path, start: Point, end: Point): Path {
  return path.map((c, i): Cubic => {
    const p0 = i === 0 ? start : c.p0
    const p3 = i === path.length - 1 ? end : c.p3
    return p0 === c.p0 && p3 === c.p3 ? c : { ...c, p0, p3 }
  })
}

interface Table {
  /** Where the turned stretch begins on its seam. */
  readonly base: number
  readonly old: readonly number[]
  readonly now: readonly number[]
  /** Lengths of the seam. */
  readonly before: number
  readonly after: number
}

/** Places before the stretch stay, those on it go along, those behind it keep their distance from the end. */
function seamTable({ base, old, now, before, after }: Table): AlongMap {
  const pairs: [number, number][] = [[0, 0]]
  const last = () => (pairs[pairs.length - 1] as [number, number])[0]
  old.forEach((at, i) => {
    if (base + at > last() + AT_END && base + at < before - AT_END) pairs.push([base + at, base + (now[i] as number)])
  })
  pairs.push([before, after])
  return tableMap(
    pairs.map(([at]) => at),
    pairs.map(([, at]) => at),
  )
}
