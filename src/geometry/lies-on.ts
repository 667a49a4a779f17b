import { type Cubic, pointAt } from './cubic.ts'
import { SAME_POINT } from './defaults.ts'
import type { Point } from './point.ts'

/** Part of a cubic: the part as a cubic of its own, and the parameters between which it lies on the whole. */
export interface Stretch {
  readonly c: Cubic
  readonly from: number
  readonly to: number
}

/** The stretch of `on` that five points of `part` lie on, sought from the part `near` of it; nothing where one is off. */
export function liesOn(part: Cubic, on: Powers, near: Stretch): [number, number] | undefined {
  if (footNear(on, near, pointAt(part, 0.5)) < 0) return undefined
  const start = footNear(on, near, part.p0)
  if (start < 0) return undefined
  const end = footNear(on, near, part.p3)
  if (end < 0) return undefined
  if (footNear(on, near, pointAt(part, 0.25)) < 0 || footNear(on, near, pointAt(part, 0.75)) < 0) return undefined
  return [start, end]
}

/** The parameter of a point of `on` within SAME_POINT of p, by Newton from the chord of `near`; −1 where it finds none. */
function footNear(on: Powers, near: Stretch, p: Point): number {
  const { p0, p3 } = near.c
  const square = (p3.x - p0.x) * (p3.x - p0.x) + (p3.y - p0.y) * (p3.y - p0.y)
  const share = square > 0 ? ((p.x - p0.x) * (p3.x - p0.x) + (p.y - p0.y) * (p3.y - p0.y)) / square : 0
  let t = clamp(near.from + (near.to - near.from) * share)
  for (let i = 0; i < 8; i++) {
    const dx = ((on.ax * t + on.bx) * t + on.vx) * t + on.x - p.x
    const dy = ((on.ay * t + on.by) * t + on.vy) * t + on.y - p.y
    const sx = (3 * on.ax * t + 2 * on.bx) * t + on.vx
    const sy = (3 * on.ay * t + 2 * on.by) * t + on.vy
    const speed2 = sx * sx + sy * sy
    if (speed2 === 0) break
    const next = clamp(t - (dx * sx + dy * sy) / speed2)
    const change = Math.abs(next - t)
    t = next
    if (change < 1e-14) break
  }
  const dx = ((on.ax * t + on.bx) * t + on.vx) * t + on.x - p.x
  const dy = ((on.ay * t + on.by) * t + on.vy) * t + on.y - p.y
  return dx * dx + dy * dy <= SAME_POINT * SAME_POINT ? t : -1
}

/** A cubic by powers of t: ((a·t + b)·t + v)·t + (x, y). */
export interface Powers {
  readonly x: number
  readonly y: number
  readonly vx: number
  readonly vy: number
  readonly bx: number
  readonly by: number
  readonly ax: number
  readonly ay: number
}

export function powersOf(c: Cubic): Powers {
  const vx = 3 * (c.p1.x - c.p0.x)
  const vy = 3 * (c.p1.y - c.p0.y)
  const bx = 3 * (c.p2.x - 2 * c.p1.x + c.p0.x)
  const by = 3 * (c.p2.y - 2 * c.p1.y + c.p0.y)
  return { x: c.p0.x, y: c.p0.y, vx, vy, bx, by, ax: c.p3.x - c.p0.x - vx - bx, ay: c.p3.y - c.p0.y - vy - by }
}

/** t held to [0, 1]. */
export function clamp(t: number): number {
  return Math.min(1, Math.max(0, t))
}
