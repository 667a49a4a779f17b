import type { PieceDrawing, PlacedDrawing } from './scene.ts'

/** Clear space between two pieces on a sheet, mm. */
export const GAP = 12

export interface Arrangement {
  readonly placed: readonly PlacedDrawing[]
  readonly width: number
  readonly height: number
}

/** Pieces in rows from the top left, feet on one line in a row; `counts` says how many go into each row. */
function inRows(drawings: readonly PieceDrawing[], counts: readonly number[]): Arrangement {
  const rows: PieceDrawing[][] = []
  let next = 0
  for (const count of counts) {
    rows.push(drawings.slice(next, next + count))
    next += count
  }
  const heights = rows.map((row) => Math.max(...row.map((d) => d.box.top - d.box.bottom)))
  const height = heights.reduce((sum, h) => sum + h, 0) + GAP * (rows.length - 1)
  let width = 0
  let top = height
  const placed: PlacedDrawing[] = []
  rows.forEach((row, k) => {
    const foot = top - (heights[k] as number)
    let left = 0
    for (const drawing of row) {
      placed.push({ drawing, at: { x: left - drawing.box.left, y: foot - drawing.box.bottom } })
      left += drawing.box.right - drawing.box.left + GAP
    }
    width = Math.max(width, left - GAP)
    top = foot - GAP
  })
  return { placed, width, height }
}

/** Every way to share so many pieces, in their order, among rows; all in one row first. */
function rowCounts(pieces: number): number[][] {
  const found: number[][] = []
  for (let breaks = 0; breaks < 2 ** (pieces - 1); breaks++) {
    const counts = [1]
    for (let k = 0; k < pieces - 1; k++) {
      if (breaks & (1 << k)) counts.push(1)
      else counts[counts.length - 1] = (counts.at(-1) ?? 0) + 1
    }
    found.push(counts)
  }
  return found.sort((a, b) => a.length - b.length)
}

/** More pieces than this are put into rows as they come: the ways to share them double with each. */
const TOO_MANY = 8

/** All arrangements worth trying. */
export function arrangements(drawings: readonly PieceDrawing[]): Arrangement[] {
  if (drawings.length === 0) return []
  if (drawings.length <= TOO_MANY) return rowCounts(drawings.length).map((counts) => inRows(drawings, counts))
  return Array.from({ length: drawings.length }, (_, k) => k + 1).map((perRow) => {
    const counts: number[] = []
    for (let left = drawings.length; left > 0; left -= perRow) counts.push(Math.min(perRow, left))
    return inRows(drawings, counts)
  })
}

/** The least area; a further row must save a tenth of it, because one row is easier to look over. */
export function leastPaper(drawings: readonly PieceDrawing[]): Arrangement {
  const all = arrangements(drawings)
  const cost = (a: Arrangement, rows: number) => a.width * a.height * (1 + rows / 10)
  const costs = all.map((a) => cost(a, new Set(a.placed.map((p) => p.drawing.box.bottom + p.at.y)).size))
  return all[costs.indexOf(Math.min(...costs))] as Arrangement
}
