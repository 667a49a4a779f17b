import { LONGEST_SIDE, type Paper } from './papers.ts'
import type { SquareMeasured } from './printer-error.ts'
import type { PageShape } from './tile-grid.ts'

/** Height of the strip under the frame that holds the rule and the page's name, mm. */
const STRIP = 14

/** Keeps the pen of the frame and the strip out of the margin, mm. */
const PEN_ROOM = 0.5

/** Clear space between the pattern and the outer edge of the frames, mm. */
export const PADDING = 2

/** A frame at least so high holds the measured squares, mm. */
const LOWEST_FRAME = 110

export interface PageOptions {
  /** Clear margin of a page, mm. */
  readonly margin: number
  /** How far a page is laid over the next, mm. */
  readonly overlap: number
  /** What the printer made of a 100 mm square, mm; 100 both ways for a true one. */
  readonly square: SquareMeasured
  /** Which way up alone; both where absent. */
  readonly orientation?: 'upright' | 'across'
}

/**
 * The pages that a paper gives, upright and across; of a roll, the one as long as the pattern needs. No side is longer
 * than readers take: a longer roll is cut into equal pages.
 */
export function pageShapes(paper: Paper, patternHeight: number, options: PageOptions): PageShape[] {
  const side = (mm: number) => Math.min(mm, LONGEST_SIDE)
  if (paper.form === 'roll') return [pageShape(side(paper.width), rollLength(patternHeight, options), options)]
  const [width, height] = [side(paper.width), side(paper.height)]
  const ways = width === height ? [[width, height] as const] : [[width, height] as const, [height, width] as const]
  return ways.filter(([w, h]) => fitsWay(w, h, options)).map(([w, h]) => pageShape(w, h, options))
}

function fitsWay(width: number, height: number, { orientation }: PageOptions): boolean {
  return orientation === undefined || width === height || (orientation === 'across') === width > height
}

/** What the page takes besides the frame, on both sides together, mm as printed: more where the printer enlarges. */
function surround(paperSide: number, measured: number, margin: number): number {
  // Whichever point of the page the printer enlarges from, the clear margin stays.
  const growth = Math.max(0, (measured / 100 - 1) * paperSide)
  return margin + PEN_ROOM + growth
}

/** The length of a roll's page, mm of paper. */
function rollLength(patternHeight: number, { margin, overlap, square }: PageOptions): number {
  const scale = 100 / square.y
  const needed = Math.max(patternHeight + 2 * PADDING, LOWEST_FRAME)
  const around = (length: number) => 2 * surround(length, square.y, margin) + STRIP
  const most = LONGEST_SIDE / scale - around(LONGEST_SIDE)
  const pages = needed <= most ? 1 : Math.ceil((needed - overlap) / (most - overlap))
  const frame = pages === 1 ? needed : (needed - overlap) / pages + overlap
  // The growth depends on the length itself: two rounds come within a millimetre, and a whole one is added.
  let length = (frame + around(frame)) * scale
  for (let round = 0; round < 3; round++) length = (frame + around(length)) * scale
  return Math.min(Math.ceil(length + 1), LONGEST_SIDE)
}

/** The frame of a page, in mm as printed: whole millimetres, so that its size can be checked with a rule. */
function pageShape(paperWidth: number, paperHeight: number, { margin, square }: PageOptions): PageShape {
  const width = (paperWidth * square.x) / 100
  const height = (paperHeight * square.y) / 100
  const insetX = surround(paperWidth, square.x, margin)
  const insetY = surround(paperHeight, square.y, margin)
  const bottom = insetY + STRIP
  const w = Math.floor(width - 2 * insetX + 1e-9)
  const h = Math.floor(height - insetY - bottom + 1e-9)
  return { width, height, frame: { left: insetX, bottom, right: insetX + w, top: bottom + h } }
}
