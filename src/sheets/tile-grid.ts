import type { Box } from '../geometry/bounds.ts'
import { type Arrangement, arrangements } from './arrange.ts'
import { inkOf, type Segment } from './ink.ts'
import { nest } from './nest.ts'
import { LONGEST_SIDE, type Paper } from './papers.ts'
import { type PieceDrawing, type PlacedDrawing, placedMarks } from './scene.ts'

/** Height of the strip under the frame that holds the rule and the page's name, mm. */
const STRIP = 14

/** Keeps the pen of the frame and the strip out of the margin, mm. */
const PEN_ROOM = 0.5

/** Clear space between the pattern and the outer edge of the frames, mm. */
const PADDING = 2

/** A page and its frame: the window through which the pattern is seen; page frame, y up, mm. */
export interface PageShape {
  readonly width: number
  readonly height: number
  readonly frame: Box
}

/**
 * The pattern under a grid of windows. Columns count from the left and rows from the top; window and column all
 * lie in one absolute frame, y up, whose lower left corner is that of the whole.
 */
export interface TileGrid {
  readonly page: PageShape
  readonly overlap: number
  readonly columns: number
  readonly rows: number
  readonly placed: readonly PlacedDrawing[]
  /** Whether the tile holds ink that no earlier window shows, row by row. */
  readonly inked: readonly (readonly boolean[])[]
}

export interface GridOptions {
  /** Clear margin of a page, mm. */
  readonly margin: number
  /** How far a page is laid over the next, mm. */
  readonly overlap: number
}

/** The frame of a page: whole millimetres, so that its size can be checked with a rule. */
function pageShape(width: number, height: number, margin: number): PageShape {
  const inset = margin + PEN_ROOM
  const left = inset
  const bottom = inset + STRIP
  const w = Math.floor(width - 2 * inset + 1e-9)
  const h = Math.floor(height - 2 * inset - STRIP + 1e-9)
  return { width, height, frame: { left, bottom, right: left + w, top: bottom + h } }
}

/** So many of the best arrangements are nested; a plain one that is far worse never wins. */
const NESTED = 3

/**
 * The grid that needs the fewest pages: all ways to put the pieces in rows, upright or across, shifted, and the
 * best of them nested.
 */
export function chooseGrid(drawings: readonly PieceDrawing[], paper: Paper, options: GridOptions): TileGrid {
  const ink = new Map(drawings.map((d) => [d, inkOf(d.marks)]))
  const grids = arrangements(drawings).flatMap((way) =>
    pagesFor(paper, way, options).flatMap((page) => gridsFor(way, page, options.overlap, ink)),
  )
  const ranked = grids.map((grid) => ({ grid, cost: pageCost(grid) })).sort((a, b) => a.cost - b.cost)
  const [first] = ranked
  if (!first) throw new RangeError('tiles need at least one piece')
  if (first.grid.columns * first.grid.rows === 1) return first.grid
  const nested = ranked.slice(0, NESTED).map(({ grid }) => nestedGrid(grid, ink))
  return [first, ...nested.map((grid) => ({ grid, cost: pageCost(grid) }))].reduce((a, b) => (b.cost < a.cost ? b : a)).grid
}

function nestedGrid(grid: TileGrid, ink: ReadonlyMap<PieceDrawing, readonly Segment[]>): TileGrid {
  const { columns, rows, page, overlap } = grid
  const { stepX, stepY } = steps(page, overlap)
  const size = { width: columns * stepX + overlap, height: rows * stepY + overlap }
  const placed = nest(grid.placed, ink, { columns, rows, stepX, stepY, ...size, padding: PADDING })
  return { ...grid, placed, inked: inkedTiles(placed, columns, rows, page, overlap, ink) }
}

/** Pages first, then paper, then the number of windows: a compact map is easier to put together. */
function pageCost(grid: TileGrid): number {
  const pages = grid.inked.flat().filter(Boolean).length
  const area = pages * grid.page.width * grid.page.height
  return pages * 1e12 + area * 1e3 + grid.rows * grid.columns
}

function pagesFor(paper: Paper, way: Arrangement, options: GridOptions): PageShape[] {
  const side = (mm: number) => Math.min(mm, LONGEST_SIDE)
  if (paper.form === 'sheet') {
    const upright = pageShape(side(paper.width), side(paper.height), options.margin)
    if (paper.width === paper.height) return [upright]
    return [upright, pageShape(side(paper.height), side(paper.width), options.margin)]
  }
  const needed = Math.ceil(Math.max(way.height + 2 * PADDING, 130) + 2 * (options.margin + PEN_ROOM) + STRIP)
  return [pageShape(side(paper.width), side(needed), options.margin)]
}

/** One way of laying out, shifted under the windows by nothing, half and all of what they have to spare. */
function gridsFor(way: Arrangement, page: PageShape, overlap: number, ink: ReadonlyMap<PieceDrawing, readonly Segment[]>): TileGrid[] {
  const { stepX, stepY } = steps(page, overlap)
  const columns = Math.max(1, Math.ceil((way.width + 2 * PADDING - overlap) / stepX - 1e-9))
  const rows = Math.max(1, Math.ceil((way.height + 2 * PADDING - overlap) / stepY - 1e-9))
  const spareX = columns * stepX + overlap - way.width - 2 * PADDING
  const spareY = rows * stepY + overlap - way.height - 2 * PADDING
  const shares = columns * rows === 1 ? [0.5] : [0, 0.5, 1]
  return shares.flatMap((sx) =>
    shares.map((sy) => {
      const by = { x: PADDING + sx * spareX, y: PADDING + (1 - sy) * spareY }
      const placed = way.placed.map(({ drawing, at }) => ({ drawing, at: { x: at.x + by.x, y: at.y + by.y } }))
      return { page, overlap, columns, rows, placed, inked: inkedTiles(placed, columns, rows, page, overlap, ink) }
    }),
  )
}

function steps(page: PageShape, overlap: number): { stepX: number; stepY: number } {
  return { stepX: page.frame.right - page.frame.left - overlap, stepY: page.frame.top - page.frame.bottom - overlap }
}

/** The part of the whole that a tile's frame shows. */
export function windowOf(grid: TileGrid, column: number, row: number): Box {
  const { stepX, stepY } = steps(grid.page, grid.overlap)
  const left = column * stepX
  const top = (grid.rows - row) * stepY + grid.overlap
  return { left, top, right: left + stepX + grid.overlap, bottom: top - stepY - grid.overlap }
}

/** `A1` is the first of the top row. */
export function tileName(column: number, row: number): string {
  let letters = ''
  for (let n = row; n >= 0; n = Math.floor(n / 26) - 1) letters = String.fromCharCode(65 + (n % 26)) + letters
  return `${letters}${column + 1}`
}

/**
 * Which tiles are printed. The windows overlap, so each place is given to one tile alone, the one whose window
 * starts there: a page whose ink is all in its neighbours' overlap is not needed.
 */
function inkedTiles(
  placed: readonly PlacedDrawing[],
  columns: number,
  rows: number,
  page: PageShape,
  overlap: number,
  ink: ReadonlyMap<PieceDrawing, readonly Segment[]>,
): boolean[][] {
  const { stepX, stepY } = steps(page, overlap)
  const height = rows * stepY + overlap
  const found = Array.from({ length: rows }, () => new Array<boolean>(columns).fill(false))
  const column = (x: number) => Math.min(columns - 1, Math.max(0, Math.floor(x / stepX)))
  const row = (y: number) => Math.min(rows - 1, Math.max(0, Math.floor((height - y) / stepY)))
  const mark = (ax: number, ay: number, bx: number, by: number, half: number): void => {
    const c0 = column(Math.min(ax, bx) - half)
    const c1 = column(Math.max(ax, bx) + half)
    const r0 = row(Math.max(ay, by) + half)
    const r1 = row(Math.min(ay, by) - half)
    if (c0 !== c1 && r0 !== r1 && Math.abs(ax - bx) + Math.abs(ay - by) > 1) {
      const mx = (ax + bx) / 2
      const my = (ay + by) / 2
      mark(ax, ay, mx, my, half)
      mark(mx, my, bx, by, half)
      return
    }
    for (let r = r0; r <= r1; r++) for (let c = c0; c <= c1; c++) (found[r] as boolean[])[c] = true
  }
  for (const { drawing, at } of placed) {
    for (const { a, b, half } of ink.get(drawing) ?? []) mark(a.x + at.x, a.y + at.y, b.x + at.x, b.y + at.y, half)
  }
  return found
}

/** All marks of the grid in its absolute frame, with the piece they belong to. */
export function gridMarks(grid: TileGrid) {
  return grid.placed.flatMap((placed) => placedMarks(placed).map((mark) => ({ piece: placed.drawing, mark })))
}
