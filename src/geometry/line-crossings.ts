import { type Cubic, pointAt } from './cubic.ts'
import type { Path } from './path.ts'
import type { PathParameter } from './path-length.ts'
import type { Point } from './point.ts'
import { roots } from './roots.ts'

export interface LineCrossing extends PathParameter {
  readonly at: Point
  /** Place on the line: 0 at its first point, 1 at its second. */
  readonly share: number
}

/**
 * Where a path meets the endless straight line through two points, in the order of the path; a joint on the line counts
 * once, a touch once, a stretch on the line not at all. The roots of a cubic: exact to rounding. For a bounded line use
 * `share`, or `crossings` with `[line(a, b)]`. Throws when the points coincide. Cost: about 0.6 µs a cubic.
 */
export function lineCrossings(path: Path, a: Point, b: Point): LineCrossing[] {
  const dx = b.x - a.x
  const dy = b.y - a.y
  const length = Math.sqrt(dx * dx + dy * dy)
  if (!(length > 0)) throw new RangeError('a line needs two distinct points')
  const off = (p: Point) => ((p.x - a.x) * dy - (p.y - a.y) * dx) / length
  const found: LineCrossing[] = []
  path.forEach((c: Cubic, index) => {
    const q0 = off(c.p0)
    const q1 = off(c.p1)
    const q2 = off(c.p2)
    const q3 = off(c.p3)
    if (Math.min(q0, q1, q2, q3) > 1e-9 || Math.max(q0, q1, q2, q3) < -1e-9) return
    // On the line within rounding: not a crossing but a common stretch.
    if (Math.max(Math.abs(q0), Math.abs(q1), Math.abs(q2), Math.abs(q3)) < 1e-9) return
    const places = roots([q0, 3 * (q1 - q0), 3 * (q2 - 2 * q1 + q0), q3 - 3 * q2 + 3 * q1 - q0])
    // Ends on the line within rounding, which a root may miss by a hair.
    if (Math.abs(q0) < 1e-9 && !places.some((t) => t < 1e-6)) places.unshift(0)
    if (Math.abs(q3) < 1e-9 && !places.some((t) => t > 1 - 1e-6)) places.push(1)
    for (const t of places) {
      const at = pointAt(c, t)
      const before = found[found.length - 1]
      if (before && before.index === index - 1 && before.t > 1 - 1e-6 && t < 1e-6) continue
      found.push({ index, t, at, share: ((at.x - a.x) * dx + (at.y - a.y) * dy) / (length * length) })
    }
  })
  return found
}
