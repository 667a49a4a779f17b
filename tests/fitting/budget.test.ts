import { describe, expect, it } from 'vitest'
import type { MockUpAllowances } from '../../src/drafting/allowances.ts'
import {
  allowanceRows,
  type Budget,
  budgetFindings,
  cutAllowance,
  spend,
  withAllowances,
} from '../../src/fitting/budget.ts'
import type { Effect } from '../../src/fitting/operation.ts'
import { IDENTITY } from '../../src/fitting/position-map.ts'
import { splitSides } from '../../src/fitting/split-sides.ts'
import { pieceOf, seamLength, seamOf } from '../../src/pattern/seam.ts'
import { fixturePattern } from './fixture.ts'

const PLAIN: MockUpAllowances = { standard: { default: 25.4, neckline: 12.7 }, byMockUp: {} }
const pattern = fixturePattern()
const say = (mm: number) => `${mm.toFixed(1)} mm`

const moved = (amount: number, from = 70, to = 200, seam = 'front cap'): Effect => ({
  kind: 'seam moved',
  piece: 'sleeve',
  seam,
  amount,
  from,
  to,
})

const row = (budget: Budget, seam = 'front cap', piece = 'sleeve') =>
  allowanceRows(pattern, budget, PLAIN, 1).find((r) => r.piece === piece && r.seam === seam)

describe('the allowance budget', () => {
  it('adds up the let-outs of a seam, wherever on it they lie', () => {
    const once = spend([], [moved(9.525), moved(9.525, 0, 100, 'back cap')], IDENTITY)
    const twice = spend(once, [moved(12.7, 0, 38)], IDENTITY)
    expect(row(twice)).toMatchObject({ cut: 25.4, left: 25.4 - 22.225 })
    expect(row(twice)?.used).toBeCloseTo(22.225, 12)
    expect(row(twice, 'back cap')?.used).toBe(9.525)
    expect(row(twice, 'wrist')?.used).toBe(0)
    // What is not there cannot be used: the fold has no row.
    expect(row([], 'center front', 'bodice front')).toBeUndefined()
    expect(row([], 'neckline', 'bodice front')?.cut).toBe(12.7)
  })

  it('gives back what a take-in undoes in the same place, and no more', () => {
    const out = spend([], [moved(10)], IDENTITY)
    expect(row(spend(out, [moved(-4)], IDENTITY))?.used).toBe(6)
    expect(row(spend(out, [moved(-40)], IDENTITY))?.used).toBe(0)
    expect(row(spend(out, [moved(-4, 0, 60)], IDENTITY))?.used).toBe(10)
    expect(row(spend([], [moved(-4)], IDENTITY))?.used).toBe(0)
  })

  it('warns below 3 mm and refuses more than there was, naming what remained', () => {
    const rows = (budget: Budget) => allowanceRows(pattern, budget, PLAIN, 1)
    const one = spend([], [moved(20)], IDENTITY)
    const low = spend(one, [moved(3)], IDENTITY)
    const over = spend(one, [moved(8)], IDENTITY)
    expect(budgetFindings(rows([]), rows(one), {}, say)).toEqual([])
    expect(budgetFindings(rows(one), rows(low), { fitting: 'first' }, say)).toMatchObject([
      { code: 'allowance-low', severity: 'warning', where: { fitting: 'first', piece: 'sleeve', seam: 'front cap' } },
    ])
    const [error] = budgetFindings(rows(one), rows(over), {}, say)
    expect(error).toMatchObject({ code: 'allowance-exceeded', severity: 'error' })
    expect(error?.actual).toContain('5.4 mm')
    // Exactly all of it is a warning, not an error; exactly 3 mm left is neither.
    expect(budgetFindings(rows([]), rows(spend([], [moved(25.4)], IDENTITY)), {}, say)[0]?.severity).toBe('warning')
    expect(budgetFindings(rows([]), rows(spend([], [moved(22.4)], IDENTITY)), {}, say)).toEqual([])
    // A seam that was low before is not mentioned again by a correction elsewhere.
    expect(budgetFindings(rows(low), rows(spend(low, [moved(1, 0, 9, 'wrist')], IDENTITY)), {}, say)).toEqual([])
  })

  it('follows a split to both sides', () => {
    const split = splitSides(pattern, 'sleeve')
    const budget = spend(spend([], [moved(9)], IDENTITY), [], split.map)
    const rows = allowanceRows(split.pattern, budget, PLAIN, 1)
    for (const id of ['sleeve left', 'sleeve right'])
      expect(rows.find((r) => r.piece === id && r.seam === 'front cap')?.used).toBe(9)
    const length = seamLength(seamOf(pieceOf(pattern, 'sleeve'), 'front cap'))
    const left = budget.find((entry) => entry.piece === 'sleeve left')
    expect(left?.from).toBeCloseTo(length - 200, 6)
    expect(left?.to).toBeCloseTo(length - 70, 6)
  })

  it('takes the allowances of a mock-up by number, by seam, by family or by default', () => {
    const own: MockUpAllowances = {
      standard: PLAIN.standard,
      byMockUp: { 2: { cap: 38, wrist: 50 }, 3: { default: 20 } },
    }
    const cap = seamOf(pieceOf(pattern, 'sleeve'), 'front cap')
    expect(cutAllowance(own, 1, cap)).toBe(25.4)
    expect(cutAllowance(own, 2, cap)).toBe(38)
    expect(cutAllowance(own, 2, { id: 'wrist left', allowance: 25.4 })).toBe(50)
    expect(cutAllowance(own, 2, { id: 'shoulder', allowance: 25.4 })).toBe(25.4)
    expect(cutAllowance(own, 3, cap)).toBe(20)
    expect(cutAllowance(own, 3, { id: 'center front', allowance: 0 })).toBe(0)
    // The default is not for the center opening, which keeps room for its closing unless it is named.
    expect(cutAllowance(own, 3, { id: 'center back', allowance: 25 })).toBe(25)
    const named: MockUpAllowances = { standard: PLAIN.standard, byMockUp: { 4: { default: 20, 'center back': 40 } } }
    expect(cutAllowance(named, 4, { id: 'center back', allowance: 25 })).toBe(40)
    expect(cutAllowance(named, 4, { id: 'center back left', allowance: 25 })).toBe(40)
    expect(withAllowances(pattern, own, 1)).toBe(pattern)
    const second = withAllowances(pattern, own, 2)
    expect(seamOf(pieceOf(second, 'sleeve'), 'back cap').allowance).toBe(38)
    expect(second.pieces[0]).toBe(pattern.pieces[0])
  })
})
