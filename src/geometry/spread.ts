import { moveBeyond } from './move-beyond.ts'
import type { Path } from './path.ts'
import { leftOf, type Point, scale, subtract, unit } from './point.ts'
import { shift } from './transform.ts'

/**
 * The path slashed along the endless straight line from `from` through `to` and spread by `by` mm, evenly all along:
 * what lies left of the slash, looking that way, is shifted square to it, and straight lines of length `by` join the two
 * sides. A negative amount laps them. Lengths and angles of both sides are kept exactly. Cost: a few µs a cubic. Throws
 * when the points coincide or the path is empty.
 */
export function spread(path: Path, from: Point, to: Point, by: number): Path {
  return moveBeyond(path, from, to, shift(scale(leftOf(unit(subtract(to, from))), by)))
}
