import { keptWith } from '../base/kept-with.ts'
import type { Box } from '../geometry/bounds.ts'
import { flatten } from '../geometry/flatten.ts'
import { distance, heading, leftOf, type Point } from '../geometry/point.ts'
import { PENS } from './house-style.ts'
import { boxSegments, type TurnedBox } from './room.ts'
import type { Mark, TextMark } from './scene.ts'
import { ASCENT, DESCENT, textWidth } from './text-width.ts'

/** A straight piece of ink and half the weight of its pen, mm. */
export interface Segment {
  /** Where it begins. */
  readonly a: Point
  /** Where it ends. */
  readonly b: Point
  /** Half the weight of the pen. */
  readonly half: number
}

/** Fine enough to keep text and page edges clear; drawings themselves keep their curves. */
const INK_TOLERANCE = 0.1

/** The marks as straight pieces within 0.1 mm; dashes count as solid, text as its box. */
export function inkOf(marks: readonly Mark[]): Segment[] {
  return marks.flatMap(inkOfMark)
}

/** The same, kept with each mark: for the marks of pieces, which are asked for again and again. */
export function keptInkOf(marks: readonly Mark[]): Segment[] {
  return marks.flatMap(keptInk)
}

const keptInk = keptWith(inkOfMark)

function inkOfMark(mark: Mark): Segment[] {
  if (mark.type === 'text') return boxSegments(textBox(mark))
  const half = ((mark.type === 'stroke' ? mark.weight : undefined) ?? PENS[mark.kind].weight) / 2
  const paths = mark.type === 'fill' ? [mark.outline] : mark.paths
  return paths.flatMap((path) => segmentsOf(flatten(path, { tolerance: INK_TOLERANCE }), half))
}

function segmentsOf(points: readonly Point[], half: number): Segment[] {
  const segments: Segment[] = []
  for (let k = 1; k < points.length; k++) segments.push({ a: points[k - 1] as Point, b: points[k] as Point, half })
  return segments
}

/** The box that a line of text fills, from own metrics. */
export function textBox(mark: TextMark): TurnedBox {
  const along = heading(mark.angle)
  const up = leftOf(along)
  const rise = ((ASCENT - DESCENT) / 2) * mark.size
  return {
    center: { x: mark.at.x + up.x * rise, y: mark.at.y + up.y * rise },
    along,
    halfWidth: textWidth(mark.text, mark.size) / 2,
    halfHeight: ((ASCENT + DESCENT) / 2) * mark.size,
  }
}

/** The smallest upright box round the ink; throws when there is none. */
export function boxOfInk(ink: readonly Segment[]): Box {
  let left = Number.POSITIVE_INFINITY
  let right = Number.NEGATIVE_INFINITY
  let low = Number.POSITIVE_INFINITY
  let high = Number.NEGATIVE_INFINITY
  for (const { a, b, half } of ink) {
    left = Math.min(left, a.x - half, b.x - half)
    right = Math.max(right, a.x + half, b.x + half)
    low = Math.min(low, a.y - half, b.y - half)
    high = Math.max(high, a.y + half, b.y + half)
  }
  if (!(left <= right)) throw new RangeError('there is no ink to put a box round')
  return { left, bottom: low, right, top: high }
}

/** The distance from a point along a unit direction to the first of the segments, when there is one ahead. */
export function firstHit(from: Point, direction: Point, ink: readonly Segment[]): number | undefined {
  let best: number | undefined
  for (const { a, b } of ink) {
    const ex = b.x - a.x
    const ey = b.y - a.y
    const det = ex * direction.y - ey * direction.x
    if (Math.abs(det) < 1e-12 * distance(a, b)) continue
    const wx = a.x - from.x
    const wy = a.y - from.y
    const t = (ex * wy - ey * wx) / det
    const s = (direction.x * wy - direction.y * wx) / det
    if (s < 0 || s > 1 || t <= 1e-9) continue
    if (best === undefined || t < best) best = t
  }
  return best
}
