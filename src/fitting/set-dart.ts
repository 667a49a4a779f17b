import type { Problem } from '../base/problem.ts'
import { failure, type Result, success } from '../base/result.ts'
import { line } from '../geometry/cubic.ts'
import { endOf, lastCubic, type Path, reversePath } from '../geometry/path.ts'
import { pathLength, tangentAt } from '../geometry/path-length.ts'
import {
  along as alongBy,
  between,
  distance,
  equalPoints,
  type Point,
  rightOf,
  subtract,
  unit,
} from '../geometry/point.ts'
import type { Pattern } from '../pattern/pattern.ts'
import type { Dart, Piece } from '../pattern/piece.ts'
import { pieceOf, seamLength, seamOf } from '../pattern/seam.ts'
import { isStraight } from './close-cut.ts'
import { cutPath } from './cut-path.ts'
import { dartPlace } from './dart-place.ts'
import { type OperationResult, unchanged } from './operation.ts'
import type { AlongMap } from './position-map.ts'
import { replaceSeams } from './replace-seams.ts'
import { warpPath } from './warp-path.ts'

/** The figures that a dart is to have; those not given stay. */
export interface SetDartOptions {
  /** Id of the piece. */
  readonly piece: string
  /** Id of the dart. */
  readonly dart: string
  /** Width of the mouth, mm: taken from or given back to the seam evenly on both sides. */
  readonly intake?: number
  /** Distance of the point from the middle of the mouth, mm, along the dart's axis. */
  readonly length?: number
  /** The point itself; not together with `length`. */
  readonly point?: Point
}

/** Over how many mm a seam is trued to a mouth whose legs changed. */
const TRUE_OVER = 40

/** Mouths that miss their place by less are there, mm. */
const THERE = 1e-7

/** The least of a seam that must be left beside a mouth, mm. */
const LEAST_SEAM = 10

/**
 * The dart with another intake, length or point. A wider mouth takes its cloth from the seam on both sides, whose sewn
 * length is less by as much; a narrower one gives it back. With another point the mouth turns about its middle until both
 * legs are equal, its width stays, and the seam is trued to it over 40 mm on each side. The same pattern where nothing changes. Problems: no seam left beside the mouth, a
 * mark that lies where the mouth opens. Throws when there is no such dart, and on an intake or length that is not above 0.
 */
export function setDart(pattern: Pattern, options: SetDartOptions): Result<OperationResult> {
  const piece = pieceOf(pattern, options.piece)
  const dart = piece.darts.find((d) => d.id === options.dart)
  if (!dart) throw new RangeError(`no dart "${options.dart}" on ${piece.id}`)
  const width = distance(dart.mouth[0], dart.mouth[1])
  const intake = options.intake ?? width
  if (!(intake > 0) || !((options.length ?? 1) > 0)) throw new RangeError('a dart has an intake and a length above 0')
  const point = pointFor(dart, options)
  if (intake === width && equalPoints(point, dart.point)) return success(unchanged(pattern))
  const seam = seamOf(piece, dart.seam)
  const { along, part } = dartPlace(piece, dart)
  const before = seam.parts[part] as Path
  const after = seam.parts[part + 1] as Path
  const room = Math.min(pathLength(before), pathLength(after)) - LEAST_SEAM
  const step = stepFor(before, after, intake, room)
  if (step === undefined) return failure(noRoom(piece, dart, intake, width + 2 * room))
  const one = withStep(before, step)
  const other = reversePath(withStep(reversePath(after), step))
  const [a, b] = [endOf(one), (other[0] as Path[number]).p0]
  const mouth = squareMouth(a, b, point, intake)
  const first = ended(one, mouth[0])
  const second = ended(reversePath(other), mouth[1])
  const parts = [...seam.parts.slice(0, part), first.path, reversePath(second.path), ...seam.parts.slice(part + 2)]
  const now = { ...seam, parts }
  return replaceSeams(pattern, piece, {
    seams: new Map([[seam.id, { seam: now, map: dartMap(along, step, seamLength(seam), seamLength(now)) }]]),
    darts: piece.darts.map((d) => (d === dart ? { ...dart, mouth, point } : d)),
  })
}

function pointFor(dart: Dart, { length, point }: SetDartOptions): Point {
  if (length !== undefined && point !== undefined) throw new RangeError('a length or a point of a dart, not both')
  if (point !== undefined) return point
  if (length === undefined) return dart.point
  const middle = between(dart.mouth[0], dart.mouth[1], 0.5)
  return alongBy(middle, unit(subtract(dart.point, middle)), length)
}

/** By how much both parts must be cut off (positive) or go on straight (negative) for a mouth of that width. */
function stepFor(before: Path, after: Path, intake: number, room: number): number | undefined {
  const back = reversePath(after)
  const miss = (step: number) => distance(endOf(withStep(before, step)), endOf(withStep(back, step))) - intake
  let step = -miss(0) / 2
  for (let i = 0; i < 60; i++) {
    if (step > Math.max(room, 1e-9)) return undefined
    const off = miss(step)
    if (Math.abs(off) < 1e-10) return step
    step -= off / 2
  }
  return Math.abs(miss(step)) < 1e-6 ? step : undefined
}

/** The path without its last `step` mm, or with as much more in its own direction. */
function withStep(path: Path, step: number): Path {
  if (step === 0) return path
  const last = lastCubic(path)
  if (step < 0) {
    const end = alongBy(last.p3, tangentAt(last, 1), -step)
    return isStraight(path) ? [line((path[0] as Path[number]).p0, end)] : [...path, line(last.p3, end)]
  }
  const kept = cutPath(path, 0, pathLength(path) - step)
  return isStraight(path) ? [line((path[0] as Path[number]).p0, endOf(kept))] : kept
}

/** The mouth of that width with the same middle, square to the line from there to the point: its legs are equal. */
function squareMouth(a: Point, b: Point, point: Point, width: number): readonly [Point, Point] {
  const middle = between(a, b, 0.5)
  const axis = unit(subtract(point, middle))
  // The piece lies left of its seam, and the point in the piece.
  const along = rightOf(axis)
  return [alongBy(middle, along, -width / 2), alongBy(middle, along, width / 2)]
}

/** The path with its end moved to a place nearby, trued over its last bit. */
function ended(path: Path, to: Point): { readonly path: Path } {
  const by = subtract(to, endOf(path))
  if (Math.hypot(by.x, by.y) < THERE) {
    return { path: [...path.slice(0, -1), { ...lastCubic(path), p3: to }] }
  }
  if (isStraight(path) && pathLength(path) <= TRUE_OVER) return { path: [line((path[0] as Path[number]).p0, to)] }
  const length = pathLength(path)
  const from = Math.max(0, length - TRUE_OVER)
  const moved = warpPath(cutPath(path, from, length), (at, along) => {
    const u = Math.min(1, along / (length - from))
    return alongBy(at, by, u * u * (3 - 2 * u))
  })
  const kept = from > 0 ? cutPath(path, 0, from) : []
  const tail = [...moved.path]
  if (kept.length > 0) tail[0] = { ...(tail[0] as Path[number]), p0: endOf(kept) }
  tail[tail.length - 1] = { ...lastCubic(tail), p3: to }
  return { path: [...kept, ...tail] }
}

/** Places before the mouth stay, those after it keep their distance from the seam's end; the trued ends give way a little. */
function dartMap(at: number, step: number, before: number, now: number): AlongMap {
  const change = now - before
  const gone = { gone: 'it was taken into the dart' }
  return (along) => {
    if (step > 0 && along > at - step + 1e-6 && along < at + step - 1e-6 && Math.abs(along - at) > 1e-6) return gone
    const mouth = at + change / 2
    if (along <= at) return Math.min(along, mouth)
    return Math.max(along + change, mouth)
  }
}

function noRoom(piece: Piece, dart: Dart, intake: number, most: number): Problem {
  return {
    code: 'no-room-for-dart',
    where: { piece: piece.id, seam: dart.seam },
    actual: `a mouth of ${intake.toFixed(1)} mm for the ${dart.id}`,
    expected: `at most ${Math.max(0, most).toFixed(1)} mm, so that ${LEAST_SEAM} mm of seam stay on both sides`,
    hint: 'take less into this dart, or let another dart or the side seam take the rest',
  }
}
