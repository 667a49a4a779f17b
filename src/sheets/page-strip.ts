import { boxOutline } from './box-outline.ts'
import { rule } from './measured-squares.ts'
import type { Mark, TextMark } from './scene.ts'
import { leftText } from './sheet-foot.ts'
import { fittingSize, textWidth } from './text-width.ts'
import type { PageShape } from './tile-grid.ts'

const NAME_SIZE = 7
const LINE_SIZE = 2.8

/** The frame of a page and the strip under it: rule, page name, what it belongs to. Page frame, mm. */
export function pageStrip(page: PageShape, name: string, left: string, right: string): Mark[] {
  const { frame } = page
  const width = frame.right - frame.left
  const nameWidth = textWidth(name, NAME_SIZE)
  const baseline = frame.bottom - 13
  const rightSize = fittingSize(right, LINE_SIZE, width * 0.55)
  const rightWidth = textWidth(right, rightSize)
  return [
    frameMark(page),
    ...rule({ x: frame.left, y: frame.bottom - 5.2 }, width - nameWidth - 4),
    words('page name', name, NAME_SIZE, frame.right - nameWidth, frame.bottom - 7.5),
    words('page heading', left, fittingSize(left, LINE_SIZE, width - rightWidth - 4), frame.left, baseline),
    words('page size', right, rightSize, frame.right - rightWidth, baseline),
  ]
}

function frameMark(page: PageShape): Mark {
  return { type: 'stroke', kind: 'page frame', id: 'border', paths: [boxOutline(page.frame)], closed: true }
}

function words(id: string, text: string, size: number, x: number, y: number): TextMark {
  return leftText(id, text, size, x, y, 'page frame')
}
