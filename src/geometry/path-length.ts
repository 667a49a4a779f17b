import { arcLength, type LengthOptions, parameterWithin } from './arc-length.ts'
import { type Cubic, derivativeAt, pointAt, secondDerivativeAt, subCubic } from './cubic.ts'
import { LENGTH_ACCURACY, SAME_POINT } from './defaults.ts'
import type { Path } from './path.ts'
import { distance, magnitude, type Point, scale, unit } from './point.ts'

/** A place on a path: which cubic, and the parameter on it. */
export interface PathParameter {
  readonly index: number
  readonly t: number
}

/**
 * The length of a path in mm; the error of each cubic is within `accuracy` (default 1e-7). Cost: 0.2 µs a cubic. Throws
 * where `accuracy` is not above zero.
 */
export function pathLength(path: Path, options: LengthOptions = {}): number {
  let sum = 0
  for (const c of path) sum += arcLength(c, options)
  return sum
}

/**
 * Which cubic and parameter lies `along` mm from the start. Throws when `along` is off the path by more than
 * SAME_POINT: a place that is not on the seam is a mistake, not an end. The length reached is within `accuracy`
 * (default 1e-7) a cubic. Cost: 0.2 µs a cubic on the way.
 */
export function locate(path: Path, along: number, options: LengthOptions = {}): PathParameter {
  const accuracy = options.accuracy ?? LENGTH_ACCURACY
  const finer = { accuracy: accuracy / 4 }
  let rest = along
  if (rest < -SAME_POINT) throw new RangeError(`${along} mm lies before the start of the path`)
  for (let index = 0; index < path.length; index++) {
    const c = path[index] as Cubic
    const length = arcLength(c, finer)
    if (rest <= length) return { index, t: parameterWithin(c, rest, length, accuracy) }
    rest -= length
  }
  if (rest > SAME_POINT * Math.max(1, path.length))
    throw new RangeError(`${along} mm lies ${rest} mm beyond the end of the path`)
  return { index: path.length - 1, t: 1 }
}

/**
 * The point `along` mm from the start of the path, located as `locate` does. Cost: 0.2 µs a cubic on the way. Throws
 * when `along` is off the path by more than SAME_POINT.
 */
export function pointAlong(path: Path, along: number, options: LengthOptions = {}): Point {
  const { index, t } = locate(path, along, options)
  return pointAt(path[index] as Cubic, t)
}

/**
 * The unit direction of travel `along` mm from the start of the path, located as `locate` does. Cost: 0.2 µs a cubic on
 * the way. Throws when `along` is off the path by more than SAME_POINT.
 */
export function directionAlong(path: Path, along: number, options: LengthOptions = {}): Point {
  const { index, t } = locate(path, along, options)
  return tangentAt(path[index] as Cubic, t)
}

/**
 * The unit direction of travel of a cubic at t, also where handles lie on their end points (the limit from
 * inside the curve). Throws on a cubic that is a single point.
 */
export function tangentAt(c: Cubic, t: number): Point {
  const d = derivativeAt(c, t)
  const size = distance(c.p3, c.p0) + distance(c.p2, c.p1)
  const speed = magnitude(d)
  if (speed > 1e-9 * size) return { x: d.x / speed, y: d.y / speed }
  const dd = secondDerivativeAt(c, t)
  // Where the speed vanishes the second derivative points the way out of a start and against the way into an end.
  if (magnitude(dd) > 1e-9 * size) return t > 0.5 ? scale(unit(dd), -1) : unit(dd)
  const chord = { x: c.p3.x - c.p0.x, y: c.p3.y - c.p0.y }
  return unit(chord)
}

/**
 * The part of the path between `from` and `to` mm from its start, from < to; untouched cubics are the same objects. The
 * cuts are located as `locate` does. Cost: 0.3 µs a cubic on the way. Throws when a place is off the path or `from` is
 * not before `to`.
 */
export function subPath(path: Path, from: number, to: number, options: LengthOptions = {}): Path {
  if (!(from < to)) throw new RangeError(`a part of a path needs from < to, not ${from} and ${to}`)
  const a = locate(path, from, options)
  const b = locate(path, to, options)
  const parts: Cubic[] = []
  for (let index = a.index; index <= b.index; index++) {
    const c = path[index] as Cubic
    const t0 = index === a.index ? a.t : 0
    const t1 = index === b.index ? b.t : 1
    if (t1 > t0) parts.push(subCubic(c, t0, t1))
  }
  return parts
}

/**
 * The path cut `along` mm from its start, located as `locate` does, into two paths that together are the path. Cost:
 * 0.3 µs a cubic on the way. Throws when the place is off the path or its end.
 */
export function splitPath(path: Path, along: number, options: LengthOptions = {}): [Path, Path] {
  const { index, t } = locate(path, along, options)
  const c = path[index] as Cubic
  const before = path.slice(0, index)
  const after = path.slice(index + 1)
  if (t > 0) before.push(subCubic(c, 0, t))
  if (t < 1) after.unshift(subCubic(c, t, 1))
  if (before.length === 0 || after.length === 0)
    throw new RangeError(`${along} mm is an end of the path, it cannot be cut there`)
  return [before, after]
}
