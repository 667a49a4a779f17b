import { type Cubic, pointAt } from './cubic.ts'
import type { Path } from './path.ts'
import type { Point } from './point.ts'

// Nearer to the level than this is on it, mm.
const ON_LEVEL = 1e-9

/**
 * The points at which a path crosses the level y = `height`, in the path's order, to rounding. Touching without
 * crossing does not count; a crossing that runs along the level counts once, where it comes to it, and so does an end on
 * the level that the path leaves or comes to. A path along the level has none. Cost: about 1.5 µs a cubic.
 */
export function levelCrossings(path: Path, height: number): Point[] {
  const points: Point[] = []
  // The last place off the level, and the first one on it since.
  let off: Place | undefined
  let on: Place | undefined
  for (const c of path) {
    for (const t of [0, ...turningPoints(c), 1]) {
      const here = { c, t, over: pointAt(c, t).y - height }
      if (Math.abs(here.over) <= ON_LEVEL) {
        on ??= here
        continue
      }
      const crosses = off === undefined ? on !== undefined : off.over > 0 !== here.over > 0
      if (crosses) points.push({ x: on ? pointAt(on.c, on.t).x : crossing(off as Place, here, height), y: height })
      off = here
      on = undefined
    }
  }
  if (off && on) points.push({ x: pointAt(on.c, on.t).x, y: height })
  return points
}

interface Place {
  readonly c: Cubic
  readonly t: number
  readonly over: number
}

/** Where the stretch of a cubic up to `to`, monotone from the place before it, crosses the level. */
function crossing(from: Place, to: Place, height: number): number {
  const { c } = to
  let low = from.c === c ? from.t : 0
  let high = to.t
  for (let i = 0; i < 60; i++) {
    const t = (low + high) / 2
    if (pointAt(c, t).y - height > 0 === from.over > 0) low = t
    else high = t
  }
  return pointAt(c, (low + high) / 2).x
}

/** Parameters inside (0, 1) at which y has an extreme, in order. */
function turningPoints(c: Cubic): number[] {
  const a = c.p3.y - 3 * c.p2.y + 3 * c.p1.y - c.p0.y
  const b = 2 * (c.p2.y - 2 * c.p1.y + c.p0.y)
  const d = c.p1.y - c.p0.y
  const disc = b * b - 4 * a * d
  if (disc < 0) return []
  // The stable form: no difference of nearly equal numbers.
  const q = -(b + (b < 0 ? -1 : 1) * Math.sqrt(disc)) / 2
  return [a === 0 ? Number.NaN : q / a, q === 0 ? Number.NaN : d / q]
    .filter((t) => t > 0 && t < 1)
    .sort((x, y) => x - y)
}
