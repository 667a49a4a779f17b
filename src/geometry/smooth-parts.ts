import { type Cubic, derivativeAt, pointAt, subCubic } from './cubic.ts'
import { SAME_POINT } from './defaults.ts'
import { distance } from './point.ts'
import { roots } from './roots.ts'

// Handles this near to their end lie on it, as a share of the control polygon: their direction is rounding.
const ON_END = 1e-10
// Slower than this share of the control polygon is a standstill.
const STANDSTILL = 1e-7

/**
 * The cubic cut at its cusps and turning points, where it stands still and its direction flips, so that the
 * direction is continuous along every part; handles that lie on their end within rounding do so exactly. Mostly
 * the cubic itself; nothing for a cubic without length.
 */
export function smoothParts(c: Cubic): Cubic[] {
  const dx = c.p1.x - c.p0.x
  const dy = c.p1.y - c.p0.y
  const ex = c.p2.x - c.p1.x
  const ey = c.p2.y - c.p1.y
  const fx = c.p3.x - c.p2.x
  const fy = c.p3.y - c.p2.y
  const size = Math.hypot(dx, dy) + Math.hypot(ex, ey) + Math.hypot(fx, fy)
  if (!(size > 1e-12)) return []
  // Legs that all point forward of each other leave no room for a standstill.
  if (dx * ex + dy * ey > 0 && ex * fx + ey * fy > 0 && dx * fx + dy * fy > 0) return [c]
  // |C′|² is least where C′·C″ = 0.
  const vx = 2 * (ex - dx)
  const vy = 2 * (ey - dy)
  const wx = fx - 2 * ex + dx
  const wy = fy - 2 * ey + dy
  const stops = roots([
    dx * vx + dy * vy,
    vx * vx + vy * vy + 2 * (dx * wx + dy * wy),
    3 * (vx * wx + vy * wy),
    2 * (wx * wx + wy * wy),
  ]).filter((t) => {
    if (t <= 0 || t >= 1) return false
    // A standstill at an end, by a handle that lies on it, turns nothing back.
    const p = pointAt(c, t)
    if (distance(p, c.p0) <= SAME_POINT || distance(p, c.p3) <= SAME_POINT) return false
    const speed = derivativeAt(c, t)
    return Math.hypot(speed.x, speed.y) < STANDSTILL * size
  })
  const parts: Cubic[] = []
  let from = 0
  for (const t of [...stops, 1]) {
    const part = subCubic(c, from, t)
    // A cut at a standstill has its handle on the cut.
    const start = from > 0 || distance(part.p0, part.p1) <= ON_END * size
    const end = t < 1 || distance(part.p2, part.p3) <= ON_END * size
    parts.push(start || end ? { ...part, p1: start ? part.p0 : part.p1, p2: end ? part.p3 : part.p2 } : part)
    from = t
  }
  return parts
}
