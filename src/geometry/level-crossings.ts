import { type Cubic, pointAt } from './cubic.ts'
import type { Path } from './path.ts'
import type { Point } from './point.ts'

/**
 * The points at which a path crosses the level y = `height`, in the path's order, to rounding. Touching without
 * crossing, and lying on the level, do not count.
 */
export function levelCrossings(path: Path, height: number): Point[] {
  return path.flatMap((c) => cubicCrossings(c, height))
}

function cubicCrossings(c: Cubic, height: number): Point[] {
  const stops = [0, ...turningPoints(c), 1]
  const points: Point[] = []
  for (let k = 1; k < stops.length; k++) {
    let low = stops[k - 1] as number
    let high = stops[k] as number
    const rising = pointAt(c, low).y < height
    // Half open, so that a crossing where two cubics or two stretches meet counts once.
    if (rising === pointAt(c, high).y < height) continue
    for (let i = 0; i < 60; i++) {
      const t = (low + high) / 2
      if (pointAt(c, t).y < height === rising) low = t
      else high = t
    }
    points.push({ x: pointAt(c, (low + high) / 2).x, y: height })
  }
  return points
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
