import type { AllowanceRow } from './budget.ts'
import type { Changes, FigureChange, JoinChange, SeamChange } from './changes.ts'
import type { SlipWords } from './correction.ts'
import type { Effect } from './operation.ts'
import type { CorrectionRecord, CorrectionSide, FittingRecord } from './record.ts'

/** One correction as the stitcher reads it; plain data, mm and degrees, words in the file's unit. */
export interface SlipEntry {
  readonly fitting: string
  readonly date?: string
  readonly mockUp: number
  /** Fitted on this instead of the performer. */
  readonly provisional?: string
  /** Number of the correction in its fitting, from 1. */
  readonly correction: number
  readonly do: string
  readonly side: CorrectionSide
  readonly seen?: string
  /** Why it was left out. */
  readonly voided?: string
  /** What was done, as an order, and where. */
  readonly what: string
  readonly where: string
  readonly seams: readonly SeamChange[]
  readonly joins: readonly JoinChange[]
  readonly figures: readonly FigureChange[]
  /** What is left of the allowance of each seam that was let out or taken in. */
  readonly allowances: readonly AllowanceRow[]
  /** What it leaves to be matched, in words. */
  readonly leaves?: string
}

export interface SlipEntryRequest {
  readonly fitting: FittingRecord
  readonly number: number
  readonly record: CorrectionRecord
  readonly words: SlipWords
  readonly leaves: string | undefined
  readonly changes: Changes
  readonly effects: readonly Effect[]
  /** All rows after the correction. */
  readonly allowances: readonly AllowanceRow[]
}

/** The slip entry of a correction that was applied. */
export function slipEntry(request: SlipEntryRequest): SlipEntry {
  const { words, changes, effects, allowances, leaves } = request
  const moved = effects.filter((effect) => effect.kind === 'seam moved')
  return {
    ...heading(request.fitting, request.number, request.record),
    ...words,
    ...changes,
    allowances: allowances.filter((row) => moved.some(({ piece, seam }) => piece === row.piece && seam === row.seam)),
    ...(leaves === undefined ? {} : { leaves }),
  }
}

/** The slip entry of a correction that no longer counts: it stays on the slip, with the reason. */
export function voidedEntry(fitting: FittingRecord, number: number, record: CorrectionRecord): SlipEntry {
  const nothing = { seams: [], joins: [], figures: [], allowances: [] }
  return { ...heading(fitting, number, record), what: record.do, where: '', ...nothing }
}

function heading(fitting: FittingRecord, number: number, record: CorrectionRecord) {
  return {
    fitting: fitting.label,
    ...(fitting.date === undefined ? {} : { date: fitting.date }),
    mockUp: fitting.mockUp,
    ...(fitting.provisional === undefined ? {} : { provisional: fitting.provisional }),
    correction: number,
    do: record.do,
    side: record.side,
    ...(record.seen === undefined ? {} : { seen: record.seen }),
    ...(record.voided === undefined ? {} : { voided: record.voided }),
  }
}
