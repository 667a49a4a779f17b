import { formatLength } from '../base/format-length.ts'
import { nearestName } from '../base/names.ts'
import type { Finding, Place, Problem } from '../base/problem.ts'
import { failure, type Result, success } from '../base/result.ts'
import type { LengthUnit } from '../base/units.ts'
import type { MockUpAllowances } from '../drafting/allowances.ts'
import type { Pattern } from '../pattern/pattern.ts'
import { type AllowanceRow, allowanceRows, type Budget, budgetFindings, spend, withAllowances } from './budget.ts'
import { changesBetween } from './changes.ts'
import type { Correction } from './correction.ts'
import { CORRECTIONS, correctionNamed } from './corrections.ts'
import { fittingNotes } from './fitting-remarks.ts'
import { inSetting } from './in-setting.ts'
import { type CornerMade, type OperationResult, runOperations } from './operation.ts'
import { attributeMap, composeMaps, IDENTITY, type PositionMap } from './position-map.ts'
import type { CorrectionRecord, FittingRecord } from './record.ts'
import { type SlipEntry, slipEntry, voidedEntry } from './slip.ts'
import { type TruedEdge, type TruedSeams, trueSeams } from './true-seams.ts'
import { truedNote } from './trued-note.ts'

/** How far to replay, with which corrections, and in which words. */
export interface ReplayOptions {
  /** Label of the last fitting to replay, or `none` for the draft before any; all of them when absent. */
  readonly until?: string
  /** The unit of words on the slip and in findings; default mm. */
  readonly units?: LengthUnit
  /** Leaves the seams as the corrections made them; without it they are trued after every fitting. */
  readonly raw?: boolean
  /** The corrections there are; an own table may hold own ones. */
  readonly corrections?: readonly Correction[]
}

/** The pattern as it stood at one time, under the name a draper knows it by. */
export interface PatternVersion {
  /** `draft`, or the label of the fitting it comes after. */
  readonly label: string
  /** The whole pattern as it stood. */
  readonly pattern: Pattern
  /** Where places of the version before it went; `IDENTITY` for the draft. */
  readonly since: PositionMap
}

/** A pattern with its history replayed. */
export interface Replayed {
  /** The draft first, then one version for each fitting replayed. */
  readonly versions: readonly PatternVersion[]
  /** The last version's pattern. */
  readonly pattern: Pattern
  /** What was done, one entry a correction, oldest first. */
  readonly slip: readonly SlipEntry[]
  /** About the fittings themselves: allowances, and what corrections noticed. */
  readonly findings: readonly Finding[]
  /** Corners that corrections meant to make; findings explain them. */
  readonly corners: readonly CornerMade[]
  /** What truing moved, fitting by fitting. */
  readonly trued: readonly TruedInFitting[]
  /** What the mock-up on the body still has, seam by seam. */
  readonly allowances: readonly AllowanceRow[]
}

/** An edge trued after the fitting of this label. */
export interface TruedInFitting extends TruedEdge {
  /** Label of that fitting. */
  readonly fitting: string
}

/** Settings that say how much. */
const AMOUNTS = ['by', 'intake', 'share', 'ease'] as const

interface State {
  readonly pattern: Pattern
  readonly budget: Budget
}

/**
 * Replays the fittings on the drafted pattern, in order. Places of one fitting refer to the mock-up as it was worn
 * then and are carried on through its earlier corrections; voided corrections are skipped. Nothing is changed in
 * place: the same pattern and records give the same result, and replay without the last correction is undo. After each
 * fitting the seams are trued (`trueSeams`), unless `raw`: its mock-up is cut from a true pattern.
 * Fails with the problems of every correction that cannot be applied, each with its fitting and number.
 */
export function replay(
  draft: Pattern,
  fittings: readonly FittingRecord[],
  allowances: MockUpAllowances,
  options: ReplayOptions = {},
): Result<Replayed> {
  const chosen = chosenFittings(fittings, options.until)
  if (!chosen.ok) return chosen
  const problems: Problem[] = []
  const findings: Finding[] = []
  const corners: CornerMade[] = []
  const slip: SlipEntry[] = []
  const trued: TruedInFitting[] = []
  let mockUp = chosen.value[0]?.mockUp ?? 1
  let state: State = { pattern: withAllowances(draft, allowances, mockUp), budget: [] }
  const versions: PatternVersion[] = [{ label: 'draft', pattern: state.pattern, since: IDENTITY }]
  for (const fitting of chosen.value) {
    if (fitting.mockUp !== mockUp) {
      mockUp = fitting.mockUp
      state = { pattern: withAllowances(state.pattern, allowances, mockUp), budget: [] }
    }
    findings.push(...fittingNotes(fitting))
    const done = replayFitting(state, fitting, allowances, options)
    problems.push(...done.problems)
    findings.push(...done.findings)
    corners.push(...done.corners)
    slip.push(...done.slip)
    const {
      pattern,
      map,
      trued: edges,
    } = options.raw ? untrued(done.state.pattern) : trueSeams(done.state.pattern, { corners })
    trued.push(...edges.map((edge) => ({ fitting: fitting.label, ...edge })))
    findings.push(...truedNote(fitting, edges))
    state = { pattern, budget: spend(done.state.budget, [], map) }
    versions.push({ label: fitting.label, pattern, since: composeMaps(done.since, map) })
  }
  if (problems.length > 0) return failure(...problems)
  return success({
    versions,
    pattern: state.pattern,
    slip,
    findings,
    corners,
    trued,
    allowances: allowanceRows(state.pattern, state.budget, allowances, mockUp),
  })
}

/** The fittings up to and with the one named; none of them for `none` or `draft`. */
function chosenFittings(
  fittings: readonly FittingRecord[],
  until: string | undefined,
): Result<readonly FittingRecord[]> {
  if (until === undefined) return success(fittings)
  if (until === 'none') return success([])
  const index = fittings.findIndex((fitting) => fitting.label === until)
  if (index >= 0) return success(fittings.slice(0, index + 1))
  if (until === 'draft') return success([])
  const labels = fittings.map((fitting) => fitting.label)
  const near = nearestName(until, labels)
  return failure({
    code: 'unknown-fitting',
    where: { field: 'fittings' },
    actual: `"${until}"`,
    expected: `one of: ${[...labels, 'none'].join(', ')}`,
    hint: near === undefined ? 'name a fitting by its label, or none for the draft' : `did you mean "${near}"?`,
  })
}

function untrued(pattern: Pattern): TruedSeams {
  return { pattern, map: IDENTITY, trued: [] }
}

interface FittingDone {
  readonly state: State
  readonly since: PositionMap
  readonly slip: readonly SlipEntry[]
  readonly findings: readonly Finding[]
  readonly corners: readonly CornerMade[]
  readonly problems: readonly Problem[]
}

function replayFitting(
  start: State,
  fitting: FittingRecord,
  allowances: MockUpAllowances,
  options: ReplayOptions,
): FittingDone {
  const say = (mm: number) => formatLength(mm, options.units ?? 'mm')
  const worn = start.pattern
  const slip: SlipEntry[] = []
  const findings: Finding[] = []
  const corners: CornerMade[] = []
  const problems: Problem[] = []
  let state = start
  let since: PositionMap = IDENTITY
  let rows = allowanceRows(start.pattern, start.budget, allowances, fitting.mockUp)
  fitting.corrections.forEach((record, index) => {
    const number = index + 1
    const place = { ...record.where, fitting: fitting.label, correction: number }
    const correction = correctionNamed(record.do, options.corrections ?? CORRECTIONS)
    if (!correction) throw new RangeError(`no correction "${record.do}" in the table`)
    const words = correction.word(record.settings, say)
    if (record.voided !== undefined) {
      slip.push(voidedEntry(fitting, number, record, words))
      return
    }
    const applied = apply(correction, record, worn, state.pattern, since)
    if (!applied.ok) {
      // Where the setting stands in the file, and what of the pattern it is about.
      problems.push(...applied.problems.map((problem) => ({ ...problem, where: inFile(problem.where, record, place) })))
      return
    }
    const { pattern, map, effects } = applied.value
    const budget = spend(state.budget, effects, map)
    const after = allowanceRows(pattern, budget, allowances, fitting.mockUp)
    findings.push(...budgetFindings(rows, after, inFile({ field: 'by' }, record, place), say))
    for (const effect of effects) {
      if (effect.kind === 'corner made') corners.push(effect)
      if (effect.kind === 'finding')
        findings.push({ ...effect.finding, where: inFile(effect.finding.where, record, place) })
    }
    slip.push(
      slipEntry({
        fitting,
        number,
        record,
        words,
        leaves: correction.leaves,
        changes: changesBetween(state.pattern, pattern, map),
        effects,
        pattern,
        allowances: after,
      }),
    )
    since = composeMaps(
      since,
      attributeMap(map, (reason) => `${reason} (${record.do}, correction ${number})`),
    )
    state = { pattern, budget }
    rows = after
  })
  return { state, since, slip, findings, corners, problems }
}

/** A place that names a setting, such as `taper to.2`, where its value stands in the file, else where the record does. */
function inFile(where: Place, record: CorrectionRecord, place: Place): Place {
  const { field, ...rest } = where
  const names = field === undefined ? [] : [field, field.replace(/\.\d+$/, '')]
  const found = names.map((name) => record.places?.[name]).find((one) => one !== undefined)
  return { ...rest, ...place, ...found, ...(place.fitting === undefined ? {} : { fitting: place.fitting }) }
}

function apply(
  correction: Correction,
  record: CorrectionRecord,
  worn: Pattern,
  present: Pattern,
  since: PositionMap,
): Result<OperationResult> {
  const operations = correction.compile({ worn, side: record.side }, record.settings)
  if (!operations.ok) return operations
  const done = runOperations(present, since, operations.value)
  // What cannot be drawn could be with less: unless a problem names another setting, it is laid to the amount.
  const amount = AMOUNTS.find((name) => record.places?.[name])
  return amount === undefined ? done : inSetting(amount, done)
}
