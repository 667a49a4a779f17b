import type { InkRun } from './ink-runs.ts'
import type { InkSpots } from './ink-spots.ts'
import type { PieceDrawing, PlacedDrawing } from './scene.ts'
import { type PageShape, steps } from './tile-grid.ts'

/** A run's box is asked this much wider than it is, mm: its sums round in another order than those of its pieces. */
const ROUNDING = 1e-6

/**
 * Which tiles are printed. The windows overlap, so each place is given to one tile alone, the one whose window
 * starts there: a page whose ink is all in its neighbours' overlap is not needed.
 */
export function inkedTiles(
  placed: readonly PlacedDrawing[],
  columns: number,
  rows: number,
  page: PageShape,
  overlap: number,
  ink: ReadonlyMap<PieceDrawing, readonly InkRun[]>,
): boolean[][] {
  const found = Array.from({ length: rows }, () => new Array<boolean>(columns).fill(false))
  const { column, row } = tilesUnder(columns, rows, page, overlap)
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
    for (const { box, segments } of ink.get(drawing) ?? []) {
      const c = column(box.left + at.x - ROUNDING)
      const r = row(box.top + at.y + ROUNDING)
      const c1 = column(box.right + at.x + ROUNDING)
      const r1 = row(box.bottom + at.y - ROUNDING)
      if (c === c1 && r === r1) {
        // Most runs lie on one tile.
        ;(found[r] as boolean[])[c] = true
        continue
      }
      if (areAll(found, c, c1, r, r1)) continue
      for (const { a, b, half } of segments) mark(a.x + at.x, a.y + at.y, b.x + at.x, b.y + at.y, half)
    }
  }
  return found
}

/**
 * No more tiles than are printed: those that single places of the ink lie on. Stops counting above `most`, which is
 * all that is asked of most of the ways that are tried.
 */
export function leastTiles(
  placed: readonly PlacedDrawing[],
  columns: number,
  rows: number,
  page: PageShape,
  overlap: number,
  spots: ReadonlyMap<PieceDrawing, InkSpots>,
  most: number,
): number {
  const { column, row } = tilesUnder(columns, rows, page, overlap)
  const found = new Uint8Array(columns * rows)
  let count = 0
  for (const { drawing, at } of placed) {
    const places = spots.get(drawing) as InkSpots
    for (let k = 0; k < places.length; k += 2) {
      const tile = row((places[k + 1] as number) + at.y) * columns + column((places[k] as number) + at.x)
      if (found[tile] === 1) continue
      found[tile] = 1
      if (++count > most) return count
    }
  }
  return count
}

/** Column and row of the tile whose window starts at a place. */
function tilesUnder(columns: number, rows: number, page: PageShape, overlap: number) {
  const { stepX, stepY } = steps(page, overlap)
  const height = rows * stepY + overlap
  return {
    column: (x: number) => Math.min(columns - 1, Math.max(0, Math.floor(x / stepX))),
    row: (y: number) => Math.min(rows - 1, Math.max(0, Math.floor((height - y) / stepY))),
  }
}

function areAll(found: readonly (readonly boolean[])[], c0: number, c1: number, r0: number, r1: number): boolean {
  for (let r = r0; r <= r1; r++) for (let c = c0; c <= c1; c++) if (!found[r]?.[c]) return false
  return true
}
