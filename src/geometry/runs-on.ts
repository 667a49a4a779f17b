import type { Cubic } from './cubic.ts'

/** Squared cosine: no leg turns from the common direction by more than about 72°. */
const ONWARD = 0.1

/** Shorter cubics are no run of their own, mm². */
const SHORTEST = 1e-6

/**
 * Whether a path that runs through a and then on through b gets on in one direction all the way, so that the two meet at
 * their joint and nowhere else. False where that is not sure.
 */
export function runsOn(a: Cubic, b: Cubic): boolean {
  if (a.p3.x !== b.p0.x || a.p3.y !== b.p0.y) return false
  const x = b.p3.x - a.p0.x
  const y = b.p3.y - a.p0.y
  const least = ONWARD * (x * x + y * y)
  return getsOn(a, x, y, least) && getsOn(b, x, y, least)
}

function getsOn({ p0, p1, p2, p3 }: Cubic, x: number, y: number, least: number): boolean {
  const across = p3.x - p0.x
  const up = p3.y - p0.y
  return (
    across * across + up * up > SHORTEST &&
    legGetsOn(p1.x - p0.x, p1.y - p0.y, x, y, least) &&
    legGetsOn(p2.x - p1.x, p2.y - p1.y, x, y, least) &&
    legGetsOn(p3.x - p2.x, p3.y - p2.y, x, y, least)
  )
}

function legGetsOn(across: number, up: number, x: number, y: number, least: number): boolean {
  const onward = across * x + up * y
  return onward >= 0 && onward * onward >= least * (across * across + up * up)
}
