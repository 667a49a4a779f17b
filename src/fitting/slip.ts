import type { Pattern } from '../pattern/pattern.ts'
import type { AllowanceRow } from './budget.ts'
import type { Changes, FigureChange, JoinChange, SeamChange } from './changes.ts'
import type { SlipWords } from './correction.ts'
import { describePlace } from './describe-place.ts'
import { namedPlaces } from './named-places.ts'
import type { Effect, SeamMoved } from './operation.ts'
import type { SeamPlace } from './position.ts'
import type { CorrectionRecord, CorrectionSide, FittingRecord } from './record.ts'
import { seamRun } from './seam-run.ts'

/** A stitching line that moved: how far at most, outwards positive, and between which places it did, mm. */
export interface SlipMove {
  /** Id of the piece. */
  readonly piece: string
  /** Id of the seam. */
  readonly seam: string
  /** Signed amount where it is largest, outwards positive, mm. */
  readonly amount: number
  /** Absent where the whole of the seam moved. */
  readonly from?: SeamPlace
  /** Where it ends; absent where the whole of the seam moved. */
  readonly to?: SeamPlace
}

/** One correction as the stitcher reads it; plain data, mm and degrees, words in the file's unit. */
export interface SlipEntry {
  /** Label of the fitting. */
  readonly fitting: string
  /** Day of the fitting. */
  readonly date?: string
  /** Number of the mock-up that was on the body. */
  readonly mockUp: number
  /** Fitted on this instead of the performer. */
  readonly provisional?: string
  /** Number of the correction in its fitting, from 1. */
  readonly correction: number
  /** Name of the correction. */
  readonly do: string
  /** The wearer's side, or both. */
  readonly side: CorrectionSide
  /** What was seen on the body. */
  readonly seen?: string
  /** Why it was left out. */
  readonly voided?: string
  /** What was done, as an order, and where. */
  readonly what: string
  /** Where it was done, and where it runs to nothing. */
  readonly where: string
  /** The lines that it moved, and from where to where. */
  readonly moves: readonly SlipMove[]
  /** The seams whose length it changed. */
  readonly seams: readonly SeamChange[]
  /** The joins whose sides it changed. */
  readonly joins: readonly JoinChange[]
  /** The figures of sleeves that it changed. */
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
  /** The pattern after the correction. */
  readonly pattern: Pattern
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
    moves: moved.flatMap((effect) => slipMove(effect, request.pattern)),
    ...changes,
    allowances: allowances.filter((row) => moved.some(({ piece, seam }) => piece === row.piece && seam === row.seam)),
    ...(leaves === undefined ? {} : { leaves }),
  }
}

/** Ends nearer than this to the ends of the seam are its ends, mm. */
const AT_END = 1

function slipMove({ piece, seam, amount, from, to }: SeamMoved, pattern: Pattern): SlipMove[] {
  const found = pattern.pieces.find((p) => p.id === piece)
  if (!found?.seams.some((s) => s.id === seam) || amount === 0) return []
  const run = seamRun(found, [seam])
  const row = { piece, seam, amount }
  if (from <= AT_END && to >= run.length - AT_END) return [row]
  const places = namedPlaces(run)
  const at = (along: number) => describePlace(run, Math.min(Math.max(along, 0), run.length), places)
  return [{ ...row, from: at(from), to: at(to) }]
}

/** The slip entry of a correction that no longer counts: it stays on the slip, with the reason. */
export function voidedEntry(
  fitting: FittingRecord,
  number: number,
  record: CorrectionRecord,
  words: SlipWords,
): SlipEntry {
  return { ...heading(fitting, number, record), ...words, moves: [], seams: [], joins: [], figures: [], allowances: [] }
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
