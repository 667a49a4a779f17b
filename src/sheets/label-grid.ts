import { keptInkOf, type Segment } from './ink.ts'
import { inkRuns } from './ink-runs.ts'
import { inkedTiles } from './inked-tiles.ts'
import type { PlacedDrawing } from './scene.ts'
import { steps, type TileGrid } from './tile-grid.ts'

/** Half the clear space between text and a page edge, mm. */
const HALF = 0.75

/** The grid with the text of every piece inside one page wherever there is room for it, not across page edges. */
export function labelGrid(grid: TileGrid): TileGrid {
  if (grid.columns * grid.rows === 1) return grid
  const placed = grid.placed.map((one) => {
    const { labelled } = one.drawing
    return labelled ? { ...one, drawing: labelled(edgesOver(grid, one)) } : one
  })
  const ink = new Map(placed.map(({ drawing }) => [drawing, inkRuns(keptInkOf(drawing.marks))]))
  return { ...grid, placed, inked: inkedTiles(placed, grid.columns, grid.rows, grid.page, grid.overlap, ink) }
}

/** The lines to which pages are laid that run over a piece, in its own frame. */
function edgesOver(grid: TileGrid, { drawing, at }: PlacedDrawing): Segment[] {
  const { stepX, stepY } = steps(grid.page, grid.overlap)
  const { left, right, bottom, top } = drawing.box
  const across = (y: number) => ({ a: { x: left, y }, b: { x: right, y }, half: HALF })
  const up = (x: number) => ({ a: { x, y: bottom }, b: { x, y: top }, half: HALF })
  const columns = Array.from({ length: grid.columns - 1 }, (_, k) => (k + 1) * stepX - at.x)
  const rows = Array.from({ length: grid.rows - 1 }, (_, k) => (k + 1) * stepY + grid.overlap - at.y)
  return [
    ...columns.filter((x) => x > left && x < right).map(up),
    ...rows.filter((y) => y > bottom && y < top).map(across),
  ]
}
