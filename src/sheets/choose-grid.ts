import { type Arrangement, arrangements } from './arrange.ts'
import { keptInkOf, type Segment } from './ink.ts'
import { type InkRun, inkRuns } from './ink-runs.ts'
import { type InkSpots, inkSpots } from './ink-spots.ts'
import { inkedTiles, leastTiles } from './inked-tiles.ts'
import { nest } from './nest.ts'
import { packStrip, stripShapes } from './pack-strip.ts'
import { PADDING, type PageOptions, pageShapes } from './page-shapes.ts'
import type { Paper } from './papers.ts'
import type { PieceDrawing } from './scene.ts'
import { type PageShape, steps, type TileGrid } from './tile-grid.ts'

/** The ink of the drawings, in every form that is asked for. */
interface Inks {
  readonly segments: ReadonlyMap<PieceDrawing, readonly Segment[]>
  readonly runs: ReadonlyMap<PieceDrawing, readonly InkRun[]>
  readonly spots: ReadonlyMap<PieceDrawing, InkSpots>
}

/** A grid whose tiles have not been looked at yet. */
type Trial = Omit<TileGrid, 'inked'>

interface Ranked {
  readonly grid: TileGrid
  readonly cost: readonly number[]
}

/** So many of the best arrangements are nested; a plain one that is far worse never wins. */
const NESTED = 4

/**
 * The grid that needs the fewest pages, and of those the least paper: all ways to put the pieces in rows and to pack
 * them into strips one, two, … pages wide, upright or across, shifted, and the best of them nested.
 */
export function chooseGrid(drawings: readonly PieceDrawing[], paper: Paper, options: PageOptions): TileGrid {
  const inks = inksOf(drawings)
  const rows = arrangements(drawings)
  const widest = Math.max(...rows.map((way) => way.width))
  const ranked: Ranked[] = []
  const shapes = stripShapes(drawings, inks.segments)
  for (const { frame } of pageShapes(paper, 0, options)) {
    const width = frame.right - frame.left
    const strips = stripWidths(width, options.overlap, widest).flatMap((w) => packStrip(shapes, w))
    for (const way of [...rows, ...strips]) {
      for (const page of pageShapes(paper, way.height, options)) {
        if (page.frame.right - page.frame.left !== width) continue
        for (const trial of trialsOf(way, page, options.overlap)) rank(trial, ranked, inks)
      }
    }
  }
  const [first] = ranked
  if (!first) throw new RangeError('tiles need at least one piece')
  if (first.grid.columns * first.grid.rows === 1) return first.grid
  const nested = ranked.map(({ grid }) => withInk(nestedTrial(grid, inks), inks))
  return [first, ...nested].reduce((a, b) => (compare(b.cost, a.cost) < 0 ? b : a)).grid
}

function inksOf(drawings: readonly PieceDrawing[]): Inks {
  const segments = new Map(drawings.map((d) => [d, keptInkOf(d.marks)]))
  const each = [...segments]
  return {
    segments,
    runs: new Map(each.map(([drawing, ink]) => [drawing, inkRuns(ink)])),
    spots: new Map(each.map(([drawing, ink]) => [drawing, inkSpots(ink)])),
  }
}

/** Puts the trial in its place among the best, after those that are as good; most are left as soon as too many tiles are seen. */
function rank(trial: Trial, best: Ranked[], inks: Inks): void {
  const { placed, columns, rows, page, overlap } = trial
  const last = best.length < NESTED ? undefined : (best[NESTED - 1] as Ranked)
  if (last) {
    const least = leastTiles(placed, columns, rows, page, overlap, inks.spots, last.cost[0] as number)
    if (compare(costOf(trial, least), last.cost) >= 0) return
  }
  const ranked = withInk(trial, inks)
  if (last && compare(ranked.cost, last.cost) >= 0) return
  const after = best.findIndex(({ cost }) => compare(ranked.cost, cost) < 0)
  best.splice(after < 0 ? best.length : after, 0, ranked)
  best.length = Math.min(best.length, NESTED)
}

function withInk(trial: Trial, { runs }: Inks): Ranked {
  const { placed, columns, rows, page, overlap } = trial
  const inked = inkedTiles(placed, columns, rows, page, overlap, runs)
  return { grid: { ...trial, inked }, cost: costOf(trial, inked.flat().filter(Boolean).length) }
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

function nestedTrial(grid: TileGrid, inks: Inks): Trial {
  const { columns, rows, page, overlap } = grid
  const { stepX, stepY } = steps(page, overlap)
  const size = { width: columns * stepX + overlap, height: rows * stepY + overlap }
  const placed = nest(grid.placed, inks.segments, { columns, rows, stepX, stepY, ...size, padding: PADDING })
  return { page, overlap, columns, rows, placed }
}

/** Pages first, then paper, then the number of windows (a compact map is easier to put together), then the room used. */
function costOf({ page, placed, columns, rows }: Trial, pages: number): readonly number[] {
  let [left, right] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
  let [bottom, top] = [left, right]
  for (const { at, drawing } of placed) {
    left = Math.min(left, at.x + drawing.box.left)
    right = Math.max(right, at.x + drawing.box.right)
    bottom = Math.min(bottom, at.y + drawing.box.bottom)
    top = Math.max(top, at.y + drawing.box.top)
  }
  return [pages, pages * page.width * page.height, rows * columns, (right - left) * (top - bottom)]
}

function compare(a: readonly number[], b: readonly number[]): number {
  const k = a.findIndex((value, n) => value !== b[n])
  return k < 0 ? 0 : (a[k] as number) - (b[k] as number)
}

/** One way of laying out, shifted under the windows by nothing, half and all of what they have to spare; on one sheet to its upper left corner. */
function trialsOf(way: Arrangement, page: PageShape, overlap: number): Trial[] {
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
      return { page, overlap, columns, rows, placed }
    }),
  )
}
