import type { Box } from '../geometry/bounds.ts'
import { contains } from '../geometry/contains.ts'
import type { Path } from '../geometry/path.ts'
import type { Point } from '../geometry/point.ts'
import { type Segment, textBox } from './ink.ts'
import { INCH_SQUARE, measuredSquares, METRIC_SQUARE, squareNames } from './measured-squares.ts'
import { openRoom, type Room, type TurnedBox } from './room.ts'
import type { Mark, TextMark } from './scene.ts'

const STEP = 8

/** Less than one crossing line. */
const ON_PIECE = 0.5

/** Half the width of the strip along a side that is wished clear, mm. */
const BAND = 1.5

/**
 * The two squares where their sides cross the least of the pattern, nearest the lower left corner of the box;
 * their words, likewise, inside them. A page full of lines still gets them: lines may cross a square, never the
 * words if it can be helped. Between places alike, the waste beside the pieces (`outlines`) is better than inside one.
 */
export function pageSquares(box: Box, ink: readonly Segment[], outlines: readonly Path[]): Mark[] {
  const room = openRoom(ink)
  const corners = cornersIn(box)
  let best: { corner: Point; names: TextMark[] } | undefined
  let least = Number.POSITIVE_INFINITY
  for (const corner of corners) {
    let sides = 0
    for (const side of sidesOf(corner)) if (sides < least) sides += room.touches(side, 0)
    if (sides >= least) continue
    const { names, touches } = clearestNames(room, corner)
    const cost = sides + 2 * touches + (onPiece(corner, outlines) ? ON_PIECE : 0)
    if (cost >= least) continue
    least = cost
    best = { corner, names }
    if (cost === 0) break
  }
  if (!best) throw new RangeError('the page is too small for the measured squares')
  return [...measuredSquares(best.corner), ...best.names]
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

function cornersIn(box: Box): Point[] {
  const found: Point[] = []
  const maxX = box.right - INCH_SQUARE
  const maxY = box.top - INCH_SQUARE
  for (let x = box.left; x < maxX + STEP; x += STEP) {
    for (let y = box.bottom; y < maxY + STEP; y += STEP) found.push({ x: Math.min(x, maxX), y: Math.min(y, maxY) })
  }
  const away = (p: Point) => Math.hypot(p.x - box.left, p.y - box.bottom)
  return found.filter((p) => p.x >= box.left - 1e-9 && p.y >= box.bottom - 1e-9).sort((a, b) => away(a) - away(b))
}

/** Strips over the sides of both squares: two are shared, two lie 1.6 mm apart. */
function sidesOf(corner: Point): TurnedBox[] {
  const middle = (METRIC_SQUARE + INCH_SQUARE) / 2
  const half = INCH_SQUARE / 2
  const level = (y: number) => ({ center: { x: corner.x + half, y }, along: { x: 1, y: 0 }, halfWidth: half, halfHeight: BAND })
  const upright = (x: number) => ({ center: { x, y: corner.y + half }, along: { x: 1, y: 0 }, halfWidth: BAND, halfHeight: half })
  return [level(corner.y), level(corner.y + middle), upright(corner.x), upright(corner.x + middle)]
}

function clearestNames(room: Room, corner: Point): { names: TextMark[]; touches: number } {
  let best = { names: squareNames(corner), touches: Number.POSITIVE_INFINITY }
  for (let drop = 0; drop <= 88; drop += 8) {
    const names = squareNames(corner, drop)
    const touches = names.reduce((sum, name) => sum + room.touches(textBox(name), 1), 0)
    if (touches < best.touches) best = { names, touches }
    if (touches === 0) break
  }
  return best
}
