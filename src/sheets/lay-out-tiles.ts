import type { Box } from '../geometry/bounds.ts'
import { subtract } from '../geometry/point.ts'
import { chooseGrid } from './choose-grid.ts'
import { inkOf, type Segment } from './ink.ts'
import { inkIn } from './ink-in.ts'
import { inkRaster } from './ink-raster.ts'
import { type InkRun, inkRuns } from './ink-runs.ts'
import { labelGrid } from './label-grid.ts'
import { pageEdges } from './page-edges.ts'
import { pageMap, smallPageMap } from './page-map.ts'
import type { PageOptions } from './page-shapes.ts'
import { squarePlacer } from './page-squares.ts'
import { pageStrip } from './page-strip.ts'
import type { Paper } from './papers.ts'
import { checkSquare, type SquareMeasured, TRUE_SQUARE } from './printer-error.ts'
import { type Mark, moveMark, type Scene, type SheetInfo } from './scene.ts'
import { gridMarks, type TileGrid, tileName, windowOf } from './tile-grid.ts'

/** The joining marks must fit into the overlap; more than this is paper thrown away, mm. */
export const LEAST_OVERLAP = 8
/** The largest overlap of pages that is taken, mm. */
export const MOST_OVERLAP = 25

/** Whether pages can overlap by so many mm. */
export function isOverlap(mm: number): boolean {
  return mm >= LEAST_OVERLAP && mm <= MOST_OVERLAP
}

/** Margin and overlap of the pages, and what the printer makes of them. */
export interface TileOptions {
  /** Clear margin, mm; at least (and by default) 10: no office printer prints nearer the edge. */
  readonly margin?: number
  /** How far pages are laid over each other, mm; 8 to 25, default 10. */
  readonly overlap?: number
  /**
   * What the printer made of the 100 mm square, mm: the pages are scaled so that printed by it, the same way up, they
   * are true. Within 90 to 110 mm, sides within 5 % of each other.
   */
  readonly squareMeasured?: SquareMeasured
}

/** One printed page, as it comes out of the printer; marks in the page's own frame, y up, lower left corner of the paper at the origin, mm. */
export interface TilePage {
  /** `A1`, `A2`, … or `map`. */
  readonly name: string
  /** From 1. */
  readonly number: number
  /** Ids of the pieces that show on it. */
  readonly pieces: readonly string[]
  /** Whether the map of all pages is on it: on a page of its own, or in free room of the first of a few. */
  readonly map: boolean
  /** What the frame shows, in the absolute frame of the whole; absent on a map of its own. */
  readonly window?: Box
  /** Marks of the pattern, to be clipped to the frame. */
  readonly pattern: readonly Mark[]
  /** Border, strip, squares and joining marks, all inside the margins. */
  readonly furniture: readonly Mark[]
}

/** All pages of one printing, of one size. */
export interface TileSet {
  /** What the labels say. */
  readonly info: SheetInfo
  /** Name of the paper. */
  readonly paper: string
  /** Size of a page as the marks see it: of the paper where the printer prints true, mm. */
  readonly width: number
  /** The same, up the page, mm. */
  readonly height: number
  /** How much larger than life everything is in the file, so that it comes out true; 1 for a printer that prints true. */
  readonly printScale: {
    /** Across the page. */
    readonly x: number
    /** Up the page. */
    readonly y: number
  }
  /** The border on every page. */
  readonly frame: Box
  /** How far pages are laid over each other, mm. */
  readonly overlap: number
  /** Titles of the pieces by id, in the order of the sheet. */
  readonly titles: ReadonlyMap<string, string>
  /** Only pages with ink, row by row. */
  readonly pages: readonly TilePage[]
}

/**
 * The pieces of a scene on pages of a paper: the arrangement, orientation and shift that need the fewest pages,
 * only pages with ink, positions from one absolute grid, text inside one page wherever it can be, and where there is
 * more than one page a map: in free room of the first of up to six, else on a page in front. Throws on a margin below 10 mm, an overlap not within 8 to 25 mm and a
 * measured square that no printer makes: the caller's mistakes.
 */
export function layOutTiles(scene: Scene, paper: Paper, options: TileOptions = {}): TileSet {
  const margin = options.margin ?? 10
  const overlap = options.overlap ?? 10
  if (!(margin >= 10 && margin <= 25)) throw new RangeError(`the margin must be 10 to 25 mm, not ${margin}`)
  if (!isOverlap(overlap))
    throw new RangeError(`the overlap must be ${LEAST_OVERLAP} to ${MOST_OVERLAP} mm, not ${overlap}`)
  const measured = options.squareMeasured ? checkSquare(options.squareMeasured) : undefined
  if (measured && !measured.ok) {
    throw new RangeError(measured.problems.map((p) => `${p.actual}; expected ${p.expected}`).join('; '))
  }
  const square = measured?.value ?? TRUE_SQUARE
  const grid = labelGrid(gridFor(scene, paper, { margin, overlap, square }))
  const { frame, width, height } = grid.page
  return {
    info: scene.info,
    paper: paper.name,
    width,
    height,
    printScale: { x: 100 / square.x, y: 100 / square.y },
    frame,
    overlap,
    titles: new Map(scene.pieces.map((p) => [p.drawing.id, p.drawing.title])),
    pages: pagesOf(grid, scene.info, measured?.value),
  }
}

/** The square was measured on pages of the same pattern, across and up: corrected ones lie the same way up. */
function gridFor(scene: Scene, paper: Paper, options: PageOptions): TileGrid {
  const drawings = scene.pieces.map((p) => p.drawing)
  if (options.square.x === 100 && options.square.y === 100) return chooseGrid(drawings, paper, options)
  const before = chooseGrid(drawings, paper, { ...options, square: TRUE_SQUARE }).page
  const orientation = before.width > before.height ? 'across' : 'upright'
  return chooseGrid(drawings, paper, { ...options, orientation })
}

/** Clear space round the squares, and the least room that they ask for, mm. */
const SQUARE_ROOM = 3
const SQUARES = 102

interface InkedMark {
  readonly piece: string
  readonly mark: Mark
  readonly runs: readonly InkRun[]
}

function pagesOf(grid: TileGrid, info: SheetInfo, corrected: SquareMeasured | undefined): TilePage[] {
  const { frame } = grid.page
  const border = `border ${Math.round(frame.right - frame.left)} × ${Math.round(frame.top - frame.bottom)} mm`
  const contents = contentsOf(grid, corrected)
  const [first] = contents
  const many = contents.length > 1
  const small = first && many ? smallMapOn(first, grid, border) : undefined
  const ownMap = many && !small
  const count = contents.length + (ownMap ? 1 : 0)
  const heading = headingOf(info)
  const strip = (name: string, number: number) => {
    const facts = many ? [border, `overlap ${grid.overlap} mm`, `page ${number} of ${count}`] : [border]
    return pageStrip(grid.page, name, heading, facts.join(' · '))
  }
  const map: TilePage[] = []
  if (ownMap) {
    const furniture = [...strip('map', 1), ...pageMap(grid, info, border, corrected)]
    map.push({ name: 'map', number: 1, pieces: [], map: true, pattern: [], furniture })
  }
  const tiles = contents.map((content, k): TilePage => {
    const { window, seen, marks } = content
    const name = many ? content.name : ''
    const number = map.length + k + 1
    const shift = subtract({ x: frame.left, y: frame.bottom }, { x: window.left, y: window.bottom })
    const onPage = (mark: Mark) => moveMark(mark, shift)
    return {
      name: name || 'sheet',
      number,
      pieces: Array.from(new Set(seen.map((m) => m.piece))),
      map: content === first && small !== undefined,
      window,
      pattern: seen.map((m) => onPage(m.mark)),
      furniture: [...strip(name, number), ...[...marks, ...(content === first ? (small ?? []) : [])].map(onPage)],
    }
  })
  return [...map, ...tiles]
}

/** What a tile shows, in the grid's absolute frame. */
interface TileContent {
  readonly name: string
  readonly window: Box
  /** The window without the overlaps, which are trimmed or covered. */
  readonly inner: Box
  readonly seen: readonly InkedMark[]
  /** Joining marks and squares. */
  readonly marks: readonly Mark[]
  /** Ink of all of them. */
  readonly ink: readonly Segment[]
}

function contentsOf(grid: TileGrid, corrected: SquareMeasured | undefined): TileContent[] {
  const inked = gridMarks(grid).map(({ piece, mark }) => ({ piece: piece.id, mark, runs: inkRuns(inkOf([mark])) }))
  const edges = pageEdges(
    grid,
    inked.flatMap(({ runs }) => runs.flatMap(({ segments }) => segments)),
  )
  // An outline open along a fold is closed by its chord, which is the fold.
  const outlines = inked.flatMap(({ mark }) =>
    mark.type === 'stroke' && mark.kind === 'cutting line' ? mark.paths : [],
  )
  const squaresOn = squarePlacer(outlines, corrected)
  const tiles = grid.inked.flatMap((cells, row) =>
    cells.flatMap((has, column) => (has ? [[column, row] as const] : [])),
  )
  return tiles.map(([column, row]) => {
    const name = tileName(column, row)
    const window = windowOf(grid, column, row)
    const inner = innerBox(grid, column, row)
    const shown = inked.map((one) => ({ one, ink: inkIn(one.runs, window) })).filter(({ ink }) => ink.length > 0)
    const seen = shown.map(({ one }) => one)
    const joining = edges.get(name) ?? []
    const near = [...shown.flatMap(({ ink }) => ink), ...inkIn(inkRuns(inkOf(joining)), window)]
    const squares = squaresOn(inner, near)
    return { name, window, inner, seen, marks: [...joining, ...squares], ink: [...near, ...inkOf(squares)] }
  })
}

function smallMapOn({ inner, ink }: TileContent, grid: TileGrid, border: string): Mark[] | undefined {
  return smallPageMap(grid, border, inner, inkRaster(inner, ink))
}

function headingOf(info: SheetInfo): string {
  const fittings = info.fittings ?? []
  const version = fittings.length > 0 ? `fitted: ${fittings.join(', ')}` : info.version
  return [info.production, info.performer, version, info.date].filter((part) => part !== undefined).join(' · ')
}

/** The window without the overlaps, unless that leaves too little room for the squares. */
function innerBox(grid: TileGrid, column: number, row: number): Box {
  const window = windowOf(grid, column, row)
  const inset = (there: boolean | undefined) => (there ? grid.overlap + SQUARE_ROOM : SQUARE_ROOM)
  const box = {
    left: window.left + inset(grid.inked[row]?.[column - 1]),
    bottom: window.bottom + inset(grid.inked[row + 1]?.[column]),
    right: window.right - inset(grid.inked[row]?.[column + 1]),
    top: window.top - inset(grid.inked[row - 1]?.[column]),
  }
  const fits = box.right - box.left > SQUARES && box.top - box.bottom > SQUARES
  return fits ? box : window
}
