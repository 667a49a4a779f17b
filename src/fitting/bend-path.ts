import { arcLength, arcLengthBetween } from '../geometry/arc-length.ts'
import { type Cubic, pointAt, subCubic } from '../geometry/cubic.ts'
import type { Path } from '../geometry/path.ts'
import { tangentAt } from '../geometry/path-length.ts'
import { add, distance, type Point, scale, subtract } from '../geometry/point.ts'

/**
 * Longest cubic that is bent as one, mm. With 20 the bent curve misses the exactly displaced one by less than 0.002 mm
 * on caps moved by 40 mm; every halving makes it sixteen times less.
 */
const LONGEST = 20

/** Steps of a bent cubic at which old and new positions are told. */
const STEPS = 4

/** How far a line moves at a place of it, mm, and how that changes along the line, mm per mm. */
export interface Displacement {
  readonly by: Point
  readonly change: Point
}

/** The displacement of a line: `at` mm from its start, where it has this point and direction. */
export type Bend = (at: number, point: Point, direction: Point) => Displacement

/** A cubic short enough to be bent as one, and where it lies on the line it is part of, mm. */
export interface Bendable {
  readonly cubic: Cubic
  readonly from: number
  readonly to: number
}

/** A path cut for bending; `start` is the position of its start. */
export function bendables(path: Path, start: number): Bendable[] {
  let at = start
  return path.flatMap((cubic) => {
    const count = Math.max(1, Math.ceil(arcLength(cubic) / LONGEST))
    return Array.from({ length: count }, (_, i) => {
      const part = subCubic(cubic, i / count, (i + 1) / count)
      const from = at
      at += arcLength(part)
      return { cubic: part, from, to: at }
    })
  })
}

/**
 * The line with every place moved by its displacement: end points exactly, the cubics between by Hermite interpolation
 * of the displacement, so that joints stay as smooth as they were, no curve is fitted, and the result depends linearly
 * on the displacement. A smooth displacement, like a cubic in the length, is met to 0.01 mm.
 */
export function bendPath(parts: readonly Bendable[], bend: Bend): Path {
  return parts.map(({ cubic: c, from, to }) => {
    const start = bend(from, c.p0, tangentAt(c, 0))
    const end = bend(to, c.p3, tangentAt(c, 1))
    const p0 = add(c.p0, start.by)
    const p3 = add(c.p3, end.by)
    return {
      p0,
      p1: add(p0, turned(subtract(c.p1, c.p0), start)),
      p2: subtract(p3, turned(subtract(c.p3, c.p2), end)),
      p3,
    }
  })
}

/** A handle as it leaves its end: it grows and turns with what the displacement changes along its length. */
function turned(handle: Point, { change }: Displacement): Point {
  return add(handle, scale(change, distance(handle, { x: 0, y: 0 })))
}

/** Positions of old and new places, mm from the start of the line, for the map of a bent line that now starts at `start`. */
export function bentPositions(parts: readonly Bendable[], bent: Path, start: number): { old: number[]; now: number[] } {
  const first = parts[0] as Bendable
  const old = [first.from]
  const now = [start]
  let length = start
  parts.forEach(({ cubic, from, to }, i) => {
    const c = bent[i] as Cubic
    for (let k = 1; k <= STEPS; k++) {
      const [a, b] = [(k - 1) / STEPS, k / STEPS]
      length += arcLengthBetween(c, a, b)
      old.push(k === STEPS ? to : from + arcLengthBetween(cubic, 0, b))
      now.push(length)
    }
  })
  return { old, now }
}

/** How far the line moved outwards where it moved most along its outward normal; signed, mm. Lines run anticlockwise. */
export function largestMove(parts: readonly Bendable[], bend: Bend): number {
  let most = 0
  for (const { cubic, from, to } of parts) {
    for (let k = 0; k <= STEPS; k++) {
      const t = k / STEPS
      const direction = tangentAt(cubic, t)
      const { by } = bend(from + (to - from) * t, pointAt(cubic, t), direction)
      const out = by.x * direction.y - by.y * direction.x
      if (Math.abs(out) > Math.abs(most)) most = out
    }
  }
  return most
}
