import { along, between, distance, dot, leftOf, type Point, subtract, unit } from '../geometry/point.ts'
import type { Dart } from '../pattern/piece.ts'

/** Legs that differ by less are equal, mm. */
const EQUAL = 1e-6

/**
 * The dart with legs of equal length: its point moves, as little as may be, to the line that stands square on the
 * middle of its mouth. The same object where they are equal already.
 */
export function straightenDart(dart: Dart): Dart {
  const point = squarePoint(dart.mouth, dart.point)
  return point === dart.point ? dart : { ...dart, point }
}

function squarePoint([a, b]: readonly [Point, Point], point: Point): Point {
  if (Math.abs(distance(a, point) - distance(b, point)) < EQUAL || distance(a, b) < EQUAL) return point
  const middle = between(a, b, 0.5)
  const axis = leftOf(unit(subtract(b, a)))
  return along(middle, axis, dot(subtract(point, middle), axis))
}
