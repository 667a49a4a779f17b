import type { Finding, Place, Problem } from './base/problem.ts'
import { failure, type Result, success } from './base/result.ts'
import { readYaml } from './base/yaml-document.ts'
import { completeBody } from './body/complete-body.ts'
import { runChecks } from './checks/checks.ts'
import type { PatternVersion } from './checks/movement.ts'
import { presentMeasures } from './checks/present-measures.ts'
import { makeReport, type Report } from './checks/report.ts'
import type { Draft } from './drafting/draft.ts'
import { draftPattern } from './drafting/draft-pattern.ts'
import { correctionReaders } from './fitting/corrections.ts'
import { replay } from './fitting/replay.ts'
import type { Pattern } from './pattern/pattern.ts'
import type { Performer } from './performer.ts'
import { readPerformer } from './performer-file.ts'

export interface MakeOptions {
  /** Label of the last fitting to replay, or `none` for the draft before any; all of them when absent. */
  readonly until?: string
}

/** A pattern with its history: what was read, what was drafted, every version since, and the report on the last. */
export interface MadePattern {
  readonly performer: Performer
  readonly draft: Draft
  /** The draft first, then one version for each fitting replayed. */
  readonly versions: readonly PatternVersion[]
  readonly pattern: Pattern
  /** `draft`, or the label of the last fitting replayed. */
  readonly version: string
  readonly report: Report
}

/** The main path: read → complete the body → draft → replay the fittings → check → report. */
export function makePattern(text: string, file: string, options: MakeOptions = {}): Result<MadePattern> {
  const read = readPerformer(text, file, correctionReaders)
  if (!read.ok) return read
  const performer = read.value
  const placed = (problems: readonly Problem[]) => failure(...problems.map((p) => inFile(p, text, file)))
  const body = completeBody(performer.body)
  if (!body.ok) return placed(body.problems)
  const drafted = draftPattern(body.value.body, performer.choices, performer.allowances.standard)
  if (!drafted.ok) return placed(drafted.problems)
  const draft = drafted.value
  const until = options.until === undefined ? {} : { until: options.until }
  const replayed = replay(draft.pattern, performer.fittings, performer.allowances, { units: performer.units, ...until })
  if (!replayed.ok) return placed(replayed.problems)
  const { versions, pattern, slip, allowances } = replayed.value
  const version = (versions[versions.length - 1] as PatternVersion).label
  const measures = presentMeasures(draft.measures, pattern)
  const findings: Finding[] = [
    ...body.value.findings.map((f) => inFile(f, text, file)),
    ...draft.findings,
    ...replayed.value.findings,
    ...runChecks({ pattern, measures, units: performer.units }),
  ]
  const { performer: name, production } = performer
  const report = makeReport({ performer: name, production, versions, findings, measures, slip, allowances, files: [] })
  return success({ performer, draft, versions, pattern, version, report })
}

/** The same with the line and column of its field. */
function inFile<T extends { readonly where: Place }>(item: T, text: string, file: string): T {
  const { field, line } = item.where
  if (field === undefined || line !== undefined) return item
  const document = readYaml(text, file)
  return document.ok ? { ...item, where: { ...document.value.placeOf(field.split('.')), ...item.where } } : item
}
