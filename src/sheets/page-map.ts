import type { Box } from '../geometry/bounds.ts'
import type { InkRaster } from './ink-raster.ts'
import { mapPicture } from './map-picture.ts'
import { INCH_SQUARE, measuredSquares, squareNames } from './measured-squares.ts'
import { type SquareMeasured, squareWords } from './printer-error.ts'
import type { Mark, SheetInfo } from './scene.ts'
import { leftText } from './sheet-foot.ts'
import { fittingSize } from './text-width.ts'
import type { TileGrid } from './tile-grid.ts'
import { wrapWords } from './wrap-words.ts'

const TITLE_SIZE = 7
const LINE_SIZE = 3.4
const LEADING = 1.45
const GAP = 8

/** The first page: how the pages go together, with the squares to measure before printing the rest. Page frame. */
export function pageMap(grid: TileGrid, info: SheetInfo, border: string, corrected?: SquareMeasured): Mark[] {
  const { left, bottom, right, top } = grid.page.frame
  const inner = { left: left + GAP, bottom: bottom + GAP, right: right - GAP, top: top - GAP }
  const heading = info.production ? `${info.production} · ${info.performer}` : info.performer
  const wide = inner.right - inner.left > inner.top - inner.bottom
  const titleFoot = inner.top - TITLE_SIZE * 1.6
  const mapBox = wide
    ? { left: inner.left + INCH_SQUARE + GAP, bottom: inner.bottom, right: inner.right, top: titleFoot }
    : { left: inner.left, bottom: inner.bottom + INCH_SQUARE + GAP, right: inner.right, top: titleFoot }
  const wordsBox = wide
    ? { left: inner.left, bottom: inner.bottom + INCH_SQUARE + 2, right: mapBox.left - 4, top: titleFoot }
    : {
        left: inner.left + INCH_SQUARE + GAP,
        bottom: inner.bottom,
        right: inner.right,
        top: inner.bottom + INCH_SQUARE,
      }
  const corner = { x: inner.left, y: inner.bottom }
  return [
    leftText(
      'map title',
      heading,
      fittingSize(heading, TITLE_SIZE, inner.right - inner.left),
      inner.left,
      inner.top - TITLE_SIZE,
      'page frame',
    ),
    ...setWords(adviceFor(grid, border, corrected), wordsBox, LINE_SIZE),
    ...mapPicture(grid, mapBox, 2),
    ...measuredSquares(corner),
    ...squareNames(corner, corrected ? { corrected } : {}),
  ]
}

/** So many pages at most share the first with their map: of more the picture would be too small. */
const SMALL_SET = 6

/** Width and height of the map on a page of the pattern, the wished ones first, mm. */
const SMALL_SIZES = [
  [96, 52],
  [60, 84],
  [84, 46],
  [50, 76],
] as const
const SMALL_LINE = 3
const STEP = 4

/**
 * The map of a few pages in free room of the first (`box`, what is there already in `raster`): picture and words alone;
 * undefined where there is no room for it or there are too many pages.
 */
export function smallPageMap(grid: TileGrid, border: string, box: Box, raster: InkRaster): Mark[] | undefined {
  if (grid.inked.flat().filter(Boolean).length > SMALL_SET) return undefined
  for (const [width, height] of SMALL_SIZES) {
    for (let top = box.top; top - height >= box.bottom; top -= STEP) {
      for (let left = box.left; left + width <= box.right; left += STEP) {
        const place = { left, bottom: top - height, right: left + width, top }
        if (raster.count(place, 1.5) === 0) return smallMapIn(grid, border, place)
      }
    }
  }
  return undefined
}

function smallMapIn(grid: TileGrid, border: string, box: Box): Mark[] {
  const { left, bottom, right, top } = box
  const wide = right - left > top - bottom
  const [middle, level] = [(left + right) / 2 - 2, (top + bottom) / 2]
  const picture = wide ? { left, bottom, right: middle - 2, top } : { left, bottom: level, right, top }
  const words = wide ? { left: middle + 2, bottom, right, top } : { left, bottom, right, top: level - 2 }
  const text = [
    `Print all pages at 100 %; measure a square and a border: ${border}.`,
    'Trim left and top borders that lie on a page before them, up to its dashed line; the ringed crosses meet.',
    'Join in the order of the numbers.',
  ]
  return [...mapPicture(grid, picture, 1), ...setWords(text, words, SMALL_LINE)]
}

function adviceFor(grid: TileGrid, border: string, corrected: SquareMeasured | undefined): string[] {
  const pages = grid.inked.flat().filter(Boolean).length
  const scaled = corrected
    ? [`Scaled for the printer that made the 100 mm square ${squareWords(corrected)}, across × up; only for that one.`]
    : []
  return [
    `Print all ${pages + 1} pages at 100 %, actual size; no “fit to page”.`,
    'Measure the squares on this page both ways, and any page’s border:',
    `${border}.`,
    ...scaled,
    'Trim the left and the top border of a page where another page comes before it. Lay it on that page, edge to the dashed line; the ringed crosses meet.',
    'Join each row from left to right, then the rows from top to bottom, in the order of the numbers.',
  ]
}

/** The paragraphs set as large as the box allows, down to the smallest that can be read. */
function setWords(text: readonly string[], box: Box, largest: number): Mark[] {
  const width = box.right - box.left
  const height = box.top - box.bottom
  for (let size = largest; ; size *= 0.95) {
    const lines = text.flatMap((paragraph) => wrapWords(paragraph, size, width))
    const needed = lines.length * size * LEADING
    if (needed > height && size > 1.8) continue
    return lines.map((line, k) =>
      leftText(`advice ${k + 1}`, line, size, box.left, box.top - size - k * size * LEADING, 'page frame'),
    )
  }
}
