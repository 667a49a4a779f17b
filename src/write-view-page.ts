import type { Finding } from './base/problem.ts'
import { estimatesOf } from './estimates-of.ts'
import { splitAs } from './fitting/compare-versions.ts'
import { SEAM_NAMES, type SeamName } from './fitting/seam-names.ts'
import type { Point } from './geometry/point.ts'
import type { JoinPart, Pattern } from './pattern/pattern.ts'
import { baseName } from './pattern/side-names.ts'
import type { MadePattern } from './pipeline.ts'
import { namedEstimate } from './sheets/estimate-words.ts'
import { layOutView } from './sheets/lay-out-view.ts'
import type { PlacedDrawing, SheetInfo } from './sheets/scene.ts'
import { remarksOf } from './write-pattern.ts'
import { drawingSvg, type ViewedSeam } from './writers/view-page/drawing.ts'
import { type PlacedFinding, pageHtml } from './writers/view-page/page-html.ts'
import { PAGE_SCRIPT } from './writers/view-page/page-script.ts'
import { seamWords } from './writers/view-page/seam-words.ts'
import { marksOf } from './writers/view-page/view-data.ts'

/** What a page to look at the pattern in says besides the pattern. */
export interface ViewPageOptions {
  /** Said in the head of the page, ISO 8601. */
  readonly date: string
}

/** What `scye view --json` prints. Fields may be added, never renamed. */
export interface ViewJson {
  /** Name of the contract. */
  readonly scyewright: 'view/1'
  /** A role or a code, not a legal name. */
  readonly performer: string
  /** Name of the production. */
  readonly production?: string
  /** Labels of the versions on the page, the draft first. */
  readonly versions: readonly string[]
  /** What the draft, the fittings and the checks noticed, errors first. */
  readonly findings: readonly Finding[]
  /** Names of the files that were written. */
  readonly files: readonly string[]
}

/**
 * One HTML page to look at a pattern and measure in, complete in itself: every version of every piece at true proportion,
 * seams with their lengths and ease, findings with their places. Lengths are measured on it by the functions that measure
 * the pattern, on coordinates to 1e-6 mm. The same pattern and date give the same bytes; no file or network is used.
 */
export function writeViewPage(made: MadePattern, options: ViewPageOptions): string {
  const { performer, report } = made
  const { units } = performer
  const patterns = apartAlike(made.versions.map(({ pattern }) => pattern))
  const labels = made.versions.map(({ label }) => label)
  const estimates = estimatesOf(report.measures, units)
  const production = performer.production === undefined ? {} : { production: performer.production }
  const date = options.date.slice(0, 10)
  const infoOf = (k: number): SheetInfo => ({
    performer: performer.performer,
    ...production,
    version: labels[k] as string,
    fittings: labels.slice(1, k + 1),
    ...remarksOf(made, k),
    estimates,
    date,
    units,
  })
  const sheet = layOutView(patterns.map((pattern, k) => ({ pattern, info: infoOf(k) })))
  const drawings = patterns.map((pattern, k) => ({
    label: labels[k] as string,
    pieces: sheet.versions[k] as readonly PlacedDrawing[],
    seams: seamsOf(pattern, units),
  }))
  const versions = patterns.map((pattern, k) => ({
    label: labels[k] as string,
    marks: pattern.pieces.flatMap((piece) => {
      const placed = sheet.versions[k]?.find(({ drawing }) => drawing.id === piece.id)
      const at = placed?.at ?? { x: 0, y: 0 }
      return marksOf(piece, (p: Point) => ({ x: p.x + at.x, y: sheet.height - p.y - at.y }))
    }),
  }))
  const present = patterns[patterns.length - 1] as Pattern
  return pageHtml({
    title: [performer.performer, performer.production].filter((part) => part !== undefined).join(' · '),
    remarks: [
      date,
      // Their values are among the findings.
      ...(estimates.length === 0 ? [] : [`estimated: ${estimates.map(namedEstimate).join(', ')}`]),
      ...(infoOf(labels.length - 1).remarks ?? []),
    ],
    drawing: drawingSvg(drawings, sheet.width, sheet.height),
    data: { units, versions },
    findings: report.findings.map((finding) => placedFinding(finding, present)),
    script: PAGE_SCRIPT,
  })
}

/** All with the same pieces: what any of them has apart left and right, every one has. */
function apartAlike(patterns: readonly Pattern[]): Pattern[] {
  return patterns.map((pattern) => patterns.reduce(splitAs, pattern))
}

function seamsOf(pattern: Pattern, units: MadePattern['performer']['units']): ViewedSeam[] {
  return pattern.pieces.flatMap((piece) =>
    piece.seams.map((seam) => ({
      piece: piece.id,
      seam: seam.id,
      parts: seam.parts,
      about: seamWords(pattern, piece.id, seam.id, units),
    })),
  )
}

/** Where a finding is on the page; a finding on a join is on all that is sewn in it. */
function placedFinding(finding: Finding, pattern: Pattern): PlacedFinding {
  const { piece, seam, join } = finding.where
  const on = [piece, seam, join === undefined ? undefined : `join ${join}`].filter((part) => part !== undefined)
  const words = on.join(', ')
  const ids = (id: string) => pattern.pieces.filter((one) => one.id === id || one.id.startsWith(`${id} `))
  const pieces = piece === undefined ? [] : ids(piece)
  const lines = seam === undefined ? [] : seamsNamed(seam)
  const named = pieces.flatMap((one) =>
    one.seams
      .filter(({ id }) => lines.includes(id) || lines.includes(baseName(id)))
      .map(({ id }) => ({ piece: one.id, seam: id })),
  )
  const sewn = pattern.joins
    .filter(({ id }) => join !== undefined && (id === join || id.startsWith(`${join} `)))
    .flatMap(({ a, b }) => [...a, ...b].map((part: JoinPart) => ({ piece: part.piece, seam: part.seam })))
  const seams = named.length > 0 ? named : sewn
  const place = seams[0]?.piece ?? pieces[0]?.id
  return { finding, on: words, seams, ...(place === undefined ? {} : { piece: place }) }
}

/** The seams of a line by what a draper calls it: the cap is two. */
function seamsNamed(name: string): readonly string[] {
  const groups = SEAM_NAMES[name as SeamName] as (typeof SEAM_NAMES)[SeamName] | undefined
  return [name, ...(groups ?? []).flatMap(({ seams }) => seams)]
}
