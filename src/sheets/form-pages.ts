import { movePath } from '../geometry/path.ts'
import { type Point, scale as scaled } from '../geometry/point.ts'
import { type Block, beside, placeBlock, words } from './form-blocks.ts'
import { PENS, TEXT } from './house-style.ts'
import type { TileSet } from './lay-out-tiles.ts'
import { LONGEST_SIDE, type Paper } from './papers.ts'
import type { Mark, Scene, SheetInfo } from './scene.ts'
import { textWidth } from './text-width.ts'

/** What a form says, laid out for a width and the height of a page's body, mm. */
export interface FormDesign {
  readonly info: SheetInfo
  readonly title: string
  /** Over the first page. */
  readonly head: (width: number) => Block
  /** At the foot of every page. */
  readonly foot: string
  readonly blocks: (width: number, first: number, other: number) => readonly Block[]
  /** What the rest of the last page is used for. */
  readonly rest?: (width: number, height: number) => Block | undefined
}

/** A form on pages of one size, upright or across as the paper is named; marks y up from the lower left corner, mm. */
export interface Form {
  readonly title: string
  readonly info: SheetInfo
  readonly paper: string
  readonly width: number
  readonly height: number
  readonly pages: readonly (readonly Mark[])[]
}

/** Clear margin with room for the pen, mm. */
const MARGIN = 10.5
const GAP = 3

/** A page is never laid out smaller than so, however much is enlarged: the least side of a paper, mm. */
const LEAST_SIDE = 148

/** Height of a roll's page by its width, before it is cut to what is used. */
const ROLL_SHAPE = 1.4

/** The form as it is on an ordinary sheet, everything as much larger as a larger paper is. */
export function formOnPaper(design: FormDesign, paper: Paper): Form {
  const [width, height] = sizeOf(paper)
  return enlarged(design, paper, Math.max(1, Math.min(width / 210, height / 297)))
}

/** The form on as few pages as it needs, everything as large as these hold. */
export function formOnFewestPages(design: FormDesign, paper: Paper): Form {
  const [width, height] = sizeOf(paper)
  const count = (size: number) => flow(design, width / size, height / size).length
  const fewest = count(1)
  let [fits, fails] = [1, Math.min(width, height) / LEAST_SIDE]
  if (fails > 1 && count(fails) <= fewest) fits = fails
  while (fails - fits > 0.02) {
    const size = (fits + fails) / 2
    if (count(size) <= fewest) fits = size
    else fails = size
  }
  return enlarged(design, paper, fits)
}

function sizeOf(paper: Paper): [number, number] {
  const width = Math.min(paper.width, LONGEST_SIDE)
  return [width, Math.min(paper.form === 'roll' ? width * ROLL_SHAPE : paper.height, LONGEST_SIDE)]
}

function enlarged(design: FormDesign, paper: Paper, size: number): Form {
  const [width, full] = sizeOf(paper)
  const pages = flow(design, width / size, full / size)
  const used = Math.max(...pages.map((page) => page.used))
  // A roll is cut where the form ends.
  const height = paper.form === 'roll' && pages.length === 1 ? Math.min(full, Math.ceil(used * size)) : full
  return {
    title: design.title,
    info: design.info,
    paper: paper.name,
    width,
    height,
    pages: pages.map((_, k) =>
      pageMarks(design, pages, k, width / size, height / size).map((mark) => scaleMark(mark, size)),
    ),
  }
}

interface Flowed {
  readonly blocks: readonly { readonly block: Block; readonly top: number }[]
  /** Height of the page that is needed for them. */
  readonly used: number
}

/** What is measured of a block when pages are broken. */
export type BlockSize = Pick<Block, 'height' | 'leads'>

/** The blocks shared among pages in their order, so high the first and the others; a heading goes with what follows it. */
export function inPages<T extends BlockSize>(all: readonly T[], first: number, other: number): T[][] {
  const pages: T[][] = [[]]
  let used = 0
  all.forEach((block, k) => {
    let needed = block.height
    for (let next = k; all[next]?.leads; next++) needed += all[next + 1]?.height ?? 0
    const full = used + needed > (pages.length === 1 ? first : other) + 1e-9
    // A page has something on it, unless its head leaves too little room and the next has more.
    if (full && (used > 0 || (pages.length === 1 && needed <= other))) {
      pages.push([])
      used = 0
    }
    pages.at(-1)?.push(block)
    used += block.height
  })
  return pages
}

/** The blocks in their places on each page. */
function flow(design: FormDesign, width: number, height: number): Flowed[] {
  const inner = width - 2 * MARGIN
  const head = design.head(inner).height + GAP
  const running = runningHead(design, inner, 1, 2).height + GAP
  const foot = footOf(design, inner).height + GAP
  const room = (page: number) => height - 2 * MARGIN - foot - (page === 0 ? head : running)
  const all = design.blocks(inner, room(0), room(1))
  const pages = inPages(all, room(0), room(1)).map((blocks) => {
    let top = 0
    return blocks.map((block) => {
      const placed = { block, top }
      top += block.height
      return placed
    })
  })
  const last = pages.at(-1) ?? []
  const used = last.reduce((sum, { block }) => sum + block.height, 0)
  const rest = design.rest?.(inner, room(pages.length - 1) - used)
  if (rest) last.push({ block: rest, top: used })
  return pages.map((blocks, page) => {
    const end = Math.max(0, ...blocks.map(({ block, top }) => top + block.height))
    return { blocks, used: end + 2 * MARGIN + foot + (page === 0 ? head : running) }
  })
}

function pageMarks(design: FormDesign, pages: readonly Flowed[], page: number, width: number, height: number): Mark[] {
  const inner = width - 2 * MARGIN
  const head = page === 0 ? design.head(inner) : runningHead(design, inner, page + 1, pages.length)
  const top = height - MARGIN
  const foot = footOf(design, inner, page + 1, pages.length)
  return [
    ...placeBlock(head, { x: MARGIN, y: top }),
    ...(pages[page]?.blocks ?? []).flatMap((b) =>
      placeBlock(b.block, { x: MARGIN, y: top - head.height - GAP - b.top }),
    ),
    ...placeBlock(foot, { x: MARGIN, y: MARGIN + foot.height }),
  ]
}

/** Over every page but the first: what it is and whose. */
function runningHead({ title, info }: FormDesign, width: number, page: number, pages: number): Block {
  const whose = [info.production, info.performer].filter((part) => part !== undefined && part !== '')
  return words(`running head ${page} of ${pages}`, [title, ...whose].join(' · '), width, TEXT.name)
}

function footOf({ foot }: FormDesign, width: number, page = 1, pages = 1): Block {
  const text = `page ${page} of ${pages}`
  const room = textWidth('page 99 of 99', TEXT.smallest) + 4
  const number = words('page number', text, room)
  return beside([words('foot', foot, width - room), number], [0, width - textWidth(text, TEXT.smallest)])
}

function scaleMark(mark: Mark, size: number): Mark {
  const grow = (p: Point) => scaled(p, size)
  switch (mark.type) {
    case 'stroke': {
      const dash = mark.dash ?? PENS[mark.kind].dash
      const weight = (mark.weight ?? PENS[mark.kind].weight) * size
      return {
        ...mark,
        paths: mark.paths.map((path) => movePath(path, grow)),
        weight,
        ...(dash ? { dash: dash.map((mm) => mm * size) } : {}),
      }
    }
    case 'fill':
      return { ...mark, outline: movePath(mark.outline, grow) }
    case 'text':
      return { ...mark, at: grow(mark.at), size: mark.size * size }
  }
}

/** The pages for a PDF. */
export function formTiles({ info, paper, width, height, pages }: Form): TileSet {
  const frame = { left: 0, bottom: 0, right: width, top: height }
  return {
    info,
    paper,
    width,
    height,
    printScale: { x: 1, y: 1 },
    frame,
    overlap: 0,
    titles: new Map(),
    pages: pages.map((marks, k) => ({
      name: `${k + 1}`,
      number: k + 1,
      pieces: [],
      map: false,
      pattern: [],
      furniture: marks,
    })),
  }
}

/** Each page as a sheet of its own, for SVG. */
export function formScenes({ info, width, height, pages }: Form): Scene[] {
  return pages.map((sheet) => ({ info, width, height, pieces: [], sheet }))
}
