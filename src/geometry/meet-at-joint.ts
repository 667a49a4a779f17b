import type { Cubic } from './cubic.ts'
import type { Point } from './point.ts'

/** Squared cosine: no leg turns from the common direction by more than about 72°. */
const ONWARD = 0.1

/** Shorter cubics are no run of their own, mm². */
const SHORTEST = 1e-6

/** By what share of their length two cubics must part that leave their joint in one direction. */
const PARTING = 0.01

/** Farther than this from the direction at the joint is off it, mm: rounding. */
const ROUNDING = 1e-9

/**
 * Whether a path that runs through a and then through b meets itself there at their joint and nowhere else: it gets on in
 * one direction all the way, or turns back at a cusp and leaves it on the other side. False where that is not sure.
 */
export function meetAtJoint(a: Cubic, b: Cubic): boolean {
  if (a.p3.x !== b.p0.x || a.p3.y !== b.p0.y) return false
  if (!isLong(a) || !isLong(b)) return false
  return runsOn(a, b) || partAtCusp(a, b)
}

function isLong({ p0, p3 }: Cubic): boolean {
  return square(p3.x - p0.x, p3.y - p0.y) > SHORTEST
}

function runsOn(a: Cubic, b: Cubic): boolean {
  const x = b.p3.x - a.p0.x
  const y = b.p3.y - a.p0.y
  const least = ONWARD * square(x, y)
  return least > 0 && getsOn(a, x, y, least) && getsOn(b, x, y, least)
}

function getsOn({ p0, p1, p2, p3 }: Cubic, x: number, y: number, least: number): boolean {
  return (
    legGetsOn(p1.x - p0.x, p1.y - p0.y, x, y, least) &&
    legGetsOn(p2.x - p1.x, p2.y - p1.y, x, y, least) &&
    legGetsOn(p3.x - p2.x, p3.y - p2.y, x, y, least)
  )
}

function legGetsOn(across: number, up: number, x: number, y: number, least: number): boolean {
  const onward = across * x + up * y
  return onward >= 0 && onward * onward >= least * square(across, up)
}

/** One cubic lies on the left of the direction at the joint and the other on its right, and only the joint on it. */
function partAtCusp(a: Cubic, b: Cubic): boolean {
  const joint = a.p3
  const x = a.p2.x - joint.x
  const y = a.p2.y - joint.y
  const length = Math.sqrt(square(x, y))
  if (!(length > ROUNDING)) return false
  const side = (p: Point) => (x * (p.y - joint.y) - y * (p.x - joint.x)) / length
  if (Math.abs(side(b.p1)) > ROUNDING) return false
  const way = side(a.p0) > 0 ? 1 : -1
  if (!(way * side(a.p1) >= 0 && way * side(b.p2) <= 0 && way * side(b.p3) <= 0)) return false
  const apart = way * (side(a.p0) - side(b.p3))
  const longest = Math.max(square(a.p0.x - joint.x, a.p0.y - joint.y), square(b.p3.x - joint.x, b.p3.y - joint.y))
  return apart * apart > PARTING * PARTING * longest
}

function square(x: number, y: number): number {
  return x * x + y * y
}
