import type { Box } from '../geometry/bounds.ts'
import { between, type Point } from '../geometry/point.ts'

/** The parts of a polyline inside a box, each with at least two points. */
export function clipLine(points: readonly Point[], box: Box): Point[][] {
  const parts: Point[][] = []
  let open: Point[] | undefined
  for (let k = 1; k < points.length; k++) {
    const [a, b] = [points[k - 1] as Point, points[k] as Point]
    const kept = clipSegment(a, b, box)
    if (!kept) {
      open = undefined
      continue
    }
    const [from, to] = kept
    if (open && from === 0) open.push(between(a, b, to))
    else {
      open = [between(a, b, from), between(a, b, to)]
      parts.push(open)
    }
    if (to < 1) open = undefined
  }
  return parts
}

/** The shares of the way from a to b between which the segment is inside (Liang and Barsky 1984). */
function clipSegment(a: Point, b: Point, box: Box): readonly [number, number] | undefined {
  let from = 0
  let to = 1
  const edges = [
    [a.x - b.x, a.x - box.left],
    [b.x - a.x, box.right - a.x],
    [a.y - b.y, a.y - box.bottom],
    [b.y - a.y, box.top - a.y],
  ] as const
  for (const [speed, room] of edges) {
    if (speed === 0) {
      if (room < 0) return undefined
    } else if (speed < 0) from = Math.max(from, room / speed)
    else to = Math.min(to, room / speed)
  }
  return from < to ? [from, to] : undefined
}
