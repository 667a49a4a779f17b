import { formatAngle } from './base/angles.ts'
import type { Result } from './base/result.ts'
import type { BodySide } from './base/side.ts'
import type { LengthUnit } from './base/units.ts'
import { BEFORE_MEASURING, BODY_POINTS } from './body/before-measuring.ts'
import { completeBody } from './body/complete-body.ts'
import type { GivenMeasures } from './body/given.ts'
import { MEASURE_NAMES, MEASURES, type MeasureName } from './body/measure.ts'
import { draftPattern } from './drafting/draft-pattern.ts'
import type { Pattern } from './pattern/pattern.ts'
import type { Performer } from './performer.ts'
import type { MadePattern } from './pipeline.ts'
import { fittingSheet } from './sheets/fitting-sheet.ts'
import { type Form, formScenes, formTiles } from './sheets/form-pages.ts'
import { lengthLabel } from './sheets/length-label.ts'
import { type MeasureOnSheet, measuringSheet } from './sheets/measuring-sheet.ts'
import { type Paper, usualPaper } from './sheets/papers.ts'
import type { SheetInfo } from './sheets/scene.ts'
import { remarksOf, type WrittenFile } from './write-pattern.ts'
import { writePdf } from './writers/pdf.ts'
import { writeSvg } from './writers/svg.ts'

/** Whose forms, as what, on which paper. */
export interface FormOptions {
  /** Whose sheets they are; blank ones when absent. Not everything need be measured. */
  readonly performer?: Performer
  /** The performer's pattern, whose outlines the fitting sheet shows; a standard body's when absent. */
  readonly made?: MadePattern
  /** `pdf`: a file for each sheet and paper; `svg`: one for each page of it. */
  readonly formats: readonly FormFormat[]
  /** a4 when absent, letter for a performer in inches. */
  readonly papers?: readonly Paper[]
  /** Written into the PDF, ISO 8601. */
  readonly date: string
  /** A TrueType font with the widths of DejaVu Sans; asked for when a PDF is written. */
  readonly font: () => Uint8Array
}

/** What the forms can be written as. */
export const FORM_FORMATS = ['pdf', 'svg'] as const
/** One of `FORM_FORMATS`. */
export type FormFormat = (typeof FORM_FORMATS)[number]

/** The contract `form/1`. Fields may be added, never renamed. */
export interface FormJson {
  /** Name and version of the contract. */
  readonly scyewright: 'form/1'
  /** A role or a code; absent on blank sheets, as are production and units. */
  readonly performer?: string
  /** As in the performer file. */
  readonly production?: string
  /** Units of the measures printed. */
  readonly units?: LengthUnit
  /** Version of the pattern whose outlines are on the fitting sheet; absent where they are a standard body's. */
  readonly version?: string
  /** Whose outlines the fitting sheet has. */
  readonly outlines: 'pattern' | 'standard body'
  /** Every measure on the measuring sheet, in its order. */
  readonly measures: readonly FormMeasure[]
  /** A row for each sheet on each paper. */
  readonly sheets: readonly FormSheet[]
  /** Names of all files. */
  readonly files: readonly string[]
}

/** A measure on the measuring sheet. */
export interface FormMeasure {
  /** As in a performer file. */
  readonly name: MeasureName
  /** Whether the draft cannot begin without it. */
  readonly required: boolean
  /** Whether a value known already is printed in its box. */
  readonly printed: boolean
}

/** One of the sheets on one paper. */
export interface FormSheet {
  /** Which of the two. */
  readonly sheet: 'measuring' | 'fitting'
  /** Name of the paper. */
  readonly paper: string
  /** Number of pages. */
  readonly pages: number
  /** Names of its files. */
  readonly files: readonly string[]
}

/** The forms, ready to be put into a folder. */
export interface WrittenForms {
  /** What was made, as `scye form --json` prints it. */
  readonly document: FormJson
  /** The files themselves. */
  readonly files: readonly WrittenFile[]
}

/** A body of middling size, mm, for outlines to write on where nobody is measured yet: common practice, a whole size. */
const STANDARD_BODY: GivenMeasures = {
  'bust girth': 920,
  'waist girth': 740,
  'back waist length': 408,
  'upper arm girth': 285,
  'outer arm length': 585,
}

/**
 * The measuring sheet and the fitting sheet, a PDF each for every paper and, as SVG, a file for each page. Known names
 * and measures are printed. Same options, same bytes. Rejects on a date that is none or a font that cannot be read.
 */
export async function writeForms(options: FormOptions): Promise<WrittenForms> {
  const { performer, made, formats, papers = [usualPaper(performer?.units ?? 'mm')] } = options
  const { date, font } = options
  const files: WrittenFile[] = []
  const sheets: FormSheet[] = []
  for (const paper of papers) {
    for (const [sheet, form] of [
      ['measuring', measuringSheet(measuringContent(performer), paper)],
      ['fitting', fittingSheet(fittingContent(performer, made), paper)],
    ] as const) {
      const written = await formFiles(form, `${sheet}-sheet-${paper.name}`, { formats, date, font })
      files.push(...written)
      sheets.push({ sheet, paper: paper.name, pages: form.pages.length, files: written.map((file) => file.name) })
    }
  }
  const document: FormJson = {
    scyewright: 'form/1',
    ...(performer === undefined ? {} : { performer: performer.performer, units: performer.units }),
    ...(performer?.production === undefined ? {} : { production: performer.production }),
    ...(made === undefined ? {} : { version: made.version }),
    outlines: made === undefined ? 'standard body' : 'pattern',
    measures: MEASURE_NAMES.map((name) => ({
      name,
      required: MEASURES[name].required,
      printed: performer?.body[name] !== undefined,
    })),
    sheets,
    files: files.map((file) => file.name),
  }
  return { document, files }
}

async function formFiles(
  form: Form,
  name: string,
  { formats, date, font }: Pick<FormOptions, 'formats' | 'date' | 'font'>,
): Promise<WrittenFile[]> {
  const title = [form.title, form.info.production, form.info.performer].filter((part) => part).join(' · ')
  const files: WrittenFile[] = []
  if (formats.includes('pdf')) {
    const content = await writePdf(formTiles(form), { font: font(), title, date, id: `${title} · ${form.paper}` })
    files.push({ name: `${name}.pdf`, content })
  }
  if (formats.includes('svg')) {
    const scenes = formScenes(form)
    for (const [k, scene] of scenes.entries()) {
      const description = `Page ${k + 1} of ${scenes.length}`
      files.push({ name: `${name}-${k + 1}.svg`, content: await writeSvg(scene, { title, description }) })
    }
  }
  return files
}

function infoOf(performer: Performer | undefined, version: string): SheetInfo {
  return {
    performer: performer?.performer ?? '',
    ...(performer?.production === undefined ? {} : { production: performer.production }),
    version,
    units: performer?.units ?? 'mm',
  }
}

const UNITS: Readonly<Record<LengthUnit, string>> = { in: 'inches', cm: 'cm', mm: 'mm' }

function measuringContent(performer: Performer | undefined) {
  return {
    info: infoOf(performer, 'blank'),
    ...(performer === undefined ? {} : { units: UNITS[performer.units] }),
    ...(performer?.measured === undefined ? {} : { measured: performer.measured }),
    measures: MEASURE_NAMES.map((name) => onSheet(name, performer)),
    before: BEFORE_MEASURING,
    points: BODY_POINTS,
  }
}

function onSheet(name: MeasureName, performer: Performer | undefined): MeasureOnSheet {
  const { kind, required, sided, how } = MEASURES[name]
  const flexed = / flexed$/.test(name)
  const state = flexed ? 'flexed' : MEASURE_NAMES.some((other) => other === `${name} flexed`) ? 'relaxed' : undefined
  const unit = kind === 'angle' ? '°' : performer?.units
  const known = performer && knownWords(name, performer)
  return {
    name,
    required,
    sided,
    how,
    ...(state === undefined ? {} : { state }),
    ...(unit === undefined ? {} : { unit }),
    ...(known === undefined ? {} : { known }),
  }
}

function knownWords(name: MeasureName, { body, units }: Performer): MeasureOnSheet['known'] {
  const given = body[name]
  const say = (value: number) =>
    MEASURES[name].kind === 'angle' ? formatAngle(value).replace(' deg', '°') : lengthLabel(value, units)
  if (given === undefined || typeof given === 'number') return given === undefined ? undefined : say(given)
  const sides = Object.entries(given).flatMap(([side, value]) => (value === undefined ? [] : [[side, say(value)]]))
  return Object.fromEntries(sides) as Partial<Record<BodySide, string>>
}

function fittingContent(performer: Performer | undefined, made: FormOptions['made']) {
  const pattern = made?.pattern ?? standardPattern()
  const outlines = made
    ? 'Small outlines of the pattern, stitching lines without allowances: to write on, not to measure.'
    : 'Small outlines of a standard body’s pattern, stitching lines without allowances: to write on, not to measure.'
  const version = made === undefined ? {} : { version: made.version }
  const remarks = made === undefined ? {} : remarksOf(made, made.versions.length - 1)
  return { info: { ...infoOf(performer, made?.version ?? 'standard body'), ...remarks }, pattern, outlines, ...version }
}

/** The pattern of the standard body. Throws should it ever not draft, which a test would have seen. */
function standardPattern(): Pattern {
  const body = must(completeBody(STANDARD_BODY)).body
  return must(draftPattern(body)).pattern
}

function must<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(result.problems.map((problem) => problem.actual).join('; '))
  return result.value
}
