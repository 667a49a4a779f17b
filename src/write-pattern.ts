import type { Problem } from './base/problem.ts'
import { failure, type Result, success } from './base/result.ts'
import type { Report } from './checks/report.ts'
import { estimatesOf } from './estimates-of.ts'
import { fittingRemarks } from './fitting/fitting-remarks.ts'
import { slipText } from './fitting/slip-text.ts'
import { versionUnder } from './fitting/version-under.ts'
import type { Piece } from './pattern/piece.ts'
import { isNamed } from './pattern/side-names.ts'
import type { MadePattern } from './pipeline.ts'
import { mirrorPairs } from './sheets/cut-pieces.ts'
import { saidEstimate } from './sheets/estimate-words.ts'
import { type LayOutOptions, layOut } from './sheets/lay-out.ts'
import { layOutTiles, type TileOptions } from './sheets/lay-out-tiles.ts'
import { onePage } from './sheets/one-page.ts'
import type { PaperPages } from './sheets/paper-pages.ts'
import { type Paper, usualPaper } from './sheets/papers.ts'
import { layOutForProjector } from './sheets/projector-sheet.ts'
import { writeDxf } from './writers/dxf.ts'
import { patternJson, patternJsonText } from './writers/pattern-json.ts'
import { writePdf } from './writers/pdf.ts'
import { writeSvg } from './writers/svg.ts'

/** The formats that sheets are written in. */
export const FORMATS = ['svg', 'pdf', 'dxf', 'json'] as const
/** One of `FORMATS`. */
export type Format = (typeof FORMATS)[number]

/** Which files are written, on what paper, with which pieces. */
export interface WriteOptions {
  /** Report and slip are written with any of them. */
  readonly formats: readonly Format[]
  /** Papers of the tiles; letter where the file is in inches, else a4, when absent. */
  readonly papers?: readonly Paper[]
  /** Overlap and margin of the tiles, and what the printer makes of the measured square. */
  readonly tiles?: TileOptions
  /** Ids of the pieces to print; `sleeve` also means its left and right. All when absent; pattern.json has all. */
  readonly pieces?: readonly string[]
  /** An earlier version to draw thin under the last: `previous`, `draft` or the label of a fitting. */
  readonly under?: string
  /** Draws a pair as its left and its right piece. */
  readonly mirrorPairs?: boolean
  /** Writes a sheet for a projector as well, as SVG and PDF where these are asked for. */
  readonly projector?: boolean
  /** Printed on the labels and written into the PDF, ISO 8601. */
  readonly date: string
  /** A TrueType font with the widths of DejaVu Sans; asked for when a PDF is written. */
  readonly font: () => Uint8Array
}

/** A file to be written; the name has no folder. */
export interface WrittenFile {
  /** Name with its ending. */
  readonly name: string
  /** Text, or the bytes of a PDF. */
  readonly content: string | Uint8Array
}

/** The files of a pattern. */
export interface WrittenPattern {
  /** In the order in which they are listed in the report. */
  readonly files: readonly WrittenFile[]
  /** The report with the names of the files. */
  readonly report: Report
  /** Pages of the tiles, by the names of their papers. */
  readonly pages: readonly PaperPages[]
}

/**
 * The pattern as files, sheets in the formats asked for, always with report and slip. Problems: a piece or an earlier
 * version that is not there.
 */
export async function writePattern(made: MadePattern, options: WriteOptions): Promise<Result<WrittenPattern>> {
  const { performer, pattern, version } = made
  const { pieces } = options.mirrorPairs ? mirrorPairs(pattern) : pattern
  const unknown = (options.pieces ?? []).filter((id) => !pieces.some((piece) => isNamed(piece.id, id)))
  if (unknown.length > 0) return failure(...unknown.map((id) => unknownPiece(id, pieces)))
  const under = options.under === undefined ? undefined : versionUnder(made.versions, options.under)
  if (under && !under.ok) return under
  const production = performer.production === undefined ? {} : { production: performer.production }
  const estimates = estimatesOf(made.report.measures, performer.units)
  const info = {
    performer: performer.performer,
    ...production,
    version,
    fittings: made.versions.slice(1).map((v) => v.label),
    ...remarksOf(made, made.versions.length - 1),
    estimates,
    date: options.date.slice(0, 10),
    units: performer.units,
    ...(options.pieces === undefined ? {} : { pieces: options.pieces }),
  }
  const drawn: LayOutOptions = {
    ...info,
    mirrorPairs: options.mirrorPairs ?? false,
    ...(under ? { under: under.value.label, previous: under.value.pattern } : {}),
  }
  const title = [performer.performer, performer.production, version].filter((part) => part !== undefined).join(' · ')
  const files: WrittenFile[] = []
  const pages: { paper: string; count: number }[] = []
  if (options.formats.includes('svg') || options.formats.includes('pdf')) {
    const scene = layOut(pattern, drawn)
    const projected = options.projector ? layOutForProjector(pattern, drawn) : undefined
    if (options.formats.includes('svg')) {
      const description = `Pattern pieces at true scale, ${version}`
      files.push({ name: 'pattern.svg', content: await writeSvg(scene, { title, description }) })
      if (projected) files.push({ name: 'projector.svg', content: await writeSvg(projected, { title, description }) })
    }
    if (options.formats.includes('pdf')) {
      const font = options.font()
      for (const paper of options.papers ?? [usualPaper(performer.units)]) {
        const id = `${title} · ${paper.name}`
        const tiles = layOutTiles(scene, paper, options.tiles)
        const content = await writePdf(tiles, { font, title, date: options.date, id })
        pages.push({ paper: paper.name, count: tiles.pages.length })
        files.push({ name: `tiles-${paper.name}.pdf`, content })
      }
      if (projected) {
        const id = `${title} · projector`
        const content = await writePdf(onePage(projected), { font, title, date: options.date, id })
        files.push({ name: 'projector.pdf', content })
      }
    }
  }
  if (options.formats.includes('dxf')) files.push({ name: 'pattern.dxf', content: writeDxf(pattern, info) })
  if (options.formats.includes('json')) {
    const json = patternJson(pattern, { performer: performer.performer, ...production, version, estimates })
    files.push({ name: 'pattern.json', content: patternJsonText(json) })
  }
  const slip = slipText(made.report.slip, {
    performer: performer.performer,
    ...production,
    units: performer.units,
    estimates: estimates.map(saidEstimate),
  })
  const names = [...files.map((file) => file.name), 'slip.txt', 'report.json']
  const report: Report = { ...made.report, files: names }
  files.push({ name: 'slip.txt', content: slip })
  files.push({ name: 'report.json', content: `${JSON.stringify(report, null, 2)}\n` })
  return success({ files, report, pages })
}

/** The remarks on the first so many fittings for a sheet; nothing where there are none. */
export function remarksOf(made: MadePattern, fittings: number): { readonly remarks?: readonly string[] } {
  const remarks = fittingRemarks(made.performer.fittings.slice(0, fittings))
  return remarks.length === 0 ? {} : { remarks }
}

function unknownPiece(id: string, pieces: readonly Piece[]): Problem {
  return {
    code: 'unknown-piece',
    where: { field: '--pieces' },
    actual: `"${id}"`,
    expected: `one of ${pieces.map((piece) => piece.id).join(', ')}`,
    hint: 'name a piece of the pattern, with a hyphen for the space: bodice-front',
  }
}
