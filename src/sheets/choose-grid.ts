import { type Arrangement, arrangements } from './arrange.ts'
import { inkOf, type Segment } from './ink.ts'
import { type InkRun, inkRuns } from './ink-runs.ts'
import { inkedTiles } from './inked-tiles.ts'
import { nest } from './nest.ts'
import { packStrip } from './pack-strip.ts'
import { PADDING, type PageOptions, pageShapes } from './page-shapes.ts'
import type { Paper } from './papers.ts'
import type { PieceDrawing } from './scene.ts'
import { type PageShape, steps, type TileGrid } from './tile-grid.ts'

type Inks = ReadonlyMap<PieceDrawing, readonly Segment[]>
type Runs = ReadonlyMap<PieceDrawing, readonly InkRun[]>

/** So many of the best arrangements are nested; a plain one that is far worse never wins. */
const NESTED = 4

/**
 * The grid that needs the fewest pages, and of those the least paper: all ways to put the pieces in rows and to pack
 * them into strips one, two, … pages wide, upright or across, shifted, and the best of them nested.
 */
export function chooseGrid(drawings: readonly PieceDrawing[], paper: Paper, options: PageOptions): TileGrid {
  const ink: Inks = new Map(drawings.map((d) => [d, inkOf(d.marks)]))
  const runs: Runs = new Map([...ink].map(([drawing, segments]) => [drawing, inkRuns(segments)]))
  const rows = arrangements(drawings)
  const widest = Math.max(...rows.map((way) => way.width))
  const grids = pageShapes(paper, 0, options).flatMap(({ frame }) => {
    const width = frame.right - frame.left
    const ways = [...rows, ...stripWidths(width, options.overlap, widest).flatMap((w) => packStrip(drawings, ink, w))]
    return ways.flatMap((way) =>
      pageShapes(paper, way.height, options)
        .filter((page) => page.frame.right - page.frame.left === width)
        .flatMap((page) => gridsFor(way, page, options.overlap, runs)),
    )
  })
  const ranked = grids.map((grid) => ({ grid, cost: gridCost(grid) })).sort((a, b) => compare(a.cost, b.cost))
  const [first] = ranked
  if (!first) throw new RangeError('tiles need at least one piece')
  if (first.grid.columns * first.grid.rows === 1) return first.grid
  const nested = ranked.slice(0, NESTED).map(({ grid }) => nestedGrid(grid, ink, runs))
  return [first, ...nested.map((grid) => ({ grid, cost: gridCost(grid) }))].reduce((a, b) =>
    compare(b.cost, a.cost) < 0 ? b : a,
  ).grid
}

/** What is open to the pattern under one, two, … windows side by side, up to all pieces in one row. */
function stripWidths(frameWidth: number, overlap: number, widest: number): number[] {
  const found: number[] = []
  for (let columns = 1; ; columns++) {
    const width = columns * (frameWidth - overlap) + overlap - 2 * PADDING
    found.push(width)
    if (width >= widest) return found
  }
}

function nestedGrid(grid: TileGrid, ink: Inks, runs: Runs): TileGrid {
  const { columns, rows, page, overlap } = grid
  const { stepX, stepY } = steps(page, overlap)
  const size = { width: columns * stepX + overlap, height: rows * stepY + overlap }
  const placed = nest(grid.placed, ink, { columns, rows, stepX, stepY, ...size, padding: PADDING })
  return { ...grid, placed, inked: inkedTiles(placed, columns, rows, page, overlap, runs) }
}

/** Pages first, then paper, then the number of windows (a compact map is easier to put together), then the room used. */
function gridCost(grid: TileGrid): readonly number[] {
  const pages = grid.inked.flat().filter(Boolean).length
  const { width, height } = grid.page
  const used =
    (Math.max(...grid.placed.map((p) => p.at.x + p.drawing.box.right)) -
      Math.min(...grid.placed.map((p) => p.at.x + p.drawing.box.left))) *
    (Math.max(...grid.placed.map((p) => p.at.y + p.drawing.box.top)) -
      Math.min(...grid.placed.map((p) => p.at.y + p.drawing.box.bottom)))
  return [pages, pages * width * height, grid.rows * grid.columns, used]
}

function compare(a: readonly number[], b: readonly number[]): number {
  const k = a.findIndex((value, n) => value !== b[n])
  return k < 0 ? 0 : (a[k] as number) - (b[k] as number)
}

/** One way of laying out, shifted under the windows by nothing, half and all of what they have to spare; on one sheet to its upper left corner. */
function gridsFor(way: Arrangement, page: PageShape, overlap: number, runs: Runs): TileGrid[] {
  const { stepX, stepY } = steps(page, overlap)
  const columns = Math.max(1, Math.ceil((way.width + 2 * PADDING - overlap) / stepX - 1e-9))
  const rows = Math.max(1, Math.ceil((way.height + 2 * PADDING - overlap) / stepY - 1e-9))
  const spareX = columns * stepX + overlap - way.width - 2 * PADDING
  const spareY = rows * stepY + overlap - way.height - 2 * PADDING
  const shares = columns * rows === 1 ? [0] : [0, 0.5, 1]
  return shares.flatMap((sx) =>
    shares.map((sy) => {
      const by = { x: PADDING + sx * spareX, y: PADDING + (1 - sy) * spareY }
      const placed = way.placed.map(({ drawing, at }) => ({ drawing, at: { x: at.x + by.x, y: at.y + by.y } }))
      return { page, overlap, columns, rows, placed, inked: inkedTiles(placed, columns, rows, page, overlap, runs) }
    }),
  )
}
