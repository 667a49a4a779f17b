import type { BodySide } from '../base/side.ts'
import { drawFigure } from './draw-figure.ts'
import {
  type Block,
  beside,
  blank,
  fields,
  frame,
  heading,
  inColumns,
  item,
  LEADING,
  rule,
  stacked,
  words,
  written,
  writtenTo,
} from './form-blocks.ts'
import { type Form, formOnFewestPages } from './form-pages.ts'
import { TEXT } from './house-style.ts'
import { MEASURE_FIGURES, type MeasureFigure } from './measure-figures.ts'
import type { Paper } from './papers.ts'
import type { Mark, SheetInfo } from './scene.ts'

/** A measure as it stands on the sheet. */
export interface MeasureOnSheet {
  readonly name: string
  readonly required: boolean
  readonly sided: boolean
  /** Where the tape goes. */
  readonly how: string
  /** What tells it from its like: `relaxed`, `flexed`. */
  readonly state?: string
  /** The unit written in its box where it is known: `in`, `°`. */
  readonly unit?: string
  /** What is known already, in words. */
  readonly known?: string | Readonly<Partial<Record<BodySide, string>>>
}

export interface MeasuringSheetContent {
  /** Without `performer` the names are left blank. */
  readonly info: SheetInfo
  /** Words of the units, where they are known. */
  readonly units?: string
  readonly measured?: string
  readonly measures: readonly MeasureOnSheet[]
  readonly before: readonly string[]
  readonly points: readonly { readonly point: string; readonly found: string }[]
}

const FIGURE = { width: 26, height: 31 }
const LEAST_CELL = 84
const BOX = 8
const REQUIRED_WEIGHT = 0.6
const CELL_GAP = 5

export const CONFIDENTIAL =
  'Confidential: for the costume shop alone. Keep it under lock; destroy it as local rules ask.'

/** A sheet to write a performer's measures on, each with a figure of where the tape goes; on any paper, as large as it holds. */
export function measuringSheet(content: MeasuringSheetContent, paper: Paper): Form {
  return formOnFewestPages(
    {
      info: content.info,
      title: 'Measuring sheet',
      head: (width) => head(content, width),
      foot: CONFIDENTIAL,
      blocks: (width) => [
        ...advice(content, width),
        blank(2),
        ...cells(content.measures, width),
        ...points(content, width),
      ],
      rest: notes,
    },
    paper,
  )
}

function head({ info, units, measured }: MeasuringSheetContent, width: number): Block {
  const known = (value: string | undefined) => (value === '' ? undefined : value)
  return stacked([
    words('sheet title', 'MEASURING SHEET', width, 6.4),
    blank(1.5),
    fields(
      [
        ['performer', 'performer: a role or a code, not a legal name', known(info.performer)],
        ['production', 'production', info.production],
        ['units', 'all in (inches, cm or mm)', units],
        ['measured on', 'measured on (date)', measured],
        ['measured by', 'measured by'],
        ['worn', 'worn underneath'],
      ].map(([id = '', label = '', value]) => (value === undefined ? [id, label] : [id, label, value])),
      width,
      58,
    ),
  ])
}

function advice({ before }: MeasuringSheetContent, width: number): Block[] {
  const legend =
    'Bold line: the tape; dashed: where it runs behind. Heavy box: required; what else is left blank is estimated. Where the tape goes is common practice. Left and right are the wearer’s.'
  return inColumns(
    (each) => [
      ...before.map((text, k) => item(`before ${k + 1}`, `${k + 1}`, text, each)),
      item('legend', '—', legend, each),
    ],
    width,
    width >= 2 * LEAST_CELL ? 2 : 1,
  )
}

function cells(measures: readonly MeasureOnSheet[], width: number): Block[] {
  const columns = Math.max(1, Math.floor((width + CELL_GAP) / (LEAST_CELL + CELL_GAP)))
  const each = (width - CELL_GAP * (columns - 1)) / columns
  const rows: Block[] = []
  for (let k = 0; k < measures.length; k += columns) {
    const row = measures.slice(k, k + columns).map((measure) => cell(measure, each))
    rows.push(
      beside(
        row,
        row.map((_, n) => n * (each + CELL_GAP)),
        2,
      ),
    )
  }
  return rows
}

const SEEN: Readonly<Record<MeasureFigure['view'], string>> = {
  front: 'seen from the front',
  back: 'seen from the back',
  side: 'seen from the side',
  hand: 'back of the hand',
}

/** Figure at the left; name, how and the boxes beside it. */
function cell(measure: MeasureOnSheet, width: number): Block {
  const { name, required, how, state } = measure
  const figure = MEASURE_FIGURES[name]
  if (!figure) throw new RangeError(`no figure for ${name}`)
  const left = FIGURE.width + 3
  const inner = width - left
  const marks = drawFigure(name, figure, { left: 0, bottom: -FIGURE.height, right: FIGURE.width, top: 0 })
  const tag = [required ? 'required' : '', state ?? '', SEEN[figure.view]].filter((word) => word !== '').join(' · ')
  const text = stacked([
    words(`${name} name`, name, inner, TEXT.name),
    words(`${name} tag`, tag, inner),
    words(`${name} how`, how, inner),
    blank(1),
  ])
  const boxes = answer(measure, inner)
  const height = Math.max(FIGURE.height, text.height + BOX)
  const gap = blank(height - text.height - BOX)
  const column = stacked([text, gap, boxes])
  return beside([{ height, marks }, column], [0, left])
}

/** A box to write in, or one for each side. */
function answer(measure: MeasureOnSheet, width: number): Block {
  const { name, sided, known } = measure
  if (!sided)
    return box(measure, `${name} value`, '', typeof known === 'string' ? known : undefined, Math.min(width, 34))
  const gap = 3
  const each = Math.min((width - gap) / 2, 34)
  const sides = (['left', 'right'] as const).map((side) =>
    box(measure, `${name} ${side}`, side, typeof known === 'object' ? known[side] : known, each),
  )
  return beside(sides, [0, each + gap])
}

function box(
  { required, unit }: MeasureOnSheet,
  id: string,
  label: string,
  value: string | undefined,
  width: number,
): Block {
  const baseline = -BOX + 2.4
  const inset = label === '' ? 2 : 10.5
  const edge = frame(`${id} box`, 0, 0, width, -BOX)
  const marks: Mark[] = [required ? { ...edge, weight: REQUIRED_WEIGHT } : edge]
  if (label !== '') marks.push(written(`${id} side`, label, TEXT.smallest, 1.2, baseline, inset - 1.5))
  if (value !== undefined) marks.push(written(`${id} known`, value, TEXT.body, inset, baseline, width - inset - 1.5))
  else if (unit !== undefined) marks.push(writtenTo(`${id} unit`, unit, TEXT.smallest, width - 1.2, baseline))
  return { height: BOX, marks }
}

function points({ points: all }: MeasuringSheetContent, width: number): Block[] {
  return [
    heading('points', 'Points of the body', width),
    ...inColumns(
      (each) => all.map(({ point, found }, k) => item(`point ${k + 1}`, '·', `${point}: ${found}`, each)),
      width,
      width >= 2 * LEAST_CELL ? 2 : 1,
    ),
  ]
}

const NOTE_LINE = 8

/** Lines for what the boxes have no place for. */
function notes(width: number, height: number): Block | undefined {
  const title = heading('notes', 'Notes', width)
  const lines = Math.min(12, Math.floor((height - title.height - TEXT.smallest * LEADING) / NOTE_LINE))
  if (lines < 1) return undefined
  return stacked([
    title,
    ...Array.from(
      { length: lines },
      (_, k): Block => ({ height: NOTE_LINE, marks: [rule(`note ${k + 1}`, 0, width, -NOTE_LINE)] }),
    ),
  ])
}
