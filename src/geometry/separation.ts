import { type Cubic, pointAt } from './cubic.ts'
import { SAME_POINT } from './defaults.ts'
import { cross, magnitude, type Point, subtract } from './point.ts'

/** The longer side of the box of the control points, mm. */
export function extent(c: Cubic): number {
  return Math.max(
    Math.max(c.p0.x, c.p1.x, c.p2.x, c.p3.x) - Math.min(c.p0.x, c.p1.x, c.p2.x, c.p3.x),
    Math.max(c.p0.y, c.p1.y, c.p2.y, c.p3.y) - Math.min(c.p0.y, c.p1.y, c.p2.y, c.p3.y),
  )
}

/** Whether the boxes of the control points are more than SAME_POINT apart: the curves do not meet. */
export function boxesApart(a: Cubic, b: Cubic): boolean {
  return (
    Math.min(a.p0.x, a.p1.x, a.p2.x, a.p3.x) > Math.max(b.p0.x, b.p1.x, b.p2.x, b.p3.x) + SAME_POINT ||
    Math.min(b.p0.x, b.p1.x, b.p2.x, b.p3.x) > Math.max(a.p0.x, a.p1.x, a.p2.x, a.p3.x) + SAME_POINT ||
    Math.min(a.p0.y, a.p1.y, a.p2.y, a.p3.y) > Math.max(b.p0.y, b.p1.y, b.p2.y, b.p3.y) + SAME_POINT ||
    Math.min(b.p0.y, b.p1.y, b.p2.y, b.p3.y) > Math.max(a.p0.y, a.p1.y, a.p2.y, a.p3.y) + SAME_POINT
  )
}

/** Whether b lies wholly on one side of the strip along a's chord that holds a. */
export function linesApart(a: Cubic, b: Cubic): boolean {
  const dx = a.p3.x - a.p0.x
  const dy = a.p3.y - a.p0.y
  const length = Math.sqrt(dx * dx + dy * dy)
  if (length < 1e-12) return false
  const nx = -dy / length
  const ny = dx / length
  const a1 = (a.p1.x - a.p0.x) * nx + (a.p1.y - a.p0.y) * ny
  const a2 = (a.p2.x - a.p0.x) * nx + (a.p2.y - a.p0.y) * ny
  const b0 = (b.p0.x - a.p0.x) * nx + (b.p0.y - a.p0.y) * ny
  const b1 = (b.p1.x - a.p0.x) * nx + (b.p1.y - a.p0.y) * ny
  const b2 = (b.p2.x - a.p0.x) * nx + (b.p2.y - a.p0.y) * ny
  const b3 = (b.p3.x - a.p0.x) * nx + (b.p3.y - a.p0.y) * ny
  return (
    Math.min(b0, b1, b2, b3) > Math.max(0, a1, a2) + SAME_POINT ||
    Math.max(b0, b1, b2, b3) < Math.min(0, a1, a2) - SAME_POINT
  )
}

/**
 * Whether one part may lie on the other as a whole, by a cheap look: their chords are nearly parallel, or drift apart by
 * hardly more than SAME_POINT, and the middle of each lies no farther from the other's chord than that one bulges.
 */
export function sideBySide(a: Cubic, b: Cubic): boolean {
  const r = subtract(a.p3, a.p0)
  const s = subtract(b.p3, b.p0)
  const lr = magnitude(r)
  const ls = magnitude(s)
  const drift = Math.abs(cross(r, s))
  if (drift > 0.2 * lr * ls && drift > 4 * SAME_POINT * Math.max(lr, ls)) return false
  return bulgesTo(a, r, lr, b) || bulgesTo(b, s, ls, a)
}

function bulgesTo(a: Cubic, chord: Point, length: number, b: Cubic): boolean {
  if (!(length > SAME_POINT)) return true
  const middle = subtract(pointAt(b, 0.5), a.p0)
  const bulge = Math.max(Math.abs(cross(chord, subtract(a.p1, a.p0))), Math.abs(cross(chord, subtract(a.p2, a.p0))))
  return Math.abs(cross(chord, middle)) <= bulge + 4 * SAME_POINT * length
}
