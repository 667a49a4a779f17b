import { type Box, bounds, boxesMeet } from '../geometry/bounds.ts'
import { contains } from '../geometry/contains.ts'
import { endOf, type Path, polyline, startOf } from '../geometry/path.ts'
import { along, type Point } from '../geometry/point.ts'
import { type Segment, textBox } from './ink.ts'
import { type InkRaster, inkRaster } from './ink-raster.ts'
import {
  INCH_SQUARE,
  METRIC_SQUARE,
  measuredSquares,
  type SquareNamesOptions,
  squareNames,
} from './measured-squares.ts'
import { nearestFirst } from './nearest-first.ts'
import type { SquareMeasured } from './printer-error.ts'
import type { Mark, TextMark } from './scene.ts'

/** The finest step of the search for a place, mm, and the most steps along a side of the page. */
const STEP = 4
const MOST_STEPS = 40

/** Where the words are tried in the square: right of the middle, and so far down, mm. */
const SHIFTS = [0, -18, 18]
const LOWEST_WORDS = 84

/** Clear space that is wished round the sides, and round the words, mm; half a pen's weight is in it. */
const CLEARANCE = 1.7

const EDGE = 5

/** So much of a side at a corner is drawn whatever lies there: it is what is measured. */
const ARM = 8

/** Shorter runs between two gaps are left out, mm. */
const SHORTEST_RUN = 4

/** What a square costs besides each inked millimetre under its sides: under its corners; a piece under it; anything inside. */
const ON_ARM = 20
const ON_PIECE = 0.5
const AROUND = 0.25

/**
 * Puts the squares of a page, for all pages of a pattern with these outlines: the two squares in free space of the box: beside the pieces, else inside one where no line runs, nearest the lower
 * left corner. Where there is none, they lie where their corners are clear and their sides cross least; sides then stop
 * on either side of every line and word of the page (`ink`), so that these stay legible. Throws when the box is too
 * small.
 */
export function squarePlacer(
  outlines: readonly Path[],
  corrected?: SquareMeasured,
): (box: Box, ink: readonly Segment[]) => Mark[] {
  const pieces = outlines.map((outline) => ({ outline, around: bounds(outline) }))
  const words = wordsOf(corrected)
  const known = new Map<string, Iterable<Point>>()
  const shiftsIn = (box: Box) => {
    const spare = { x: box.right - INCH_SQUARE - box.left, y: box.top - INCH_SQUARE - box.bottom }
    const name = `${spare.x} ${spare.y}`
    const shifts = known.get(name) ?? shiftsWithin(spare)
    known.set(name, shifts)
    return shifts
  }
  return (box, ink) => {
    const near = pieces.filter(({ around }) => boxesMeet(around, box)).map(({ outline }) => outline)
    return placedSquares(box, ink, near, words, shiftsIn(box))
  }
}

function placedSquares(
  box: Box,
  ink: readonly Segment[],
  outlines: readonly Path[],
  words: readonly Words[],
  shifts: Iterable<Point>,
): Mark[] {
  // Ink just outside the box matters to a square at its edge.
  const around = { left: box.left - EDGE, bottom: box.bottom - EDGE, right: box.right + EDGE, top: box.top + EDGE }
  const raster = inkRaster(around, ink)
  let best: { corner: Point; names: TextMark[]; crossed: boolean } | undefined
  let least = Number.POSITIVE_INFINITY
  for (const { x, y } of shifts) {
    const corner = { x: box.left + x, y: box.bottom + y }
    const arms = ON_ARM * counted(raster, corner, ARMS, least / ON_ARM)
    if (arms >= least) continue
    const sides = counted(raster, corner, BANDS, least - arms)
    if (arms + sides >= least) continue
    const { names, touches } = clearestNames(raster, corner, words)
    const inside = raster.count(insideOf(corner), 0) > 0 ? AROUND : 0
    const free = arms + sides + touches + inside
    if (free >= least) continue
    const cost = free + (onPiece(corner, outlines) ? ON_PIECE : 0)
    if (cost >= least) continue
    least = cost
    best = { corner, names: names(), crossed: arms + sides > 0 }
    if (cost === 0) break
  }
  if (!best) throw new RangeError('the page is too small for the measured squares')
  const { corner, names, crossed } = best
  const broken = (side: Path) => clearRuns(side, raster)
  return [...(crossed ? measuredSquares(corner, broken) : measuredSquares(corner)), ...names]
}

/** The parts of a straight level or upright side that keep clear of the ink, and both its ends. */
function clearRuns(side: Path, raster: InkRaster): Path[] {
  const from = startOf(side)
  const to = endOf(side)
  const length = Math.hypot(to.x - from.x, to.y - from.y)
  const direction = { x: (to.x - from.x) / length, y: (to.y - from.y) / length }
  const at = (s: number) => along(from, direction, s)
  const cells = Math.round(length)
  const cell = length / cells
  const clear = (k: number) => {
    if (k * cell < ARM || (k + 1) * cell > length - ARM) return true
    return raster.count(boxOf(at(k * cell), at((k + 1) * cell)), CLEARANCE) === 0
  }
  const runs: Path[] = []
  let start = 0
  for (let k = 0; k <= cells; k++) {
    if (k < cells && clear(k)) continue
    if ((k - start) * cell >= SHORTEST_RUN) runs.push(polyline([at(start * cell), k === cells ? to : at(k * cell)]))
    start = k + 1
  }
  return runs
}

/** Whether a corner or the middle of the larger square lies on a piece. */
function onPiece({ x, y }: Point, outlines: readonly Path[]): boolean {
  const half = INCH_SQUARE / 2
  const places = [
    { x: x + half, y: y + half },
    { x, y },
    { x: x + INCH_SQUARE, y },
    { x, y: y + INCH_SQUARE },
    { x: x + INCH_SQUARE, y: y + INCH_SQUARE },
  ]
  return outlines.some((outline) => places.some((p) => contains(outline, p)))
}

/** How far the corner is tried from the lower left of a box with so much to spare, nearest first. */
function shiftsWithin(spare: Point): Iterable<Point> {
  if (spare.x < -1e-9 || spare.y < -1e-9) return []
  const shares = (most: number) => {
    const count = Math.min(MOST_STEPS, Math.ceil(Math.max(0, most) / STEP))
    return Array.from({ length: count + 1 }, (_, k) => (count === 0 ? 0 : (most * k) / count))
  }
  const up = shares(spare.y)
  const found = shares(spare.x).flatMap((x) => up.map((y) => ({ x, y })))
  return nearestFirst(found, ({ x, y }) => Math.hypot(x, y), STEP)
}

function boxOf(a: Point, b: Point): Box {
  return { left: Math.min(a.x, b.x), bottom: Math.min(a.y, b.y), right: Math.max(a.x, b.x), top: Math.max(a.y, b.y) }
}

/** The sides of both squares, from their corner: two are shared, two lie 1.6 mm apart. */
const BANDS: readonly Box[] = [[0, 0] as const, [METRIC_SQUARE, INCH_SQUARE] as const].flatMap(([low, high]) => [
  { left: 0, bottom: low, right: INCH_SQUARE, top: high },
  { left: low, bottom: 0, right: high, top: INCH_SQUARE },
])

/** The ends of the same sides. */
const ARMS: readonly Box[] = BANDS.flatMap((band) => {
  const level = band.right - band.left > band.top - band.bottom
  return level
    ? [
        { ...band, right: band.left + ARM },
        { ...band, left: band.right - ARM },
      ]
    : [
        { ...band, top: band.bottom + ARM },
        { ...band, bottom: band.top - ARM },
      ]
})

/** The inked cells under boxes that are told from a corner; counted no further than `enough`. */
function counted(raster: InkRaster, { x, y }: Point, boxes: readonly Box[], enough: number): number {
  let sum = 0
  for (const { left, bottom, right, top } of boxes) {
    sum += raster.count({ left: x + left, bottom: y + bottom, right: x + right, top: y + top }, CLEARANCE)
    if (sum >= enough) break
  }
  return sum
}

function insideOf({ x, y }: Point): Box {
  return { left: x, bottom: y, right: x + INCH_SQUARE, top: y + INCH_SQUARE }
}

/** Words in the squares, told from the corner, and the boxes that they fill. */
interface Words {
  readonly options: SquareNamesOptions
  readonly boxes: readonly Box[]
}

/** Where the words are tried, best first. */
function wordsOf(corrected: SquareMeasured | undefined): Words[] {
  const found: Words[] = []
  for (const shift of SHIFTS) {
    for (let drop = 0; drop <= LOWEST_WORDS; drop += 6) {
      const options = { drop, shift, ...(corrected ? { corrected } : {}) }
      found.push({ options, boxes: squareNames({ x: 0, y: 0 }, options).map(levelBox) })
    }
  }
  return found
}

function clearestNames(
  raster: InkRaster,
  corner: Point,
  words: readonly Words[],
): { names: () => TextMark[]; touches: number } {
  let best = words[0] as Words
  let least = Number.POSITIVE_INFINITY
  for (const one of words) {
    const touches = counted(raster, corner, one.boxes, least)
    if (touches >= least) continue
    best = one
    least = touches
    if (touches === 0) break
  }
  return { names: () => squareNames(corner, best.options), touches: least }
}

function levelBox(text: TextMark): Box {
  const { center, halfWidth: w, halfHeight: h } = textBox(text)
  return { left: center.x - w, bottom: center.y - h, right: center.x + w, top: center.y + h }
}
