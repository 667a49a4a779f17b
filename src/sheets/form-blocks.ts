import { polyline } from '../geometry/path.ts'
import type { Point } from '../geometry/point.ts'
import { boxOutline } from './box-outline.ts'
import { TEXT } from './house-style.ts'
import { type Mark, moveMark, type StrokeMark } from './scene.ts'
import { leftText } from './sheet-foot.ts'
import { fittingSize, textWidth } from './text-width.ts'
import { wrapWords } from './wrap-words.ts'

/** A part of a form that stays together: marks from its upper left corner down, y from 0 to −height, mm. */
export interface Block {
  readonly height: number
  readonly marks: readonly Mark[]
  /** Not to be the last on a page: a heading. */
  readonly leads?: boolean
}

/** Height of a line of text, in em. */
export const LEADING = 1.32

/** From the top of a line to its baseline, in em. */
const BASELINE = 1

const FIELD = 10.5

/** The block with its corner here. */
export function placeBlock(block: Block, at: Point): Mark[] {
  return block.marks.map((mark) => moveMark(mark, at))
}

/** Words in lines from the left edge. */
export function words(id: string, text: string, width: number, size = TEXT.smallest): Block {
  const lines = wrapWords(text, size, width)
  const marks = lines.map((line, k) =>
    leftText(
      k === 0 ? id : `${id} ${k + 1}`,
      line,
      fittingSize(line, size, width),
      0,
      -size * (k * LEADING + BASELINE),
    ),
  )
  return { height: lines.length * size * LEADING, marks }
}

/** A heading over what follows. */
export function heading(id: string, text: string, width: number): Block {
  const block = words(id, text, width, TEXT.body)
  return { ...stacked([blank(1.5), block, blank(0.8)]), leads: true }
}

/** Words with a number or a sign hung out before them. */
export function item(id: string, sign: string, text: string, width: number): Block {
  const indent = 5
  return beside([words(`${id} sign`, sign, indent), words(id, text, width - indent)], [0, indent], 0.9)
}

/** Something to be filled in: small words over a line, with what is known written on it. */
function field(id: string, label: string, width: number, value?: string): Block {
  const size = fittingSize(label, TEXT.smallest, width)
  const known = value === undefined ? [] : [written(`${id} value`, value, TEXT.body, 0.5, -FIELD + 2.4, width - 1)]
  return {
    height: FIELD,
    marks: [
      leftText(`${id} label`, label, size, 0, -size * BASELINE),
      ...known,
      rule(`${id} line`, 0, width, -FIELD + 1),
    ],
  }
}

/** Fields side by side in as many rows as they need, each at least `least` mm wide. */
export function fields(
  all: readonly (readonly [id: string, label: string, value?: string])[],
  width: number,
  least: number,
): Block {
  const gap = 5
  const columns = Math.min(all.length, Math.max(1, Math.floor((width + gap) / (least + gap))))
  const each = (width - gap * (columns - 1)) / columns
  const rows: Block[] = []
  for (let k = 0; k < all.length; k += columns) {
    const row = all.slice(k, k + columns).map(([id, label, value]) => field(id, label, each, value))
    rows.push(
      beside(
        row,
        row.map((_, n) => n * (each + gap)),
      ),
    )
  }
  return stacked(rows)
}

/** A box to tick and what it means. */
export function tick(id: string, text: string, width: number): Block {
  const side = 3.6
  const box: Block = { height: side, marks: [frame(`${id} box`, 0, -0.1, side, -side)] }
  return beside([box, words(id, text, width - side - 2)], [0, side + 2], 1)
}

/** Nothing, so high. */
export function blank(height: number): Block {
  return { height, marks: [] }
}

/** Blocks under each other. */
export function stacked(blocks: readonly Block[]): Block {
  let height = 0
  const marks = blocks.flatMap((block) => {
    const placed = placeBlock(block, { x: 0, y: -height })
    height += block.height
    return placed
  })
  return { height, marks }
}

/** Blocks side by side from these places on, as high as the highest and so much more. */
export function beside(blocks: readonly Block[], lefts: readonly number[], below = 0): Block {
  const marks = blocks.flatMap((block, k) => placeBlock(block, { x: lefts[k] ?? 0, y: 0 }))
  return { height: Math.max(0, ...blocks.map((block) => block.height)) + below, marks }
}

/** Blocks in order in so many columns, none much longer than another; in one column each stays a block of its own. */
export function inColumns(make: (width: number) => readonly Block[], width: number, columns: number): Block[] {
  if (columns === 1) return [...make(width)]
  const gap = 6
  const each = (width - gap * (columns - 1)) / columns
  const blocks = make(each)
  const total = blocks.reduce((sum, block) => sum + block.height, 0)
  const sorted: Block[][] = Array.from({ length: columns }, () => [])
  let above = 0
  for (const block of blocks) {
    // By its middle, so that no column is longer than the others by more than half a block.
    const column = Math.min(columns - 1, Math.floor(((above + block.height / 2) / total) * columns))
    sorted[column]?.push(block)
    above += block.height
  }
  const stacks = sorted.map(stacked)
  return [
    beside(
      stacks,
      stacks.map((_, k) => k * (each + gap)),
      1,
    ),
  ]
}

/** A line to write on. */
export function rule(id: string, from: number, to: number, y: number): Mark {
  return {
    type: 'stroke',
    kind: 'blank',
    id,
    paths: [
      polyline([
        { x: from, y },
        { x: to, y },
      ]),
    ],
  }
}

/** A box to write in. */
export function frame(id: string, left: number, top: number, right: number, bottom: number): StrokeMark {
  return { type: 'stroke', kind: 'blank', id, paths: [boxOutline({ left, bottom, right, top })], closed: true }
}

/** Text that is made smaller where it has not the room, from the left. */
export function written(id: string, text: string, size: number, x: number, y: number, width: number): Mark {
  return leftText(id, text, fittingSize(text, size, width), x, y)
}

/** The same up to a right edge. */
export function writtenTo(id: string, text: string, size: number, right: number, y: number): Mark {
  return leftText(id, text, size, right - textWidth(text, size), y)
}
