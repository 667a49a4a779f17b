import type { Box } from '../geometry/bounds.ts'
import { type PlacedDrawing, placedMarks } from './scene.ts'

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

/** From one window to the next, mm. */
export function steps(page: PageShape, overlap: number): { stepX: number; stepY: number } {
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

/** All marks of the grid in its absolute frame, with the piece they belong to. */
export function gridMarks(grid: TileGrid) {
  return grid.placed.flatMap((placed) => placedMarks(placed).map((mark) => ({ piece: placed.drawing, mark })))
}
