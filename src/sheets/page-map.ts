import type { Box } from '../geometry/bounds.ts'
import { movePath, polyline } from '../geometry/path.ts'
import type { Point } from '../geometry/point.ts'
import { inkOf, textBox } from './ink.ts'
import { INCH_SQUARE, measuredSquares, squareNames } from './measured-squares.ts'
import { centeredText } from './place-text.ts'
import { openRoom, type Room } from './room.ts'
import { leftText } from './sheet-foot.ts'
import { type Mark, placedMarks, type SheetInfo } from './scene.ts'
import { fittingSize, textWidth } from './text-width.ts'
import { type TileGrid, tileName, windowOf } from './tile-grid.ts'

const TITLE_SIZE = 7
const LINE_SIZE = 3.4
const LEADING = 1.45
const GAP = 8

/** The first page: how the pages go together, with the squares to measure before printing the rest. Page frame. */
export function pageMap(grid: TileGrid, info: SheetInfo, border: string): Mark[] {
  const { left, bottom, right, top } = grid.page.frame
  const inner = { left: left + GAP, bottom: bottom + GAP, right: right - GAP, top: top - GAP }
  const heading = info.production ? `${info.production} · ${info.performer}` : info.performer
  const wide = inner.right - inner.left > inner.top - inner.bottom
  const titleFoot = inner.top - TITLE_SIZE * 1.6
  const mapBox = wide
    ? { left: inner.left + INCH_SQUARE + GAP, bottom: inner.bottom, right: inner.right, top: titleFoot }
    : { left: inner.left, bottom: inner.bottom + INCH_SQUARE + GAP, right: inner.right, top: titleFoot }
  const wordsBox = wide
    ? { left: inner.left, bottom: inner.bottom + INCH_SQUARE + 2, right: mapBox.left - 4, top: titleFoot }
    : { left: inner.left + INCH_SQUARE + GAP, bottom: inner.bottom, right: inner.right, top: inner.bottom + INCH_SQUARE }
  const corner = { x: inner.left, y: inner.bottom }
  return [
    leftText('map title', heading, fittingSize(heading, TITLE_SIZE, inner.right - inner.left), inner.left, inner.top - TITLE_SIZE, 'page frame'),
    ...advice(grid, border, wordsBox),
    ...drawMap(grid, mapBox),
    ...measuredSquares(corner),
    ...squareNames(corner),
  ]
}

function advice(grid: TileGrid, border: string, box: Box): Mark[] {
  const pages = grid.inked.flat().filter(Boolean).length
  const text = [
    `Print all ${pages + 1} pages at 100 %, actual size; no “fit to page”.`,
    'Measure the squares on this page both ways, and any page’s border:',
    `${border}.`,
    'Trim the left and the top border of a page where another page comes before it. Lay it on that page, edge to the dashed line; the ringed crosses meet.',
    'Join each row from left to right, then the rows from top to bottom, in the order of the numbers.',
  ]
  const width = box.right - box.left
  const height = box.top - box.bottom
  // The words are set as large as the box allows.
  for (let size = LINE_SIZE; ; size *= 0.95) {
    const lines = text.flatMap((paragraph) => wrap(paragraph, size, width))
    const needed = lines.length * size * LEADING
    if (needed > height && size > 1.8) continue
    return lines.map((line, k) =>
      leftText(`advice ${k + 1}`, line, size, box.left, box.top - size - k * size * LEADING, 'page frame'),
    )
  }
}

/** The text broken at spaces into lines no wider than `width`. */
function wrap(text: string, size: number, width: number): string[] {
  const lines: string[] = []
  for (const word of text.split(' ')) {
    const last = lines.at(-1)
    if (last !== undefined && textWidth(`${last} ${word}`, size) <= width) lines[lines.length - 1] = `${last} ${word}`
    else lines.push(word)
  }
  return lines
}

/** Pens of the small picture: pieces stand out from the windows. */
const MAP_PIECE = 0.5
const MAP_GRID = 0.12

function drawMap(grid: TileGrid, box: Box): Mark[] {
  const last = windowOf(grid, grid.columns - 1, 0)
  const scale = Math.min((box.right - box.left) / last.right, (box.top - box.bottom) / last.top)
  const left = (box.left + box.right - last.right * scale) / 2
  const foot = (box.bottom + box.top - last.top * scale) / 2
  const place = (p: Point) => ({ x: left + p.x * scale, y: foot + p.y * scale })
  const pieces = mapPieces(grid, place)
  const room = openRoom(inkOf(pieces))
  const cells: Mark[] = []
  const names: Mark[] = []
  const drawn = new Set<string>()
  const side = (id: string, a: Point, b: Point) => {
    // Neighbours share a side; drawn twice its dashes would close up.
    if (drawn.has(id)) return
    drawn.add(id)
    cells.push({ type: 'stroke', kind: 'page frame', id: `map side ${id}`, paths: [polyline([place(a), place(b)])], weight: MAP_GRID })
  }
  let order = 1
  for (let row = 0; row < grid.rows; row++) {
    for (let column = 0; column < grid.columns; column++) {
      if (!grid.inked[row]?.[column]) continue
      order++
      const { left: x0, bottom: y0, right: x1, top: y1 } = coreOf(grid, column, row)
      side(`across ${column} ${row}`, { x: x0, y: y1 }, { x: x1, y: y1 })
      side(`across ${column} ${row + 1}`, { x: x0, y: y0 }, { x: x1, y: y0 })
      side(`up ${column} ${row}`, { x: x0, y: y0 }, { x: x0, y: y1 })
      side(`up ${column + 1} ${row}`, { x: x1, y: y0 }, { x: x1, y: y1 })
      names.push(cellName(room, tileName(column, row), order, place({ x: x0, y: y0 }), place({ x: x1, y: y1 })))
    }
  }
  return [...cells, ...pieces, ...names]
}

function mapPieces(grid: TileGrid, place: (p: Point) => Point): Mark[] {
  return grid.placed.flatMap((placed) =>
    placedMarks(placed).flatMap((mark) => {
      if (mark.type !== 'stroke' || (mark.kind !== 'cutting line' && mark.kind !== 'fold line')) return []
      const id = `map ${placed.drawing.id} ${mark.id}`
      const paths = mark.paths.map((path) => movePath(path, place))
      return [{ type: 'stroke', kind: 'page frame', id, paths, closed: mark.closed ?? false, weight: MAP_PIECE } as const]
    }),
  )
}

/** The name of a page and its number, in its cell where no line of a piece runs through it. */
function cellName(room: Room, name: string, order: number, low: Point, high: Point): Mark {
  const size = Math.min(6, (high.x - low.x) * 0.2, (high.y - low.y) * 0.3)
  const text = `${name} · ${order}`
  const half = textWidth(text, size) / 2 + 0.8
  const tries: Point[] = []
  for (const v of [0.5, 0.65, 0.35, 0.8, 0.2]) {
    for (const u of [0.5, 0.35, 0.65, 0, 1]) {
      tries.push({ x: low.x + half + u * (high.x - low.x - 2 * half), y: low.y + v * (high.y - low.y) })
    }
  }
  const mark = (p: Point) => centeredText('page frame', `map name ${name}`, text, size, p, 0)
  return mark(tries.find((p) => room.fits(textBox(mark(p)), 0.4)) ?? (tries[0] as Point))
}

/** The part of a window that is seen when the pages lie over each other. */
function coreOf(grid: TileGrid, column: number, row: number): Box {
  const box = windowOf(grid, column, row)
  const right = column + 1 < grid.columns ? box.right - grid.overlap : box.right
  const bottom = row + 1 < grid.rows ? box.bottom + grid.overlap : box.bottom
  return { ...box, right, bottom }
}
