import { type Cubic, derivativeAt, subCubic } from './cubic.ts'
import { roots } from './roots.ts'

/**
 * The cubic cut at its cusps and turning points, where it stands still and its direction flips, so that the
 * direction is continuous along every part. Mostly the cubic itself; nothing for a cubic without length.
 */
export function smoothParts(c: Cubic): Cubic[] {
  const legs = [
    { x: c.p1.x - c.p0.x, y: c.p1.y - c.p0.y },
    { x: c.p2.x - c.p1.x, y: c.p2.y - c.p1.y },
    { x: c.p3.x - c.p2.x, y: c.p3.y - c.p2.y },
  ] as const
  const [d, e, f] = legs
  const size = Math.hypot(d.x, d.y) + Math.hypot(e.x, e.y) + Math.hypot(f.x, f.y)
  if (!(size > 1e-12)) return []
  // Legs that all point forward of each other leave no room for a standstill.
  if (d.x * e.x + d.y * e.y > 0 && e.x * f.x + e.y * f.y > 0 && d.x * f.x + d.y * f.y > 0) return [c]
  // |C′|² is least where C′·C″ = 0.
  const v = [d.x, 2 * (e.x - d.x), f.x - 2 * e.x + d.x] as const
  const w = [d.y, 2 * (e.y - d.y), f.y - 2 * e.y + d.y] as const
  const stops = roots([
    v[0] * v[1] + w[0] * w[1],
    v[1] * v[1] + w[1] * w[1] + 2 * (v[0] * v[2] + w[0] * w[2]),
    3 * (v[1] * v[2] + w[1] * w[2]),
    2 * (v[2] * v[2] + w[2] * w[2]),
  ]).filter((t) => {
    if (t < 1e-9 || t > 1 - 1e-9) return false
    const speed = derivativeAt(c, t)
    return Math.hypot(speed.x, speed.y) < 1e-7 * size
  })
  const parts: Cubic[] = []
  let from = 0
  for (const t of [...stops, 1]) {
    parts.push(subCubic(c, from, t))
    from = t
  }
  return parts
}
