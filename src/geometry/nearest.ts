import { arcLength, arcLengthBetween } from './arc-length.ts'
import { type Cubic, derivativeAt, pointAt, reverseCubic, secondDerivativeAt } from './cubic.ts'
import type { Path } from './path.ts'
import type { PathParameter } from './path-length.ts'
import { distance, type Point } from './point.ts'
import { roots } from './roots.ts'

// A last handle this short, as a share of the rest of the control polygon, is as good as none.
const SHORT = 0.01
// Nearer than this, mm, the place along the curve shows in the distance.
const POLISHED = 1

export interface Nearest extends PathParameter {
  readonly at: Point
  /** Arc length from the start of the path to `at`, mm. */
  readonly along: number
  /** From the asked point to `at`, mm. */
  readonly distance: number
}

/**
 * The point of a path nearest to p: every candidate is found, as the roots of the quintic (C − p)·C′, so a far bend
 * cannot hide it; the distance in mm is right to rounding, to 1e-7 where a cubic nearly stands still, `along` to
 * LENGTH_ACCURACY a cubic. Of equally near points the first along the path. Cost: about 1 µs a cubic. Throws on an empty
 * path.
 */
export function nearest(path: Path, p: Point): Nearest {
  const place = nearestParameter(path, p)
  return { ...place, along: alongOf(path, place) }
}

/**
 * The same as `nearest` without the arc length, which costs more than the search on a long path. Cost: about 1 µs a
 * cubic, less for those far off. Throws on an empty path.
 */
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

/** The point of one cubic nearest to p, its parameter and distance in mm, as `nearest` finds them. Cost: about 1 µs. */
export function nearestOnCubic(c: Cubic, p: Point): { t: number; at: Point; distance: number } {
  let t = 0
  let at = c.p0
  let near = distance(c.p0, p)
  if (near === 0) return { t, at, distance: near }
  for (const root of candidates(c, p)) {
    const q = pointAt(c, root)
    const d = distance(q, p)
    if (d < near) {
      near = d
      t = root
      at = q
    }
  }
  const end = distance(c.p3, p)
  if (end < near) return end < POLISHED ? polished(c, p, 1, c.p3, end) : { t: 1, at: c.p3, distance: end }
  return near < POLISHED ? polished(c, p, t, at, near) : { t, at, distance: near }
}

/** Parameters among which is the nearest point's, if it is not an end. */
function candidates(c: Cubic, p: Point): number[] {
  const found = roots(towards(c, p))
  const last = distance(c.p2, c.p3)
  if (last > SHORT * (distance(c.p0, c.p1) + distance(c.p1, c.p2))) return found
  // The powers of t lose the end of a cubic that hardly moves there; those of 1 − t do not.
  const back = roots(towards(reverseCubic(c), p)).filter((t) => t < 0.5)
  return [...found.filter((t) => t < 0.75), ...back.map((t) => 1 - t).reverse()]
}

/**
 * The place improved on the curve itself, as long as it comes nearer: where the cubic nearly stands still the rounding of
 * the quintic hides where its root is, by up to a hundred-thousandth of a mm. By Newton, or by Gauss and Newton, who do
 * not fail beside the farthest point.
 */
function polished(c: Cubic, p: Point, t: number, at: Point, near: number): { t: number; at: Point; distance: number } {
  for (let step = 0; step < 8 && near > 0; step++) {
    const d = derivativeAt(c, t)
    const dd = secondDerivativeAt(c, t)
    const along = (at.x - p.x) * d.x + (at.y - p.y) * d.y
    const square = d.x * d.x + d.y * d.y
    // Where it stands still, with a handle on its end: as far as the second derivative takes it.
    const out = Math.sqrt((2 * near) / Math.hypot(dd.x, dd.y))
    const slope = square + (at.x - p.x) * dd.x + (at.y - p.y) * dd.y
    let better = false
    for (const next of [t - along / slope, t - along / square, t < 0.5 ? t + out : t - out]) {
      if (!(next >= 0 && next <= 1)) continue
      const q = pointAt(c, next)
      const nearer = distance(q, p)
      if (!(nearer < near)) continue
      better = near - nearer > 1e-16 * near
      t = next
      at = q
      near = nearer
      break
    }
    if (!better) break
  }
  return { t, at, distance: near }
}

/**
 * The arc length in mm from the start of the path to a parameter on it, to LENGTH_ACCURACY a cubic. Cost: 0.2 µs a
 * cubic on the way.
 */
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
function towards({ p0, p1, p2, p3 }: Cubic, p: Point): number[] {
  const x0 = p0.x - p.x
  const y0 = p0.y - p.y
  const x1 = 3 * (p1.x - p0.x)
  const y1 = 3 * (p1.y - p0.y)
  const x2 = 3 * (p2.x - 2 * p1.x + p0.x)
  const y2 = 3 * (p2.y - 2 * p1.y + p0.y)
  const x3 = p3.x - 3 * p2.x + 3 * p1.x - p0.x
  const y3 = p3.y - 3 * p2.y + 3 * p1.y - p0.y
  return [
    x0 * x1 + y0 * y1,
    2 * (x0 * x2 + y0 * y2) + x1 * x1 + y1 * y1,
    3 * (x0 * x3 + y0 * y3 + x1 * x2 + y1 * y2),
    4 * (x1 * x3 + y1 * y3) + 2 * (x2 * x2 + y2 * y2),
    5 * (x2 * x3 + y2 * y3),
    3 * (x3 * x3 + y3 * y3),
  ]
}
