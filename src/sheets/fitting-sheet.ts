import type { Pattern } from '../pattern/pattern.ts'
import type { Piece } from '../pattern/piece.ts'
import { baseName } from '../pattern/side-names.ts'
import { everyPieceWhole, wantedPieces } from './cut-pieces.ts'
import {
  type Block,
  beside,
  blank,
  fields,
  frame,
  heading,
  inColumns,
  item,
  stacked,
  tick,
  words,
  written,
} from './form-blocks.ts'
import { type BlockSize, type Form, formOnPaper, inPages } from './form-pages.ts'
import { TEXT } from './house-style.ts'
import { CONFIDENTIAL } from './measuring-sheet.ts'
import type { Paper } from './papers.ts'
import type { Mark, SheetInfo } from './scene.ts'
import { OVER, sizeOfPiece, smallPiece } from './small-piece.ts'

export interface FittingSheetContent {
  /** Without `performer` the names are left blank. */
  readonly info: SheetInfo
  readonly pattern: Pattern
  /** What the outlines are of. */
  readonly outlines: string
  /** Words for the version that was cut, where there is one. */
  readonly version?: string
}

const WIDE = 170

/** Space between outlines, mm. */
const GAP = 7

/** Outlines smaller than this share of their size are not legible, and none are smaller than the second. */
const SMALL = 1 / 7
const SMALLEST = 1 / 25

/** Lines of the table that there are at least. */
const LEAST_ROWS = 8

/** A sheet to write a fitting on: outlines of every piece, left and right, the order of pinning, lines for amounts; on any paper. */
export function fittingSheet(content: FittingSheetContent, paper: Paper): Form {
  return formOnPaper(
    {
      info: content.info,
      title: 'Fitting sheet',
      head: (width) => head(content, width),
      foot: CONFIDENTIAL,
      blocks: (width, first, other) => {
        const after = [
          ...list('Minding the performer', CARE, '!', width),
          ...list('Order of pinning', PINNING, undefined, width),
          ...rows(width, LEAST_ROWS),
        ]
        return [...outlines(content, width, [first, other], after), ...after]
      },
      rest: (width, height) => {
        const more = Math.floor(height / ROW)
        return more < 1
          ? undefined
          : stacked(Array.from({ length: Math.min(more, 24) }, (_, k) => row(width, `more ${k + 1}`)))
      },
    },
    paper,
  )
}

function head({ info, version, outlines }: FittingSheetContent, width: number): Block {
  const known = (value: string | undefined) => (value === '' ? undefined : value)
  const all: [string, string, string | undefined][] = [
    ['performer', 'performer: a role or a code, not a legal name', known(info.performer)],
    ['production', 'production', info.production],
    ['version', 'version of the pattern that was cut', version],
    ['fitting', 'this fitting and its mock-up number', undefined],
    ['date', 'date; fitted by, written by', undefined],
    ['pins', 'pins counted out and back in', undefined],
  ]
  const half = width / 2
  const ticks = [
    tick('on the performer', 'on the performer', half - 4),
    tick('provisional', 'provisional: on a stand-in or a form', half - 4),
  ]
  return stacked([
    words('sheet title', 'FITTING SHEET', width, 6.4),
    blank(1.5),
    fields(
      all.map(([id, label, value]) => (value === undefined ? [id, label] : [id, label, value])),
      width,
      58,
    ),
    blank(1),
    beside(ticks, [0, half]),
    words('outlines', outlines, width),
    ...(info.remarks ?? []).map((remark, k) => words(`remark ${k + 1}`, `Of this version: ${remark}.`, width)),
  ])
}

/** Common practice, in the order in which it is done. */
const PINNING = [
  'Put the mock-up on over what will be worn under the costume. Close the opening edge to edge; center lines upright, waist on the waist.',
  'Match the shoulder notch of the sleeve to the shoulder seam: one pin, across the seam.',
  'Pin the underarm: sleeve underarm to armscye underarm, smooth and flat from the front notch to the back notch. No ease lies there.',
  'From each notch work up the cap and ease it evenly over the shoulder, stitching line on stitching line.',
  'Arm hanging: the grain hangs straight from the shoulder notch to the elbow, the biceps line is level, the elbow darts point to the elbow.',
  'Let the performer reach forward, raise the arm, bend the elbow, breathe in and sit; then look again at rest.',
  'Pin one thing at a time, from the shoulder down. Measure each amount on the flat, on stitching lines, and write it on the outline: left and right each by itself.',
] as const

const CARE = [
  'Ask before every touch, fit in private; the performer may stop at any time. Stop at once on dizziness or pain; have a seat at hand.',
  'Count the pins out and back in. Points lie away from skin; lift the cloth clear of the body before a pin goes through it.',
  'Cut on the body with blunt shears only, a finger between blade and body.',
  'Local rules and licensed practice come first.',
] as const

function list(title: string, all: readonly string[], sign: string | undefined, width: number): Block[] {
  const note = title === 'Order of pinning' ? `${title} (common practice)` : title
  return [
    heading(title, note, width),
    ...inColumns(
      (each) => all.map((text, k) => item(`${title} ${k + 1}`, sign ?? `${k + 1}`, text, each)),
      width,
      width >= WIDE ? 2 : 1,
    ),
  ]
}

/**
 * Lines of outlines, as large as they can be without a further page for the form as a whole: `after` is what comes
 * after them. Smaller than legible only where a page holds no more.
 */
function outlines(
  { pattern }: FittingSheetContent,
  width: number,
  rooms: readonly [first: number, other: number],
  after: readonly BlockSize[],
): Block[] {
  const whole = everyPieceWhole(pattern)
  const groups = new Map<string, Piece[]>()
  for (const piece of wantedPieces(whole, undefined)) {
    const name = baseName(piece.id)
    groups.set(name, [...(groups.get(name) ?? []), piece])
  }
  let best: { readonly lines: Piece[][]; readonly factor: number; readonly pages: number } | undefined
  for (let factor = 1; factor > (best ? SMALL : SMALLEST); factor *= 0.98) {
    const lines = shared([...groups.values()], factor, width)
    const heights = (lines ?? []).map((pieces) => ({ height: heightOf(pieces, factor) }))
    if (!lines || heights.some(({ height }) => height > Math.max(...rooms))) continue
    const pages = inPages([...heights, ...after], ...rooms).length
    if (!best || pages < best.pages) best = { lines, factor, pages }
  }
  if (!best) throw new RangeError('the pieces are too large for the paper')
  const { lines, factor } = best
  return lines.map((pieces) => line(pieces, factor, width))
}

/** The groups shared among lines, left and right together; undefined where one is wider than the page. */
function shared(groups: readonly (readonly Piece[])[], factor: number, width: number): Piece[][] | undefined {
  const lines: Piece[][] = []
  for (const group of groups) {
    const last = lines.at(-1)
    if (last && widthOf([...last, ...group], factor) <= width) last.push(...group)
    else if (widthOf(group, factor) <= width) lines.push([...group])
    else return undefined
  }
  return lines
}

/** Ticks of notches reach beyond the stitching lines, mm on both sides together. */
const BEYOND = 4

function widthOf(pieces: readonly Piece[], factor: number): number {
  const widths = pieces.map((piece) => sizeOfPiece(piece).width * factor + BEYOND)
  return widths.reduce((sum, each) => sum + each, 0) + GAP * (pieces.length - 1)
}

function heightOf(pieces: readonly Piece[], factor: number): number {
  return Math.max(...pieces.map((piece) => sizeOfPiece(piece).height * factor)) + OVER + GAP
}

/** One line of outlines, spread over the width. */
function line(pieces: readonly Piece[], factor: number, width: number): Block {
  const gap = (width - widthOf(pieces, factor) + GAP * (pieces.length - 1)) / (pieces.length + 1)
  let left = gap
  const lefts = pieces.map((piece) => {
    const at = left
    left += sizeOfPiece(piece).width * factor + BEYOND + gap
    return at
  })
  const blocks = pieces.map((piece) => smallPiece(piece, factor))
  return { ...beside(blocks, lefts), height: heightOf(pieces, factor) }
}

const ROW = 9.5
const COLUMNS: readonly (readonly [name: string, share: number])[] = [
  ['what is seen', 0.34],
  ['where: seam, from which mark', 0.33],
  ['how much', 0.15],
  ['side', 0.18],
]

/** The table of what was seen and done. */
function rows(width: number, count: number): Block[] {
  const names: Mark[] = []
  let left = 0
  for (const [name, share] of COLUMNS) {
    names.push(written(`column ${name}`, name, TEXT.smallest, left + 1, -TEXT.smallest, share * width - 2))
    left += share * width
  }
  return [
    heading('seen', 'What was seen, and the amounts', width),
    { height: TEXT.smallest * 1.5, marks: names, leads: true },
    ...Array.from({ length: count }, (_, k) => row(width, `row ${k + 1}`)),
  ]
}

function row(width: number, id: string): Block {
  let left = 0
  const marks: Mark[] = []
  for (const [name, share] of COLUMNS) {
    const right = left + share * width
    marks.push(frame(`${id} ${name}`, left, 0, right, -ROW))
    if (name === 'side') {
      const text = 'L · R · both'
      marks.push(written(`${id} sides`, text, TEXT.smallest, left + 1.5, -ROW / 2 - 1, right - left - 3))
    }
    left = right
  }
  return { height: ROW, marks }
}
