import type { Finding, Place } from '../base/problem.ts'
import { type MockUpAllowances, statedAllowance } from '../drafting/allowances.ts'
import type { Pattern } from '../pattern/pattern.ts'
import { baseName, namedSide } from '../pattern/side-names.ts'
import type { Effect } from './operation.ts'
import { isGone, type PositionMap } from './position-map.ts'

/** Less than this left of an allowance is a warning, mm: a seam cannot be sewn in less. */
const LEAST_LEFT = 3

/** Amounts equal to this are equal: rounding of fractions of an inch, mm. */
const ROUNDING = 1e-6

/** What a seam of a mock-up was cut with, what its let-outs used and what is left; mm. */
export interface AllowanceRow {
  /** Id of the piece. */
  readonly piece: string
  /** Id of the seam. */
  readonly seam: string
  /** Allowance it was cut with. */
  readonly cut: number
  /** What let-outs have used of it; what take-ins gave back is counted. */
  readonly used: number
  /** What is left where least is. */
  readonly left: number
}

/** A let-out of one seam that still counts: where it lies on the seam as it now is, and how much of it is used. */
export interface LetOut {
  readonly piece: string
  readonly seam: string
  readonly from: number
  readonly to: number
  readonly amount: number
}

/** Amounts used of the allowances of one mock-up. A new mock-up starts with an empty one. */
export type Budget = readonly LetOut[]

/** What a seam of this mock-up was cut with: the mock-up's own allowance where one is given, else as drafted; mm. */
export function cutAllowance(
  allowances: MockUpAllowances,
  mockUp: number,
  seam: { readonly id: string; readonly allowance: number },
): number {
  // A fold has no allowance whatever the default says; without own allowances every mock-up is cut as drafted.
  if (Object.keys(allowances.byMockUp).length === 0 || seam.allowance === 0) return seam.allowance
  const own = allowances.byMockUp[mockUp] ?? {}
  const id = baseName(seam.id)
  // Back to what was drafted, not to what the mock-up before was cut with.
  return statedAllowance(own, id) ?? statedAllowance(allowances.standard, id) ?? seam.allowance
}

/**
 * The budget after a correction. Let-outs of one seam add up, wherever on the seam they are: the shop keeps one
 * figure for each seam. A take-in gives back what a let-out in the same place had used, never more.
 */
export function spend(budget: Budget, effects: readonly Effect[], map: PositionMap): Budget {
  let entries = oneSideOnly(budget.flatMap((entry) => carriedOn(entry, map).map((now) => ({ was: entry, now }))))
  for (const effect of effects) {
    if (effect.kind !== 'seam moved') continue
    const { piece, seam, from, to, amount } = effect
    if (amount > 0) entries.push({ piece, seam, from, to, amount })
    else entries = givenBack(entries, effect, -amount)
  }
  return entries
}

/**
 * Left and right joined again are one seam whose two cloths each had their own let-outs: those of the side that used
 * more count, not the sum of both.
 */
function oneSideOnly(carried: readonly { readonly was: LetOut; readonly now: LetOut }[]): LetOut[] {
  const sideOf = ({ piece, seam }: LetOut) => namedSide(piece) ?? namedSide(seam)
  const joined = carried.filter(({ was, now }) => sideOf(was) !== undefined && sideOf(now) === undefined)
  if (joined.length === 0) return carried.map(({ now }) => now)
  const used = (side: string, { piece, seam }: LetOut) =>
    joined
      .filter(({ was, now }) => sideOf(was) === side && now.piece === piece && now.seam === seam)
      .reduce((sum, { now }) => sum + now.amount, 0)
  return carried
    .filter(({ was, now }) => {
      const side = sideOf(was)
      if (side === undefined || sideOf(now) !== undefined) return true
      const [left, right] = [used('left', now), used('right', now)]
      return side === 'left' ? left >= right : right > left
    })
    .map(({ now }) => now)
}

/** A let-out followed through an operation: to both sides when its piece was split. */
function carriedOn(entry: LetOut, map: PositionMap): LetOut[] {
  const at = (along: number) => map.seam({ piece: entry.piece, seam: entry.seam, along })
  const starts = at(entry.from)
  const ends = at(entry.to)
  return starts.flatMap((start, i) => {
    const end = ends[i]
    if (end === undefined || isGone(start) || isGone(end)) return [entry]
    const [from, to] = start.along <= end.along ? [start.along, end.along] : [end.along, start.along]
    return [{ piece: start.piece, seam: start.seam, from, to, amount: entry.amount }]
  })
}

function givenBack(entries: readonly LetOut[], takeIn: Omit<LetOut, 'amount'>, amount: number): LetOut[] {
  let rest = amount
  return [...entries]
    .reverse()
    .flatMap((entry) => {
      const same = entry.piece === takeIn.piece && entry.seam === takeIn.seam
      if (!same || entry.to <= takeIn.from || entry.from >= takeIn.to) return [entry]
      const back = Math.min(rest, entry.amount)
      rest -= back
      return entry.amount - back > ROUNDING ? [{ ...entry, amount: entry.amount - back }] : []
    })
    .reverse()
}

/** One row for every seam with an allowance, as the pattern's pieces now are. */
export function allowanceRows(
  pattern: Pattern,
  budget: Budget,
  allowances: MockUpAllowances,
  mockUp: number,
): AllowanceRow[] {
  return pattern.pieces.flatMap((piece) =>
    piece.seams
      .filter((seam) => seam.allowance > 0)
      .map((seam) => {
        const cut = cutAllowance(allowances, mockUp, seam)
        let used = 0
        for (const entry of budget) if (entry.piece === piece.id && entry.seam === seam.id) used += entry.amount
        return { piece: piece.id, seam: seam.id, cut, used, left: cut - used }
      }),
  )
}

/**
 * What a correction did to the allowances: an error where it let out more than was left, naming what remained; a
 * warning where less than 3 mm is left. Only for seams that it used more of.
 */
export function budgetFindings(
  before: readonly AllowanceRow[],
  after: readonly AllowanceRow[],
  where: Place,
  say: (mm: number) => string,
): Finding[] {
  return after.flatMap((row): Finding[] => {
    if (row.used <= ROUNDING) return []
    const was =
      before.find((r) => r.piece === row.piece && r.seam === row.seam) ??
      before.find((r) => r.piece === baseName(row.piece) && r.seam === baseName(row.seam)) ??
      mostUsed(before.filter((r) => baseName(r.piece) === row.piece && baseName(r.seam) === row.seam))
    const used = row.used - (was?.used ?? 0)
    if (used <= ROUNDING) return []
    const remained = row.left + used
    const place = { ...where, piece: row.piece, seam: row.seam }
    if (row.left < -ROUNDING) {
      return [
        {
          code: 'allowance-exceeded',
          severity: 'error',
          where: place,
          actual: `the ${row.seam} is let out by ${say(used)}, and ${say(Math.max(0, remained))} of its allowance remained`,
          expected: `at most ${say(Math.max(0, remained))} on a mock-up cut with ${say(row.cut)}`,
          hint: 'let out less, piece cloth on, or cut a new mock-up and record it as the next one',
        },
      ]
    }
    if (row.left >= LEAST_LEFT - ROUNDING) return []
    return [
      {
        code: 'allowance-low',
        severity: 'warning',
        where: place,
        actual: `${say(row.left)} of the allowance is left on the ${row.seam}`,
        expected: `at least ${say(LEAST_LEFT)}`,
        hint: 'cut a new mock-up before letting this seam out again',
      },
    ]
  })
}

function mostUsed(rows: readonly AllowanceRow[]): AllowanceRow | undefined {
  return rows.reduce<AllowanceRow | undefined>((most, row) => (most && most.used >= row.used ? most : row), undefined)
}

/** The pattern with the seam allowances that this mock-up is cut with; the same object where nothing differs. */
export function withAllowances(pattern: Pattern, allowances: MockUpAllowances, mockUp: number): Pattern {
  const pieces = pattern.pieces.map((piece) => {
    const seams = piece.seams.map((seam) => {
      const allowance = cutAllowance(allowances, mockUp, seam)
      return allowance === seam.allowance ? seam : { ...seam, allowance }
    })
    return seams.every((seam, i) => seam === piece.seams[i]) ? piece : { ...piece, seams }
  })
  return pieces.every((piece, i) => piece === pattern.pieces[i]) ? pattern : { ...pattern, pieces }
}
