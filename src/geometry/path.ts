import { type Cubic, line, moveCubic, reverseCubic } from './cubic.ts'
import { SAME_POINT } from './defaults.ts'
import { distance, type Point } from './point.ts'

/**
 * Cubics that touch end to end, at least one. Open or closed: a closed path ends where it starts.
 * Functions on paths measure position in mm of arc length from the start.
 */
export type Path = readonly Cubic[]

/** The straight path through the points. Cost: 50 ns a point. Throws on fewer than two. */
export function polyline(points: readonly Point[]): Path {
  const path: Cubic[] = []
  for (let i = 1; i < points.length; i++) path.push(line(points[i - 1] as Point, points[i] as Point))
  if (path.length === 0) throw new RangeError('a path needs at least two points')
  return path
}

/** The first point of the path, the same object. Throws on an empty path. */
export function startOf(path: Path): Point {
  return firstCubic(path).p0
}

/** The last point of the path, the same object. Throws on an empty path. */
export function endOf(path: Path): Point {
  return lastCubic(path).p3
}

/** The first cubic of the path. Throws on an empty path. */
export function firstCubic(path: Path): Cubic {
  const first = path[0]
  if (first === undefined) throw new RangeError('a path needs at least one cubic')
  return first
}

/** The last cubic of the path. Throws on an empty path. */
export function lastCubic(path: Path): Cubic {
  const last = path[path.length - 1]
  if (last === undefined) throw new RangeError('a path needs at least one cubic')
  return last
}

/** Whether the path ends within SAME_POINT of where it starts. Throws on an empty path. */
export function isClosed(path: Path): boolean {
  return distance(startOf(path), endOf(path)) <= SAME_POINT
}

/** The same path run through the other way, exactly. Cost: 20 ns a cubic. */
export function reversePath(path: Path): Path {
  return path.map(reverseCubic).reverse()
}

/**
 * The path with every control point passed through `move`; exact for affine moves (turn, shift, mirror). Cost: 50 ns a
 * cubic and what `move` costs.
 */
export function movePath(path: Path, move: (p: Point) => Point): Path {
  return path.map((c) => moveCubic(c, move))
}
