import { nearestName } from './base/names.ts'
import type { Problem } from './base/problem.ts'
import { failure, type Result, success } from './base/result.ts'
import type { LengthUnit } from './base/units.ts'
import { completeBody } from './body/complete-body.ts'
import { estimatesOf } from './estimates-of.ts'
import { bookletOf } from './explain/booklet-of.ts'
import { explainDraft } from './explain/explain-draft.ts'
import { type ExplanationJson, sectionJson } from './explain/explanation-json.ts'
import { rulerStep } from './explain/said.ts'
import type { Section } from './explain/step.ts'
import { isNamed } from './pattern/side-names.ts'
import type { MadePattern } from './pipeline.ts'
import { layOutBooklet, type SheetPaper } from './sheets/lay-out-booklet.ts'
import { type Paper, usualPaper } from './sheets/papers.ts'
import type { WrittenFile } from './write-pattern.ts'
import { writeHtml } from './writers/html.ts'
import { writePdf } from './writers/pdf.ts'

/** What an explanation can be written as. */
export const EXPLANATION_FORMATS = ['html', 'pdf'] as const
/** One of them. */
export type ExplanationFormat = (typeof EXPLANATION_FORMATS)[number]

/** What is explained, and how it is written. */
export interface ExplanationOptions {
  /** The files wanted, in this order. */
  readonly formats: readonly ExplanationFormat[]
  /** Of the PDF's pages, a sheet; letter where the file is in inches, else a4, when absent. */
  readonly paper?: Paper
  /** Printed on it and written into the PDF, ISO 8601. */
  readonly date: string
  /** A TrueType font with the widths of DejaVu Sans; asked for when a PDF is written. */
  readonly font: () => Uint8Array
  /** Ids of the pieces to explain; `sleeve` also means its left and right. All when absent; the checks always. */
  readonly pieces?: readonly string[]
}

/** An explanation as data and as files. */
export interface WrittenExplanation {
  /** The steps for other programs. */
  readonly document: ExplanationJson
  /** `explain.html` and `explain.pdf`, as asked for. */
  readonly files: readonly WrittenFile[]
}

/**
 * The draft of a pattern, before any fitting, in steps for drawing it by hand: `explain.html`, `explain.pdf` and the
 * document `explain/1`. Problems: a piece that is not there, a roll of paper.
 */
export async function writeExplanation(
  made: MadePattern,
  options: ExplanationOptions,
): Promise<Result<WrittenExplanation>> {
  const { performer, production, units, choices } = made.performer
  const body = completeBody(made.performer.body)
  if (!body.ok) return body
  const explained = explainDraft({ body: body.value.body, choices, pattern: made.draft.pattern, units })
  if (!explained.ok) return explained
  const chosen = chosenSections(explained.value, options.pieces)
  if (!chosen.ok) return chosen
  const paper = sheetPaper(options.paper, units)
  if (!paper.ok) return paper
  const date = options.date.slice(0, 10)
  const booklet = bookletOf(chosen.value, {
    performer,
    ...(production === undefined ? {} : { production }),
    version: 'draft',
    estimates: estimatesOf(made.report.measures, units),
    date,
    units,
  })
  const files: WrittenFile[] = []
  for (const format of options.formats) {
    if (format === 'html') files.push({ name: 'explain.html', content: writeHtml(booklet) })
    else {
      const title = `${booklet.title}, ${booklet.subtitle}`
      const pdf = { font: options.font(), title, date: options.date, id: `${title}, ${paper.value.name}` }
      files.push({ name: 'explain.pdf', content: await writePdf(layOutBooklet(booklet, paper.value), pdf) })
    }
  }
  const document: ExplanationJson = {
    scyewright: 'explain/1',
    performer,
    ...(production === undefined ? {} : { production }),
    unit: 'mm',
    up: 'y',
    ruler: rulerStep(units),
    sections: chosen.value.map(sectionJson),
    files: files.map((file) => file.name),
  }
  return success({ document, files })
}

function sheetPaper(paper: Paper | undefined, units: LengthUnit): Result<SheetPaper> {
  const chosen = paper ?? usualPaper(units)
  if (chosen.form === 'sheet') return success(chosen)
  return failure({
    code: 'not-a-sheet',
    where: { field: '--paper' },
    actual: `"${chosen.name}"`,
    expected: 'a sheet, such as a4 or letter',
    hint: 'the steps are read page by page; take a4 or letter',
  })
}

function chosenSections(
  sections: readonly Section[],
  pieces: readonly string[] | undefined,
): Result<readonly Section[]> {
  if (pieces === undefined) return success(sections)
  const ids = [...new Set(sections.map(({ piece }) => piece))].filter((id) => id !== 'checks')
  const unknown = pieces.filter((name) => !ids.some((id) => isNamed(id, name)))
  if (unknown.length > 0) return failure(...unknown.map((name) => unknownPiece(name, ids)))
  return success(sections.filter(({ piece }) => piece === 'checks' || pieces.some((name) => isNamed(piece, name))))
}

function unknownPiece(name: string, ids: readonly string[]): Problem {
  const near = nearestName(name, ids)
  return {
    code: 'unknown-piece',
    where: { field: '--pieces' },
    actual: `"${name}"`,
    expected: `one of ${ids.join(', ')}`,
    hint: near === undefined ? 'name a piece of the draft, or leave --pieces out' : `did you mean ${near}?`,
  }
}
