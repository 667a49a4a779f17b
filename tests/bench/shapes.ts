import { Bezier } from 'bezier-js'
import paper from 'paper/dist/paper-core.js'
import { type Cubic, cubic, curvatureAt } from '../../src/geometry/cubic.ts'
import { hobbySpline, type Knot } from '../../src/geometry/hobby.ts'
import type { Path } from '../../src/geometry/path.ts'
import { heading, type Point, point, scale } from '../../src/geometry/point.ts'

paper.setup([1, 1])
// Otherwise every path made is kept in the project.
paper.settings.insertItems = false

/** Numbers from `low` to `high`, the same in every run (mulberry32). */
function seeded(seed: number): (low: number, high: number) => number {
  let state = seed
  return (low, high) => {
    state = (state + 0x6d2b79f5) | 0
    let t = Math.imul(state ^ (state >>> 15), 1 | state)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return low + ((high - low) * ((t ^ (t >>> 14)) >>> 0)) / 4294967296
  }
}

/** Cubics as seams have them: 80–300 mm long, bent by up to 70° a side, no radius under 40 mm, in any direction. */
export function seamCubics(count: number, seed: number): Cubic[] {
  const random = seeded(seed)
  const made: Cubic[] = []
  while (made.length < count) {
    const c = bentCubic(random)
    if (tightestRadius(c) > 40) made.push(c)
  }
  return made
}

function bentCubic(random: (low: number, high: number) => number): Cubic {
  const length = random(80, 300)
  const angle = random(-Math.PI, Math.PI)
  const from = point(random(-200, 200), random(-200, 200))
  const to = { x: from.x + length * Math.cos(angle), y: from.y + length * Math.sin(angle) }
  const start = scale(heading(angle + random(-1.2, 1.2)), random(0.25, 0.45) * length)
  const end = scale(heading(angle + random(-1.2, 1.2)), random(0.25, 0.45) * length)
  return cubic(from, point(from.x + start.x, from.y + start.y), point(to.x - end.x, to.y - end.y), to)
}

function tightestRadius(c: Cubic): number {
  let most = 0
  for (let k = 0; k <= 200; k++) most = Math.max(most, Math.abs(curvatureAt(c, k / 200)))
  return 1 / most
}

/** Knots on the rim of a round shape about the origin, radii 150–250 mm. */
export function roundKnots(count: number, seed: number): Knot[] {
  const random = seeded(seed)
  return Array.from({ length: count }, (_, k) => ({ at: scale(heading((2 * Math.PI * k) / count), random(180, 230)) }))
}

/** Closed round outlines, anticlockwise. */
export function roundOutlines(count: number, seed: number): Path[] {
  return Array.from({ length: count }, (_, k) => hobbySpline(roundKnots(7, seed + k), { closed: true }))
}

/** The cubic as bezier-js has it; with points of its own, for it writes on them. */
export function toBezier({ p0, p1, p2, p3 }: Cubic): Bezier {
  return new Bezier([p0, p1, p2, p3].map(({ x, y }) => ({ x, y })))
}

/** The cubic as paper's static functions take it: x and y of its four points. */
export function toValues({ p0, p1, p2, p3 }: Cubic): number[] {
  return [p0.x, p0.y, p1.x, p1.y, p2.x, p2.y, p3.x, p3.y]
}

/** The cubic as paper has it. */
export function toCurve(c: Cubic): paper.Curve {
  const [x0, y0, x1, y1, x2, y2, x3, y3] = toValues(c) as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ]
  return new paper.Curve([x0, y0], [x1 - x0, y1 - y0], [x2 - x3, y2 - y3], [x3, y3])
}

/** Paper's functions on values: without a path that remembers its length. */
export const paperCurve = paper.Curve as unknown as {
  getLength(values: readonly number[]): number
  getTimeAt(values: readonly number[], offset: number): number
}

/** A paper path of straight segments through the points. */
export function toPaperPath(points: readonly Point[]): paper.Path {
  return new paper.Path({ segments: points.map(({ x, y }) => [x, y]) })
}

/** The largest of the values, 0 for none. */
export function largest(values: readonly number[]): number {
  return values.reduce((a, b) => Math.max(a, b), 0)
}

/** The sum of `figure` over the items, as the work of one call. */
export function summed<T>(items: readonly T[], figure: (item: T) => number): () => number {
  return () => {
    let sum = 0
    for (const item of items) sum += figure(item)
    return sum
  }
}
