import { MM_PER_INCH } from '../base/units.ts'
import { type Path, polyline } from '../geometry/path.ts'
import type { Point } from '../geometry/point.ts'
import { SECOND_SQUARE_DASH } from './house-style.ts'
import { centeredText } from './place-text.ts'
import type { Mark, TextMark } from './scene.ts'

/** The side of the metric and of the inch square, mm. */
export const METRIC_SQUARE = 100
export const INCH_SQUARE = 4 * MM_PER_INCH

const NAME_SIZE = 3

/** The outline of a square from its lower left corner, anticlockwise. */
function squarePath(corner: Point, side: number): Path {
  const { x, y } = corner
  return polyline([corner, { x: x + side, y }, { x: x + side, y: y + side }, { x, y: y + side }, corner])
}

/**
 * A 100 mm square, solid, and a 4 in square, dashed, from one lower left corner: nested, so that a letter page
 * holds both and neither can be taken for the other. Measured from line center to line center.
 */
export function measuredSquares(corner: Point): Mark[] {
  return [
    {
      type: 'stroke',
      kind: 'measured square',
      id: '100 mm square',
      paths: [squarePath(corner, METRIC_SQUARE)],
      closed: true,
    },
    {
      type: 'stroke',
      kind: 'measured square',
      id: '4 in square',
      paths: [squarePath(corner, INCH_SQUARE)],
      closed: true,
      dash: SECOND_SQUARE_DASH,
    },
  ]
}

/** The words in the squares, `drop` mm below the inner upper edge. */
export function squareNames(corner: Point, drop = 0): TextMark[] {
  const x = corner.x + METRIC_SQUARE / 2
  const y = corner.y + METRIC_SQUARE - 3 - drop
  return [
    centeredText('measured square', 'square name', '100 mm solid · 4 in dashed', NAME_SIZE, { x, y }, 0),
    centeredText(
      'measured square',
      'square advice',
      'measure both ways before cutting',
      NAME_SIZE,
      { x, y: y - 4.2 },
      0,
    ),
  ]
}

/**
 * A straight rule from its left end: centimeters above the line, inches below; `length` mm is cut to whole
 * centimeters.
 */
export function rule(start: Point, length: number): Mark[] {
  const centimeters = Math.floor(length / 10 + 1e-9)
  const end = centimeters * 10
  const tick = (at: number, to: number) =>
    polyline([
      { x: start.x + at, y: start.y },
      { x: start.x + at, y: start.y + to },
    ])
  const marks: Mark[] = [
    {
      type: 'stroke',
      kind: 'measured square',
      id: 'rule',
      paths: [polyline([start, { x: start.x + end, y: start.y }])],
    },
  ]
  const ticks: Path[] = []
  const number = (id: string, text: string, at: number, side: number) =>
    marks.push(centeredText('measured square', id, text, 2.4, { x: start.x + at, y: start.y + side }, 0))
  for (let k = 0; k <= 2 * centimeters; k++) ticks.push(tick(5 * k, k % 10 === 0 ? 2.4 : k % 2 === 0 ? 1.8 : 1))
  for (let k = 5; k <= centimeters; k += 5)
    number(`rule ${k} cm`, `${k} cm`, 10 * k - (k === centimeters ? 3.5 : 0), 3.8)
  for (let k = 0; k * MM_PER_INCH <= 4 * end; k++) {
    const at = (k * MM_PER_INCH) / 4
    if (at > end) break
    ticks.push(tick(at, k % 4 === 0 ? -2.4 : k % 2 === 0 ? -1.6 : -1))
    if (k % 8 === 0 && k > 0 && at < end - 4) number(`rule ${k / 4} in`, `${k / 4} in`, at, -3.8)
  }
  marks.push({ type: 'stroke', kind: 'measured square', id: 'rule ticks', paths: ticks })
  return marks
}
