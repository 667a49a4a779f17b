import type { Box } from '../geometry/bounds.ts'
import type { Segment } from './ink.ts'

/** Side of a cell, mm. */
const CELL = 1

/** Where ink is on a page, in cells of a millimetre: quick to ask thousands of times. */
export interface InkRaster {
  /** How many cells with ink an upright box, grown by `clearance` on every side, touches; outside the page there are none. */
  count(box: Box, clearance: number): number
}

/** The raster of the ink inside a box. Pens count as lines: half their weight is for the clearance to allow. */
export function inkRaster(page: Box, ink: readonly Segment[]): InkRaster {
  const columns = Math.max(1, Math.ceil((page.right - page.left) / CELL))
  const rows = Math.max(1, Math.ceil((page.top - page.bottom) / CELL))
  const inked = new Uint8Array(columns * rows)
  for (const { a, b } of ink) {
    const dx = b.x - a.x
    const dy = b.y - a.y
    const steps = Math.max(1, Math.ceil((2 * Math.sqrt(dx * dx + dy * dy)) / CELL))
    for (let k = 0; k <= steps; k++) {
      const column = Math.floor((a.x + (dx * k) / steps - page.left) / CELL)
      const row = Math.floor((a.y + (dy * k) / steps - page.bottom) / CELL)
      if (column >= 0 && column < columns && row >= 0 && row < rows) inked[row * columns + column] = 1
    }
  }
  // sums[r][c]: cells below row r and left of column c, so that any box is four look-ups.
  const width = columns + 1
  const sums = new Uint32Array(width * (rows + 1))
  const at = (row: number, column: number) => sums[row * width + column] as number
  for (let cell = 0, here = width + 1; cell < inked.length; here++) {
    let sum = 0
    for (const end = cell + columns; cell < end; cell++, here++) {
      sum += inked[cell] as number
      sums[here] = (sums[here - width] as number) + sum
    }
  }
  const within = (value: number, most: number) => Math.min(most, Math.max(0, value))
  return {
    count: (box, clearance) => {
      const c0 = within(Math.floor((box.left - clearance - page.left) / CELL), columns)
      const c1 = within(Math.floor((box.right + clearance - page.left) / CELL) + 1, columns)
      const r0 = within(Math.floor((box.bottom - clearance - page.bottom) / CELL), rows)
      const r1 = within(Math.floor((box.top + clearance - page.bottom) / CELL) + 1, rows)
      if (c1 <= c0 || r1 <= r0) return 0
      return at(r1, c1) - at(r0, c1) - at(r1, c0) + at(r0, c0)
    },
  }
}
