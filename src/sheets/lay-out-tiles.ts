import type { Box } from '../geometry/bounds.ts'
import { subtract } from '../geometry/point.ts'
import { type Segment, inkOf } from './ink.ts'
import { pageEdges } from './page-edges.ts'
import { pageMap } from './page-map.ts'
import { pageSquares } from './page-squares.ts'
import { pageStrip } from './page-strip.ts'
import type { Paper } from './papers.ts'
import { segmentTouches } from './room.ts'
import { type Mark, moveMark, type Scene, type SheetInfo } from './scene.ts'
import { chooseGrid, gridMarks, type TileGrid, tileName, windowOf } from './tile-grid.ts'

export interface TileOptions {
  /** Clear margin, mm; at least (and by default) 10: no office printer prints nearer the edge. */
  readonly margin?: number
  /** How far pages are laid over each other, mm; default 10. */
  readonly overlap?: number
}

/** One printed page; marks in the page's own frame, y up, lower left corner of the paper at the origin, mm. */
export interface TilePage {
  /** `A1`, `A2`, … or `map`. */
  readonly name: string
  /** From 1. */
  readonly number: number
  /** Ids of the pieces that show on it. */
  readonly pieces: readonly string[]
  /** What the frame shows, in the absolute frame of the whole; absent on the map. */
  readonly window?: Box
  /** Marks of the pattern, to be clipped to the frame. */
  readonly pattern: readonly Mark[]
  /** Border, strip, squares and joining marks, all inside the margins. */
  readonly furniture: readonly Mark[]
}

/** All pages of one printing, of one size. */
export interface TileSet {
  readonly info: SheetInfo
  readonly paper: string
  readonly width: number
  readonly height: number
  /** The border on every page. */
  readonly frame: Box
  readonly overlap: number
  /** Titles of the pieces by id, in the order of the sheet. */
  readonly titles: ReadonlyMap<string, string>
  readonly pages: readonly TilePage[]
}

/**
 * The pieces of a scene on pages of a paper: the arrangement, orientation and shift that need the fewest pages,
 * only pages with ink, positions from one absolute grid, and a map in front when there is more than one page.
 * Throws on a margin below 10 mm or an overlap that is negative or half a page: the caller's mistakes.
 */
export function layOutTiles(scene: Scene, paper: Paper, options: TileOptions = {}): TileSet {
  const margin = options.margin ?? 10
  const overlap = options.overlap ?? 10
  if (!(margin >= 10 && margin <= 25)) throw new RangeError(`the margin must be 10 to 25 mm, not ${margin}`)
  if (!(overlap >= 0 && overlap <= 25)) throw new RangeError(`the overlap must be 0 to 25 mm, not ${overlap}`)
  const grid = chooseGrid(
    scene.pieces.map((p) => p.drawing),
    paper,
    { margin, overlap },
  )
  const { frame, width, height } = grid.page
  return {
    info: scene.info,
    paper: paper.name,
    width,
    height,
    frame,
    overlap,
    titles: new Map(scene.pieces.map((p) => [p.drawing.id, p.drawing.title])),
    pages: pagesOf(grid, scene.info),
  }
}

interface InkedMark {
  readonly piece: string
  readonly mark: Mark
  readonly ink: readonly Segment[]
}

function pagesOf(grid: TileGrid, info: SheetInfo): TilePage[] {
  const inked = gridMarks(grid).map(({ piece, mark }) => ({ piece: piece.id, mark, ink: inkOf([mark]) }))
  const edges = pageEdges(
    grid,
    inked.flatMap((m) => m.ink),
  )
  const tiles = grid.inked.flatMap((cells, row) => cells.flatMap((has, column) => (has ? [[column, row] as const] : [])))
  const hasMap = tiles.length > 1
  const count = tiles.length + (hasMap ? 1 : 0)
  // An outline open along a fold is closed by its chord, which is the fold.
  const outlines = inked.flatMap(({ mark }) => (mark.type === 'stroke' && mark.kind === 'cutting line' ? mark.paths : []))
  const { frame } = grid.page
  const border = `border ${frame.right - frame.left} × ${frame.top - frame.bottom} mm`
  const heading = headingOf(info)
  const strip = (name: string, number: number) => {
    const facts = hasMap ? [border, `overlap ${grid.overlap} mm`, `page ${number} of ${count}`] : [border]
    return pageStrip(grid.page, name, heading, facts.join(' · '))
  }
  const pages: TilePage[] = []
  if (hasMap) {
    const furniture = [...strip('map', 1), ...pageMap(grid, info, border)]
    pages.push({ name: 'map', number: 1, pieces: [], pattern: [], furniture })
  }
  for (const [column, row] of tiles) {
    const name = hasMap ? tileName(column, row) : ''
    const number = pages.length + 1
    const window = windowOf(grid, column, row)
    const shift = subtract({ x: frame.left, y: frame.bottom }, { x: window.left, y: window.bottom })
    const seen = inked.filter((m) => shows(m, window))
    const joining = edges.get(tileName(column, row)) ?? []
    const near = [...seen.flatMap((m) => m.ink), ...inkOf(joining)].filter((s) => touches(s, window))
    const squares = pageSquares(squareBox(window, grid, tiles.length), near, outlines)
    pages.push({
      name: name || 'sheet',
      number,
      pieces: Array.from(new Set(seen.map((m) => m.piece))),
      window,
      pattern: seen.map((m) => moveMark(m.mark, shift)),
      furniture: [...strip(name, number), ...[...joining, ...squares].map((mark) => moveMark(mark, shift))],
    })
  }
  return pages
}

function headingOf(info: SheetInfo): string {
  const fittings = info.fittings ?? []
  const version = fittings.length > 0 ? `fitted: ${fittings.join(', ')}` : info.version
  return [info.production, info.performer, version, info.date].filter((part) => part !== undefined).join(' · ')
}

/** The squares stay out of the overlaps, which are trimmed or covered. */
function squareBox(window: Box, grid: TileGrid, tiles: number): Box {
  const inset = tiles > 1 ? grid.overlap + 4 : 4
  const box = { left: window.left + inset, bottom: window.bottom + inset, right: window.right - inset, top: window.top - inset }
  const fits = box.right - box.left > 102 && box.top - box.bottom > 102
  return fits ? box : window
}

function shows(m: InkedMark, window: Box): boolean {
  return m.ink.some((s) => touches(s, window))
}

function touches(segment: Segment, window: Box): boolean {
  const halfWidth = (window.right - window.left) / 2
  const halfHeight = (window.top - window.bottom) / 2
  const center = { x: window.left + halfWidth, y: window.bottom + halfHeight }
  return segmentTouches(segment, { center, along: { x: 1, y: 0 }, halfWidth, halfHeight }, 0)
}
