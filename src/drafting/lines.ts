import { line } from '../geometry/cubic.ts'
import { levelCrossings } from '../geometry/level-crossings.ts'
import type { Path } from '../geometry/path.ts'
import { type Point, point } from '../geometry/point.ts'
import type { Line } from '../pattern/piece.ts'

/** A straight line inside a piece. */
export function straightLine(id: string, from: Point, to: Point): Line {
  return { id, path: [line(from, to)] }
}

/** A level line from stitching line to stitching line, or undefined where the level does not cross the piece twice. */
export function levelLine(id: string, edges: readonly Path[], height: number): Line | undefined {
  const xs = edges.flatMap((edge) => levelCrossings(edge, height)).map((p) => p.x)
  if (xs.length < 2) return undefined
  return straightLine(id, point(Math.min(...xs), height), point(Math.max(...xs), height))
}

/** An upright line of the width line's kind, between two heights. */
export function uprightLine(id: string, x: number, low: number, high: number): Line {
  return straightLine(id, point(x, low), point(x, high))
}
