import { MM_PER_INCH } from '../base/units.ts'
import { type Path, polyline } from '../geometry/path.ts'
import type { Point } from '../geometry/point.ts'
import { SECOND_SQUARE_DASH } from './house-style.ts'
import { centeredText } from './place-text.ts'
import { type SquareMeasured, squareWords } from './printer-error.ts'
import type { Mark, TextMark } from './scene.ts'

/** The side of the metric and of the inch square, mm. */
export const METRIC_SQUARE = 100
export const INCH_SQUARE = 4 * MM_PER_INCH

const NAME_SIZE = 3
const NAME_LEADING = 4.2

/**
 * A 100 mm square, solid, and a 4 in square, dashed, from one lower left corner: nested, so that a letter page
 * holds both and neither can be taken for the other. Measured from line center to line center. `broken` takes a side
 * apart where something else must stay legible.
 */
export function measuredSquares(corner: Point, broken?: (side: Path) => readonly Path[]): Mark[] {
  const square = (id: string, side: number) => {
    const sides = sidesOf(corner, side)
    const shape = broken ? { paths: sides.flatMap(broken) } : { paths: [sides.flat()], closed: true }
    return { type: 'stroke', kind: 'measured square', id, ...shape } as const
  }
  return [square('100 mm square', METRIC_SQUARE), { ...square('4 in square', INCH_SQUARE), dash: SECOND_SQUARE_DASH }]
}

/** The sides of a square from its lower left corner, anticlockwise. */
function sidesOf({ x, y }: Point, side: number): Path[] {
  const corners = [
    { x, y },
    { x: x + side, y },
    { x: x + side, y: y + side },
    { x, y: y + side },
  ]
  return corners.map((from, k) => polyline([from, corners[(k + 1) % 4] as Point]))
}

export interface SquareNamesOptions {
  /** How far below the inner upper edge they begin, mm; default 0. */
  readonly drop?: number
  /** How far right of the middle they stand, mm; default 0. */
  readonly shift?: number
  /** What the printer made of the square before it was allowed for, for a last line. */
  readonly corrected?: SquareMeasured
}

/** The words in the squares. */
export function squareNames(corner: Point, options: SquareNamesOptions = {}): TextMark[] {
  const x = corner.x + METRIC_SQUARE / 2 + (options.shift ?? 0)
  const y = corner.y + METRIC_SQUARE - 3 - (options.drop ?? 0)
  const lines: [string, string][] = [
    ['square name', '100 mm solid · 4 in dashed'],
    ['square advice', 'measure both ways before cutting'],
  ]
  if (options.corrected) {
    lines.push(['square correction', `scaled for a printer that made it ${squareWords(options.corrected)}`])
  }
  return lines.map(([id, text], k) =>
    centeredText('measured square', id, text, NAME_SIZE, { x, y: y - k * NAME_LEADING }, 0),
  )
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
