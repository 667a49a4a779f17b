import type { Cubic } from '../geometry/cubic.ts'
import { isLine } from '../geometry/cubic.ts'
import { flatten } from '../geometry/flatten.ts'
import type { Path } from '../geometry/path.ts'
import { tangentAt } from '../geometry/path-length.ts'
import { distance, type Point, turnBetween } from '../geometry/point.ts'

/** Cutting rooms ask for curves within a twentieth of a millimetre. */
const CURVE = 0.05

/** Points nearer than this would be one point to a cutter, mm. */
const SAME = 0.01

/** A joint that turns by more than this is a corner, radians: one degree, as no fair curve does. */
const CORNER = Math.PI / 180

/** A vertex of a boundary: `turn` at a corner and at each end of a straight stretch, else on a curve. */
export interface Vertex {
  readonly at: Point
  readonly turn: boolean
}

/** An open path as points within 0.05 mm of it, none twice. */
export function curvePoints(path: Path): Point[] {
  return apart(flatten(path, { tolerance: CURVE }).map((at) => ({ at, turn: false }))).map(({ at }) => at)
}

/**
 * A closed path as the vertices of a polygon within 0.05 mm of it, none twice, the first not repeated. A program that
 * draws a curve through the curve points again leaves corners and straight stretches as they are.
 */
export function boundaryVertices(path: Path): Vertex[] {
  const vertices = path.flatMap((c, k): Vertex[] => {
    const before = path[(k + path.length - 1) % path.length] as Cubic
    const [start, ...rest] = flatten([c], { tolerance: CURVE })
    const turn = isLine(before) !== isLine(c) || isCorner(before, c)
    return [{ at: start as Point, turn }, ...rest.slice(0, -1).map((at) => ({ at, turn: false }))]
  })
  const kept = apart(vertices)
  const first = kept[0] as Vertex
  const last = kept[kept.length - 1] as Vertex
  if (kept.length < 2 || distance(first.at, last.at) >= SAME) return kept
  return last.turn && !first.turn ? kept.slice(1) : kept.slice(0, -1)
}

function isCorner(a: Cubic, b: Cubic): boolean {
  return Math.abs(turnBetween(tangentAt(a, 1), tangentAt(b, 0))) > CORNER
}

/** Without points that lie on the one before; of two, the corner stays. */
function apart(vertices: readonly Vertex[]): Vertex[] {
  const kept: Vertex[] = []
  for (const vertex of vertices) {
    const last = kept[kept.length - 1]
    if (!last || distance(last.at, vertex.at) >= SAME) kept.push(vertex)
    else if (vertex.turn && !last.turn) kept[kept.length - 1] = vertex
  }
  return kept
}
