import { arcLength, arcLengthBetween } from './arc-length.ts'
import { type Cubic, pointAt } from './cubic.ts'
import type { Path } from './path.ts'
import type { PathParameter } from './path-length.ts'
import { distance, type Point } from './point.ts'
import { roots } from './roots.ts'

export interface Nearest extends PathParameter {
  readonly at: Point
  /** Arc length from the start of the path to `at`, mm. */
  readonly along: number
  /** From the asked point to `at`, mm. */
  readonly distance: number
}

/**
 * The point of a path nearest to p: every candidate is found, as the roots of the quintic (C − p)·C′, so a far
 * bend cannot hide it; the distance is right to rounding, `along` to LENGTH_ACCURACY a cubic. Of equally near
 * points the first along the path. Throws on an empty path.
 */
export function nearest(path: Path, p: Point): Nearest {
  const place = nearestParameter(path, p)
  return { ...place, along: alongOf(path, place) }
}

/** The same without the arc length, which costs more than the search on a long path. */
export function nearestParameter(path: Path, p: Point): Omit<Nearest, 'along'> {
  let best: Omit<Nearest, 'along'> | undefined
  for (let index = 0; index < path.length; index++) {
    const c = path[index] as Cubic
    if (best && boxDistance(c, p) >= best.distance) continue
    const found = nearestOnCubic(c, p)
    if (!best || found.distance < best.distance) best = { index, ...found }
  }
  if (!best) throw new RangeError('a path needs at least one cubic')
  return best
}

/** The nearest point of one cubic; see `nearest`. */
export function nearestOnCubic(c: Cubic, p: Point): { t: number; at: Point; distance: number } {
  let t = 0
  let at = c.p0
  let near = distance(c.p0, p)
  for (const root of roots(towards(c, p))) {
    const q = pointAt(c, root)
    const d = distance(q, p)
    if (d < near) {
      near = d
      t = root
      at = q
    }
  }
  const end = distance(c.p3, p)
  if (end < near) return { t: 1, at: c.p3, distance: end }
  return { t, at, distance: near }
}

/** The arc length in mm from the start of the path to a parameter on it. */
export function alongOf(path: Path, place: PathParameter): number {
  let sum = 0
  for (let i = 0; i < place.index; i++) sum += arcLength(path[i] as Cubic)
  return place.t === 0 ? sum : sum + arcLengthBetween(path[place.index] as Cubic, 0, place.t)
}

/** The distance from p to the box of the control points: no point of the cubic is nearer. */
function boxDistance(c: Cubic, p: Point): number {
  const left = Math.min(c.p0.x, c.p1.x, c.p2.x, c.p3.x)
  const right = Math.max(c.p0.x, c.p1.x, c.p2.x, c.p3.x)
  const bottom = Math.min(c.p0.y, c.p1.y, c.p2.y, c.p3.y)
  const top = Math.max(c.p0.y, c.p1.y, c.p2.y, c.p3.y)
  const dx = Math.max(left - p.x, 0, p.x - right)
  const dy = Math.max(bottom - p.y, 0, p.y - top)
  return Math.sqrt(dx * dx + dy * dy)
}

/** (C − p)·C′ as a polynomial of degree five. */
function towards(c: Cubic, p: Point): number[] {
  const sum = [0, 0, 0, 0, 0, 0]
  for (const [q0, q1, q2, q3] of [
    [c.p0.x - p.x, c.p1.x - p.x, c.p2.x - p.x, c.p3.x - p.x],
    [c.p0.y - p.y, c.p1.y - p.y, c.p2.y - p.y, c.p3.y - p.y],
  ] as const) {
    const v = [q0, 3 * (q1 - q0), 3 * (q2 - 2 * q1 + q0), q3 - 3 * q2 + 3 * q1 - q0]
    for (let i = 0; i <= 3; i++) {
      for (let k = 1; k <= 3; k++) {
        sum[i + k - 1] = (sum[i + k - 1] as number) + (v[i] as number) * k * (v[k] as number)
      }
    }
  }
  return sum
}
