import { atan2 } from '../base/trig.ts'
import type { Cubic } from './cubic.ts'

/** Every direction in which a curve travels lies between two angles, radians; `spread` = high − low. */
export interface Cone {
  readonly low: number
  readonly high: number
  readonly spread: number
}

/** No directions known: the curve turns by half a circle or more, or is a point. */
const WIDE_CONE: Cone = { low: -Math.PI, high: Math.PI, spread: 2 * Math.PI }

/**
 * The cone of a cubic's directions, from the legs of its control polygon: exact or too wide, never too narrow.
 * Legs without length have no say.
 */
export function coneOf(c: Cubic): Cone {
  let base = 0
  let low = 0
  let high = 0
  let found = false
  for (let leg = 0; leg < 3; leg++) {
    const from = leg === 0 ? c.p0 : leg === 1 ? c.p1 : c.p2
    const to = leg === 0 ? c.p1 : leg === 1 ? c.p2 : c.p3
    const dx = to.x - from.x
    const dy = to.y - from.y
    if (dx * dx + dy * dy < 1e-24) continue
    const angle = atan2(dy, dx)
    if (!found) {
      base = angle
      found = true
      continue
    }
    const off = wrap(angle - base)
    if (off < low) low = off
    if (off > high) high = off
  }
  if (!found || high - low >= Math.PI) return WIDE_CONE
  return { low: base + low, high: base + high, spread: high - low }
}

/** Whether some direction of a may be some direction of b, or its opposite: the curves may be parallel somewhere. */
export function maybeParallel(a: Cone, b: Cone): boolean {
  if (a.spread + b.spread >= Math.PI) return true
  const middle = (b.low + b.high - a.low - a.high) / 2
  // The nearest multiple of π.
  const off = Math.abs(middle - Math.PI * Math.round(middle / Math.PI))
  return off <= (a.spread + b.spread) / 2 + 1e-9
}

/** Whether two curves that start at the same point and travel in these cones part for good. */
export function partForGood(a: Cone, b: Cone): boolean {
  if (a.spread >= Math.PI || b.spread >= Math.PI) return false
  const off = Math.abs(wrap((b.low + b.high - a.low - a.high) / 2))
  return off > (a.spread + b.spread) / 2 + 1e-9
}

/** The cone of the curve run through the other way. */
export function opposite(cone: Cone): Cone {
  return { low: cone.low + Math.PI, high: cone.high + Math.PI, spread: cone.spread }
}

function wrap(angle: number): number {
  return angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI))
}
