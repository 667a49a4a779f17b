import type { Finding } from '../base/problem.ts'
import { MEASURES } from '../body/measure.ts'
import type { MeasureRow } from '../drafting/draft.ts'
import type { AllowanceRow } from '../fitting/budget.ts'
import type { PatternVersion, TruedInFitting } from '../fitting/replay.ts'
import type { SlipEntry } from '../fitting/slip.ts'
import type { EaseRange, Pattern } from '../pattern/pattern.ts'
import { type MovementRow, movement } from './movement.ts'
import { sortFindings } from './sort-findings.ts'
import { type WalkedJoin, type WalkedSpan, walkJoin } from './walk-join.ts'

/** One measure of the report; mm, angles in degrees. */
export interface ReportMeasure {
  /** Name of the measure, as in the performer file. */
  readonly name: string
  /** The wearer's side, or both where they agree. */
  readonly side: 'left' | 'right' | 'both'
  /** On the body. */
  readonly body: number
  /** What is added to it. */
  readonly ease: number
  /** Body and ease together. */
  readonly asked: number
  /** Measured again on the flat pattern, darts closed. */
  readonly drafted: number
  /** True where nobody took it. */
  readonly estimated: boolean
  /** Standard error of the estimate, where one is known. */
  readonly standardError?: number
  /** Which reading was drafted where there was a choice: `relaxed`, `flexed`, … */
  readonly from?: string
}

/** The report that goes beside a pattern, as `report.json` has it; mm and degrees. Fields may be added, never renamed. */
export interface Report {
  /** Name of the contract. */
  readonly scyewright: 'report/1'
  /** A role or a code, not a legal name. */
  readonly performer: string
  /** Name of the production. */
  readonly production?: string
  /** Label of the last version. */
  readonly version: string
  /** What the draft, the fittings and the checks noticed, errors first. */
  readonly findings: readonly Finding[]
  /** What was asked beside what the pattern has. */
  readonly measures: readonly ReportMeasure[]
  /** Every join, walked on its stitching lines. */
  readonly joins: readonly WalkedJoin[]
  /** How each sleeve moves, version by version. */
  readonly movement: readonly MovementRow[]
  /** What was done, one entry a correction. */
  readonly slip: readonly SlipEntry[]
  /** Names of the files that were written. */
  readonly files: readonly string[]
  /** What the mock-up on the body still has, seam by seam. */
  readonly allowances: readonly AllowanceRow[]
  /** What truing moved, fitting by fitting. */
  readonly trued: readonly TruedInFitting[]
}

/** What a report is made of. */
export interface ReportOptions {
  /** A role or a code, not a legal name. */
  readonly performer: string
  /** Name of the production. */
  readonly production?: string | undefined
  /** Every version of the pattern, the draft first, the present one last; at least one. */
  readonly versions: readonly PatternVersion[]
  /** Everything found, in words. */
  readonly findings: readonly Finding[]
  /** Measured on the present pattern. */
  readonly measures: readonly MeasureRow[]
  /** What was done, as `replay` returns it. */
  readonly slip: readonly SlipEntry[]
  /** Names of the files that are written beside it. */
  readonly files: readonly string[]
  /** As `replay` returns them. */
  readonly allowances: readonly AllowanceRow[]
  /** As `replay` returns it; nothing was trued when absent. */
  readonly trued?: readonly TruedInFitting[]
}

/** The whole report of a pattern: what was found, measured, walked and used up. Numbers to a millionth. */
export function makeReport(options: ReportOptions): Report {
  const present = options.versions[options.versions.length - 1]
  if (!present) throw new RangeError('a report needs at least one version of the pattern')
  return {
    scyewright: 'report/1',
    performer: options.performer,
    ...(options.production === undefined ? {} : { production: options.production }),
    version: present.label,
    findings: sortFindings(options.findings),
    measures: options.measures.map(reportMeasure),
    joins: walkJoins(present.pattern).map(roundedJoin),
    movement: movement(options.versions, options.measures).map(roundedMovement),
    slip: options.slip.map(tidied),
    files: options.files,
    allowances: options.allowances.map((row) => ({
      ...row,
      cut: tidy(row.cut),
      used: tidy(row.used),
      left: tidy(row.left),
    })),
    trued: (options.trued ?? []).map((edge) => ({
      ...edge,
      corner: tidy(edge.corner),
      reach: tidy(edge.reach),
      move: tidy(edge.move),
      longer: tidy(edge.longer),
    })),
  }
}

/** Every join of a pattern walked; joins of seams that are not there are left to the `walk` check. */
export function walkJoins(pattern: Pattern): WalkedJoin[] {
  return pattern.joins.flatMap((join) => walkJoin(pattern, join) ?? [])
}

function reportMeasure(row: MeasureRow): ReportMeasure {
  const inReport = (value: number) => tidy(MEASURES[row.name].kind === 'angle' ? (value * 180) / Math.PI : value)
  return {
    name: row.name,
    side: row.side,
    body: inReport(row.body),
    ease: inReport(row.ease),
    asked: inReport(row.asked),
    drafted: inReport(row.drafted),
    estimated: row.estimated,
    ...(row.standardError === undefined ? {} : { standardError: inReport(row.standardError) }),
    ...(row.from === undefined ? {} : { from: row.from }),
  }
}

function roundedJoin(join: WalkedJoin): WalkedJoin {
  const { min, target, max } = join.declared
  const declared: EaseRange = { min: tidy(min), target: tidy(target), max: tidy(max) }
  return { ...roundedSpan(join), id: join.id, declared, spans: join.spans.map(roundedSpan) }
}

function roundedSpan<T extends Pick<WalkedSpan, 'a' | 'b' | 'ease'>>(span: T): T {
  return { ...span, a: tidy(span.a), b: tidy(span.b), ease: tidy(span.ease) }
}

/** Every number of a row, however deep. */
function roundedMovement(row: MovementRow): MovementRow {
  const { reachForward } = row
  return {
    ...roundedNumbers(row),
    ...(reachForward === undefined ? {} : { reachForward: roundedNumbers(reachForward) }),
  }
}

function roundedNumbers<T extends object>(row: T): T {
  const entries = Object.entries(row).map(([key, value]) => [key, typeof value === 'number' ? tidy(value) : value])
  return Object.fromEntries(entries) as T
}

/** The same with every number in it tidy, however deep. */
function tidied<T>(value: T): T {
  if (typeof value === 'number') return tidy(value) as T
  if (Array.isArray(value)) return value.map(tidied) as T
  if (typeof value !== 'object' || value === null) return value
  return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, tidied(one)])) as T
}

/** To a millionth, so that rounding does not differ between machines; never a negative zero. */
function tidy(value: number): number {
  const rounded = Math.round(value * 1e6) / 1e6
  return rounded === 0 ? 0 : rounded
}
