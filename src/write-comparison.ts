import { nearestName } from './base/names.ts'
import type { Problem } from './base/problem.ts'
import { collect, failure, type Result, success } from './base/result.ts'
import { rounded } from './base/rounded.ts'
import type { PieceComparison } from './fitting/compare-piece.ts'
import {
  compareVersions,
  type JoinDifference,
  type MovePeak,
  type SeamMove,
  type VersionComparison,
} from './fitting/compare-versions.ts'
import type { PatternVersion } from './fitting/replay.ts'
import type { MadePattern } from './pipeline.ts'
import { layOutComparison } from './sheets/lay-out-comparison.ts'
import { remarksOf, type WrittenFile } from './write-pattern.ts'
import type { JsonPoint } from './writers/pattern-json.ts'
import { writeSvg } from './writers/svg.ts'

/** Which two versions to lay over each other. */
export interface ComparisonOptions {
  /** Label of the version before, `none` for the draft; the draft when absent. */
  readonly from?: string
  /** Label of the version after; the last one when absent. */
  readonly to?: string
  /** Printed on the sheet, ISO 8601. */
  readonly date: string
}

/** The contract `compare/1`; mm, to a millionth. Fields may be added, never renamed. */
export interface ComparisonJson {
  /** Name of the contract. */
  readonly scyewright: 'compare/1'
  /** A role or a code, not a legal name. */
  readonly performer: string
  /** Name of the production. */
  readonly production?: string
  /** Of every number. */
  readonly unit: 'mm'
  /** The axis that points up. */
  readonly up: 'y'
  /** Labels of the versions; the draft is `draft`. */
  readonly from: string
  /** Label of the later version. */
  readonly to: string
  /** Every stitching line of both. */
  readonly seams: readonly (Omit<SeamMove, 'peaks'> & {
    /** Where it moved most, stretch by stretch. */
    readonly peaks: readonly (Omit<MovePeak, 'from' | 'to'> & {
      /** The point as it was. */
      readonly from: JsonPoint
      /** The point as it is. */
      readonly to: JsonPoint
    })[]
  })[]
  /** What became of each piece. */
  readonly pieces: readonly PieceComparison[]
  /** The joins that differ. */
  readonly joins: readonly JoinDifference[]
  /** Names of the files that were written. */
  readonly files: readonly string[]
}

/** A comparison and its files. */
export interface WrittenComparison {
  /** The comparison itself. */
  readonly comparison: VersionComparison
  /** The same as JSON. */
  readonly document: ComparisonJson
  /** The sheet. */
  readonly files: readonly WrittenFile[]
}

/** Two versions compared: the overlay as `compare.svg` and the document `compare/1`. Problem: a label that no version has. */
export async function writeComparison(
  made: MadePattern,
  options: ComparisonOptions,
): Promise<Result<WrittenComparison>> {
  const found = collect([
    versionNamed(made.versions, options.from ?? 'none', '--from'),
    options.to === undefined
      ? success(made.versions[made.versions.length - 1] as PatternVersion)
      : versionNamed(made.versions, options.to, '--to'),
  ])
  if (!found.ok) return found
  const [earlier, later] = found.value as [PatternVersion, PatternVersion]
  const comparison = compareVersions(earlier, later)
  const { performer, production } = made.performer
  const known = production === undefined ? {} : { production }
  const fittings = Math.max(...[earlier, later].map((one) => made.versions.indexOf(one)))
  const files = [
    {
      name: 'compare.svg',
      content: await overlay(made, comparison, comparedPieces(comparison), fittings, options.date),
    },
  ]
  const document: ComparisonJson = {
    scyewright: 'compare/1',
    performer,
    ...known,
    unit: 'mm',
    up: 'y',
    from: comparison.from,
    to: comparison.to,
    seams: comparison.seams.map(seamJson),
    pieces: comparison.pieces,
    joins: comparison.joins.map(joinJson),
    files: files.map((file) => file.name),
  }
  return success({ comparison, document, files })
}

/**
 * One performer's pattern before and after a change of the file, such as a correction recorded, laid over each other as
 * `preview.svg`: the pieces that changed, or all of them where none did.
 */
export async function writePreview(
  before: MadePattern,
  after: MadePattern,
  { date, change }: { readonly date: string; readonly change: string },
): Promise<WrittenFile> {
  const pattern = (made: MadePattern, label: string) => ({
    ...(made.versions[made.versions.length - 1] as PatternVersion),
    label,
  })
  const comparison = compareVersions(pattern(before, 'as it was'), pattern(after, change))
  const pieces = comparedPieces(comparison)
  const changed = pieces.filter(({ before: was, after: is }) => JSON.stringify(was) !== JSON.stringify(is))
  const shown = changed.length > 0 ? changed : pieces
  return { name: 'preview.svg', content: await overlay(after, comparison, shown, after.versions.length - 1, date) }
}

/** The sheet with two versions of pieces over each other; remarks are those of the first so many fittings. */
function overlay(
  made: MadePattern,
  { from, to }: VersionComparison,
  pieces: ReturnType<typeof comparedPieces>,
  fittings: number,
  date: string,
): Promise<string> {
  const { performer, production, units } = made.performer
  const version = `before: ${from}, after: ${to}`
  const scene = layOutComparison(pieces, {
    performer,
    ...(production === undefined ? {} : { production }),
    version,
    date: date.slice(0, 10),
    units,
    ...remarksOf(made, fittings),
  })
  const title = [performer, production, `${from} and ${to}`].filter((part) => part).join(' · ')
  return writeSvg(scene, { title, description: `Two versions laid over each other at true scale, ${version}` })
}

/** `none` or `draft` is the draft; else the version after the fitting of this label. */
function versionNamed(versions: readonly PatternVersion[], label: string, option: string): Result<PatternVersion> {
  const found = label === 'none' ? versions[0] : versions.findLast((version) => version.label === label)
  if (found) return success(found)
  const labels = ['none', ...versions.slice(1).map((version) => version.label)]
  const near = nearestName(label, labels) ?? labels.find((known) => known.startsWith(label))
  const problem: Problem = {
    code: 'unknown-fitting',
    where: { field: option },
    actual: `"${label}"`,
    expected: `one of: ${labels.join(', ')}`,
    hint: near === undefined ? 'name a fitting by its label, or none for the draft' : `did you mean "${near}"?`,
  }
  return failure(problem)
}

function comparedPieces({ before, after, pieces, seams }: VersionComparison) {
  return pieces.flatMap(({ piece }) => {
    const [old, now] = [before, after].map((pattern) => pattern.pieces.find((p) => p.id === piece))
    if (!old || !now) return []
    const moves = seams
      .filter((row) => row.piece === piece)
      .flatMap(({ seam, peaks }) =>
        peaks.map(({ from, to }, k) => ({ id: k === 0 ? seam : `${seam} ${k + 1}`, from, to })),
      )
    return [{ before: old, after: now, moves }]
  })
}

/** A millionth of a millimeter, so that rounding does not differ between machines. */
const DECIMALS = 6

function seamJson({ peaks, ...row }: SeamMove): ComparisonJson['seams'][number] {
  const number = (mm: number) => rounded(mm, DECIMALS)
  return {
    ...row,
    before: number(row.before),
    after: number(row.after),
    move: number(row.move),
    peaks: peaks.map((peak) => ({
      ...peak,
      move: number(peak.move),
      along: number(peak.along),
      from: [number(peak.from.x), number(peak.from.y)],
      to: [number(peak.to.x), number(peak.to.y)],
      place: 'distance' in peak.place ? { ...peak.place, distance: number(peak.place.distance) } : peak.place,
    })),
  }
}

function joinJson({ join, before, after }: JoinDifference): JoinDifference {
  const round = (side: JoinDifference['before']) => ({
    a: rounded(side.a, DECIMALS),
    b: rounded(side.b, DECIMALS),
    ease: rounded(side.ease, DECIMALS),
  })
  return { join, before: round(before), after: round(after) }
}
