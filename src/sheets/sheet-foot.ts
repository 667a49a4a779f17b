import { polyline } from '../geometry/path.ts'
import { PENS, type Pen, PREVIOUS_PEN, TEXT } from './house-style.ts'
import { INCH_SQUARE, measuredSquares, rule, squareNames } from './measured-squares.ts'
import { type Mark, type MarkKind, moveMark, type PieceDrawing, type SheetInfo, type TextMark } from './scene.ts'
import { fittingSize, textWidth } from './text-width.ts'

/** What stands at the foot of a sheet, to be put down at a lower left corner. */
export interface SheetFoot {
  readonly width: number
  readonly height: number
  readonly marks: (x: number, y: number) => Mark[]
}

const LEGEND: readonly MarkKind[] = [
  'cutting line',
  'stitching line',
  'line before',
  'line after',
  'fold line',
  'dart',
  'balance line',
  'ease stitching',
]

const COLUMN = INCH_SQUARE + 12
const ROW = 7
const SAMPLE = 30
const SPACE_ABOVE = 20

/** Squares at the left; title, a rule as long as the sheet allows and the meaning of each line at the right. */
export function sheetFoot(info: SheetInfo, drawings: readonly PieceDrawing[], sheetWidth: number): SheetFoot {
  const titles = [info.production ? `${info.production} · ${info.performer}` : info.performer, subtitle(info)]
  const remarks = (info.remarks ?? []).join(' · ')
  const kinds = LEGEND.filter((kind) => drawings.some((d) => d.marks.some((m) => m.kind === kind)))
  const entries: LegendEntry[] = kinds.map((kind) => ({ kind, words: kind, pen: PENS[kind] }))
  if (info.under !== undefined) {
    entries.push({ kind: 'stitching line', words: `as it was: ${info.under}`, pen: PREVIOUS_PEN, version: info.under })
  }
  const textEnd = Math.max(
    textWidth(titles[0] ?? '', TEXT.title),
    textWidth(titles[1] ?? '', TEXT.body),
    textWidth(remarks, TEXT.body),
  )
  const width = Math.max(sheetWidth, COLUMN + Math.max(textEnd, 2 * 80))
  const ruleLength = Math.min(500, width - COLUMN)
  const marks: Mark[] = [
    ...measuredSquares({ x: 0, y: 0 }),
    ...squareNames({ x: 0, y: 0 }),
    leftText('sheet title', titles[0] ?? '', TEXT.title, COLUMN, INCH_SQUARE - TEXT.title),
    leftText('sheet version', titles[1] ?? '', TEXT.body, COLUMN, INCH_SQUARE - TEXT.title - 8),
    ...(remarks === '' ? [] : [leftText('sheet remarks', remarks, TEXT.body, COLUMN, INCH_SQUARE - TEXT.title - 16)]),
    ...rule({ x: COLUMN, y: 6 }, ruleLength),
    ...entries.flatMap((entry, k) => legendEntry(entry, COLUMN + 80 * Math.floor(k / 3), 62 - ROW * (k % 3))),
  ]
  return {
    width,
    height: INCH_SQUARE + SPACE_ABOVE,
    marks: (x, y) => marks.map((mark) => moveMark(mark, { x, y })),
  }
}

function subtitle(info: SheetInfo): string {
  const fittings = info.fittings ?? []
  const parts = [fittings.length === 0 ? info.version : `fitted: ${fittings.join(', ')}`, info.date, 'true scale']
  return parts.filter((part) => part !== undefined).join(' · ')
}

/** A line of text that starts at x with its baseline at y. */
export function leftText(
  id: string,
  text: string,
  size: number,
  x: number,
  y: number,
  kind: MarkKind = 'label',
): TextMark {
  return { type: 'text', kind, id, text, at: { x: x + textWidth(text, size) / 2, y }, angle: 0, size }
}

interface LegendEntry {
  readonly kind: MarkKind
  readonly words: string
  readonly pen: Pen
  readonly version?: string
}

function legendEntry({ kind, words, pen, version }: LegendEntry, x: number, y: number): Mark[] {
  const id = version === undefined ? `legend ${kind}` : 'legend previous version'
  const sample = polyline([
    { x, y },
    { x: x + SAMPLE, y },
  ])
  const size = fittingSize(words, TEXT.name, 80 - SAMPLE - 5)
  return [
    { type: 'stroke', kind, id, paths: [sample], ...pen, ...(version === undefined ? {} : { version }) },
    leftText(`${id} name`, words, size, x + SAMPLE + 3, y - 0.35 * size),
  ]
}
