import type { Cubic } from '../geometry/cubic.ts'
import type { Path } from '../geometry/path.ts'
import type { Point } from '../geometry/point.ts'

/** Whether a path may come within so many mm of a point: cheaply, by the boxes of its cubics' control points. */
export function mayReach(path: Path, point: Point, within: number): boolean {
  for (const c of path) if (cubicMayReach(c, point, within)) return true
  return false
}

/** The same of one cubic. */
export function cubicMayReach({ p0, p1, p2, p3 }: Cubic, { x, y }: Point, within: number): boolean {
  return (
    x > Math.min(p0.x, p1.x, p2.x, p3.x) - within &&
    x < Math.max(p0.x, p1.x, p2.x, p3.x) + within &&
    y > Math.min(p0.y, p1.y, p2.y, p3.y) - within &&
    y < Math.max(p0.y, p1.y, p2.y, p3.y) + within
  )
}
