import { inUnit } from './base/in-unit.ts'
import { locate } from './base/locate.ts'
import type { Finding, Problem } from './base/problem.ts'
import { failure, type Result, success } from './base/result.ts'
import { completeBody } from './body/complete-body.ts'
import { doubtedMeasures } from './body/doubted-measures.ts'
import type { Check } from './checks/check.ts'
import { CHECKS, runChecks } from './checks/checks.ts'
import { presentMeasures } from './checks/present-measures.ts'
import { makeReport, type Report } from './checks/report.ts'
import type { Draft } from './drafting/draft.ts'
import { draftPattern } from './drafting/draft-pattern.ts'
import type { Correction } from './fitting/correction.ts'
import { CORRECTIONS, correctionReaders, readersOf } from './fitting/corrections.ts'
import { type PatternVersion, replay } from './fitting/replay.ts'
import type { Pattern } from './pattern/pattern.ts'
import type { Performer } from './performer.ts'
import { readPerformerDocument } from './performer-file.ts'

/** How far to replay, and with which corrections and checks. */
export interface MakeOptions {
  /** Label of the last fitting to replay, or `none` or `draft` for the draft before any; all of them when absent. */
  readonly until?: string
  /** Leaves the seams as the corrections made them; without it they are trued after every fitting. */
  readonly raw?: boolean
  /** The corrections there are, in place of `CORRECTIONS`; own ones beside them: `[...CORRECTIONS, mine]`. */
  readonly corrections?: readonly Correction[]
  /** Another performer's choices and allowances in place of the file's own: their design, for this body. */
  readonly design?: Pick<Performer, 'choices' | 'allowances'>
  /** The checks to run, in place of `CHECKS`. */
  readonly checks?: readonly Check[]
}

/** A pattern with its history: what was read, what was drafted, every version since, and the report on the last. */
export interface MadePattern {
  /** What the file says. */
  readonly performer: Performer
  /** The pattern before any fitting. */
  readonly draft: Draft
  /** The draft first, then one version for each fitting replayed. */
  readonly versions: readonly PatternVersion[]
  /** The last version's pattern. */
  readonly pattern: Pattern
  /** `draft`, or the label of the last fitting replayed. */
  readonly version: string
  /** Findings, measures, walks, movement, slip and allowances of the last version. */
  readonly report: Report
}

/**
 * The main path: read → complete the body → draft → replay the fittings and true them → check → report. `text` is a
 * performer file, `file` only its name for problems. Fails with every problem of the stage that could not go on, each
 * with its line and column and worded in the file's unit, first the measures that looked unlikely; what a draper should
 * look at is in the report.
 */
export function makePattern(text: string, file: string, options: MakeOptions = {}): Result<MadePattern> {
  const { corrections = CORRECTIONS, checks = CHECKS, raw = false } = options
  const read = readPerformerDocument(
    text,
    file,
    corrections === CORRECTIONS ? correctionReaders : readersOf(corrections),
  )
  if (!read.ok) return read
  const { performer: written, document } = read.value
  const { choices, allowances: designed } = options.design ?? written
  const performer: Performer = { ...written, choices, allowances: designed }
  const placed = (problems: readonly Problem[]) =>
    failure(...locate(problems, document).map((problem) => inUnit(problem, performer.units)))
  const body = completeBody(performer.body)
  if (!body.ok) return placed(body.problems)
  const drafted = draftPattern(body.value.body, performer.choices, performer.allowances.standard, performer.units)
  // A measure in the wrong unit brings up problems far from it: what was doubted before drafting is said before them.
  const doubts = doubtedMeasures(body.value.findings)
  if (!drafted.ok) return placed([...doubts, ...drafted.problems])
  const draft = drafted.value
  const until = options.until === undefined ? {} : { until: options.until }
  const words = { units: performer.units, corrections, raw, ...until }
  const replayed = replay(draft.pattern, performer.fittings, performer.allowances, words)
  if (!replayed.ok) return placed([...doubts, ...replayed.problems])
  const { versions, pattern, slip, allowances, corners, trued } = replayed.value
  const version = (versions[versions.length - 1] as PatternVersion).label
  const measures = presentMeasures(draft.measures, pattern)
  const found: Finding[] = [
    ...body.value.findings,
    ...draft.findings.filter((finding) => !checks.some((check) => check.replaces?.includes(finding.code))),
    ...replayed.value.findings,
    ...runChecks(
      { pattern, measures, units: performer.units, corners, body: body.value.body, cloth: performer.choices.cloth },
      checks,
    ),
  ]
  const findings = locate(found, document).map((finding) => inUnit(finding, performer.units))
  const { performer: name, production } = performer
  const report = makeReport({
    performer: name,
    production,
    versions,
    findings,
    measures,
    slip,
    allowances,
    trued,
    files: [],
  })
  return success({ performer, draft, versions, pattern, version, report })
}
