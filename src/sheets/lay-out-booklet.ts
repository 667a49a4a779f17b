import type { Booklet, BookletSection, BookletStep } from './booklet.ts'
import type { TilePage, TileSet } from './lay-out-tiles.ts'
import type { Paper } from './papers.ts'
import { type Mark, moveMark } from './scene.ts'
import { leftText } from './sheet-foot.ts'
import { fittingSize } from './text-width.ts'
import { wrapWords } from './wrap-words.ts'

/** Clear margin, mm: what printers leave, and room for a thumb. */
const MARGIN = 15

/** Em and leading of the text, mm; the smallest is eight points. */
const SIZES = { title: 7, section: 5.2, heading: 3.9, body: 3.3, why: 2.85 } as const
const LEADING = 1.35

/** Between two steps, between columns, above a section, mm. */
const GAPS = { step: 6, column: 6, section: 7, line: 0.9 } as const

/** The foot of a page. */
const FOOT = 7

/** Something that is not torn apart: marks hanging from a top left corner at the origin. */
interface Block {
  readonly height: number
  readonly marks: readonly Mark[]
  readonly section?: BookletSection
  /** Stands with the next block on one page. */
  readonly keep?: true
}

/** A sheet of paper, not a roll. */
export type SheetPaper = Extract<Paper, { readonly form: 'sheet' }>

/**
 * The booklet on pages of a paper: steps in their order, none torn apart unless it is longer than a page, pictures to the
 * right of the words; nothing within 10 mm of the edge.
 */
export function layOutBooklet(booklet: Booklet, paper: SheetPaper): TileSet {
  const width = paper.width - 2 * MARGIN
  const height = paper.height - 2 * MARGIN - FOOT
  const blocks: Block[] = [
    titleBlock(booklet, width),
    ...booklet.sections.flatMap((section, s) => [
      sectionBlock(section, width),
      ...section.steps.flatMap((step, k) => stepBlocks(step, `${s + 1}.${k + 1}`, width, height, section)),
    ]),
  ]
  const pages = onPages(blocks, height)
  return {
    info: booklet.info,
    paper: paper.name,
    width: paper.width,
    height: paper.height,
    printScale: { x: 1, y: 1 },
    frame: { left: MARGIN, bottom: MARGIN, right: paper.width - MARGIN, top: paper.height - MARGIN },
    overlap: 0,
    titles: new Map(booklet.sections.map(({ id, title }) => [id, title])),
    pages: pages.map((page, k): TilePage => {
      const foot = `${booklet.title} · ${booklet.subtitle} · page ${k + 1} of ${pages.length}`
      return {
        name: `${k + 1}`,
        number: k + 1,
        pieces: [...new Set(page.flatMap(({ block }) => (block.section ? [block.section.id] : [])))],
        map: false,
        pattern: [],
        furniture: [
          ...page.flatMap(({ block, top }) =>
            block.marks.map((mark) => moveMark(mark, { x: MARGIN, y: paper.height - MARGIN - top })),
          ),
          leftText('foot', foot, fittingSize(foot, SIZES.why, width), MARGIN, MARGIN + 0.3 * SIZES.why),
        ],
      }
    }),
  }
}

interface Placed {
  readonly block: Block
  /** Below the top of the page's room. */
  readonly top: number
}

function onPages(blocks: readonly Block[], height: number): Placed[][] {
  const pages: Placed[][] = [[]]
  let top = 0
  blocks.forEach((block, k) => {
    // What is kept with the next block needs room for both.
    const needed = block.height + (block.keep ? (blocks[k + 1]?.height ?? 0) : 0)
    if (top > 0 && top + needed > height) {
      pages.push([])
      top = 0
    }
    pages[pages.length - 1]?.push({ block, top })
    top += block.height
  })
  return pages
}

interface Column {
  readonly marks: Mark[]
  readonly height: number
}

interface Paragraph {
  readonly id: string
  readonly text: string
  readonly size: number
  readonly indent?: number
}

/** Paragraphs below each other, from the top at 0 down. */
function column(paragraphs: readonly Paragraph[], width: number): Column {
  const marks: Mark[] = []
  let y = 0
  for (const { id, text, size, indent = 0 } of paragraphs) {
    wrapWords(text, size, width - indent).forEach((line, k) => {
      y -= size * LEADING
      marks.push(leftText(`${id} ${k + 1}`, line, size, indent, y + 0.3 * size))
    })
    y -= GAPS.line
  }
  return { marks, height: -y }
}

function titleBlock(booklet: Booklet, width: number): Block {
  const { marks, height } = column(
    [
      { id: 'title', text: booklet.title, size: SIZES.title },
      { id: 'subtitle', text: booklet.subtitle, size: SIZES.body },
      ...booklet.introduction.map((text, k) => ({ id: `introduction ${k + 1}`, text, size: SIZES.body })),
    ],
    width,
  )
  return { marks, height: height + GAPS.step }
}

function sectionBlock(section: BookletSection, width: number): Block {
  const { marks, height } = column([{ id: `${section.id} title`, text: section.title, size: SIZES.section }], width)
  return {
    marks: marks.map((mark) => moveMark(mark, { x: 0, y: -GAPS.section })),
    height: height + GAPS.section + 1.5,
    section,
    keep: true,
  }
}

/** A step as one block; where its words are longer than a page, as several. */
function stepBlocks(step: BookletStep, id: string, width: number, height: number, section: BookletSection): Block[] {
  const { picture } = step
  const textColumn = picture ? width - picture.width - GAPS.column : width
  const paragraphs: Paragraph[] = [
    { id: `${id} heading`, text: step.heading, size: SIZES.heading },
    ...step.lines.flatMap(({ text, why }, k): Paragraph[] => [
      { id: `${id} line ${k + 1}`, text, size: SIZES.body },
      ...(why === undefined ? [] : [{ id: `${id} why ${k + 1}`, text: why, size: SIZES.why, indent: 4 }]),
    ]),
  ]
  const parts: Paragraph[][] = [[]]
  let filled = GAPS.step
  for (const paragraph of paragraphs) {
    const more = column([paragraph], textColumn).height
    if (filled + more > height) {
      parts.push([])
      filled = GAPS.step
    }
    parts[parts.length - 1]?.push(paragraph)
    filled += more
  }
  return parts.map((part, k): Block => {
    const words = column(part, textColumn)
    if (!picture || k > 0) return { marks: words.marks, height: words.height + GAPS.step, section }
    const at = { x: width - picture.width, y: -picture.height }
    const marks = picture.marks.map((mark) => ({ ...moveMark(mark, at), id: `${id} ${mark.id}` }))
    return { marks: [...words.marks, ...marks], height: Math.max(words.height, picture.height) + GAPS.step, section }
  })
}
