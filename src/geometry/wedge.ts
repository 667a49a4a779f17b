import { moveBeyond } from './move-beyond.ts'
import type { Path } from './path.ts'
import type { Point } from './point.ts'
import { turn } from './transform.ts'

/**
 * The path slashed from `pivot` through `toward` and opened by a wedge of `angle` radians: what lies left of the slash,
 * looking that way, is turned anticlockwise about the pivot, and straight lines across the wedge's mouth keep the path
 * together. A negative angle closes a wedge: the sides then lap over each other. Where the pivot lies on the path the
 * path holds together there; where it lies inside an outline the far side laps by the same angle. Lengths and angles of
 * both sides are kept exactly. Cost: a few µs a cubic. Throws when the points coincide or the path is empty.
 */
export function wedge(path: Path, pivot: Point, toward: Point, angle: number): Path {
  return moveBeyond(path, pivot, toward, turn(pivot, angle))
}
