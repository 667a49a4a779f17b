import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type ProfileNode, smoothProfile } from '../../src/fitting/profile.ts'

const nodes = fc
  .array(fc.tuple(fc.double({ min: 1, max: 60, noNaN: true }), fc.double({ min: -25, max: 25, noNaN: true })), {
    minLength: 2,
    maxLength: 9,
  })
  .map((list) => {
    let at = 0
    return list.map(([step, amount]): ProfileNode => {
      at += step
      return { at, amount }
    })
  })

describe('smoothProfile', () => {
  it('takes its nodes exactly, never goes beyond them, and is monotone between neighbours', () => {
    fc.assert(
      fc.property(nodes, (list) => {
        const profile = smoothProfile(list)
        for (let i = 1; i < list.length; i++) {
          const a = list[i - 1] as ProfileNode
          const b = list[i] as ProfileNode
          expect(profile.amount(a.at)).toBeCloseTo(a.amount, 10)
          expect(profile.amount(b.at)).toBeCloseTo(b.amount, 10)
          let before = a.amount
          for (let k = 1; k <= 50; k++) {
            const value = profile.amount(a.at + ((b.at - a.at) * k) / 50)
            if (b.amount >= a.amount) expect(value).toBeGreaterThanOrEqual(before - 1e-9)
            else expect(value).toBeLessThanOrEqual(before + 1e-9)
            expect(value).toBeGreaterThanOrEqual(Math.min(a.amount, b.amount) - 1e-9)
            expect(value).toBeLessThanOrEqual(Math.max(a.amount, b.amount) + 1e-9)
            before = value
          }
        }
      }),
    )
  })

  it('has the derivative that it says, without a jump at any node', () => {
    fc.assert(
      fc.property(nodes, fc.double({ min: 0, max: 1, noNaN: true }), (list, share) => {
        const profile = smoothProfile(list)
        const first = list[0] as ProfileNode
        const last = list.at(-1) as ProfileNode
        const h = 1e-5
        for (const at of [first.at + h + share * (last.at - first.at - 2 * h), ...list.slice(1, -1).map((n) => n.at)]) {
          const left = (profile.amount(at) - profile.amount(at - h)) / h
          const right = (profile.amount(at + h) - profile.amount(at)) / h
          expect(Math.abs(left - profile.slope(at))).toBeLessThan(1e-2)
          expect(Math.abs(right - profile.slope(at))).toBeLessThan(1e-2)
        }
      }),
    )
  })

  it('tells many places at once what it tells one by one', () => {
    const places = fc.array(fc.double({ min: -20, max: 600, noNaN: true }), { maxLength: 60 })
    fc.assert(
      fc.property(nodes, places, (list, anywhere) => {
        const profile = smoothProfile(list)
        const at = [...anywhere, ...list.map((node) => node.at)].sort((a, b) => a - b)
        const [amounts, slopes] = [[], []] as [number[], number[]]
        profile.along(at, amounts, slopes)
        expect(amounts).toEqual(at.map(profile.amount))
        expect(slopes).toEqual(at.map(profile.slope))
      }),
    )
  })

  it('is flat between equal neighbours and at the ends', () => {
    const profile = smoothProfile([
      { at: 0, amount: 0 },
      { at: 30, amount: 8 },
      { at: 60, amount: 8 },
      { at: 100, amount: 0 },
    ])
    for (let at = 30; at <= 60; at++) expect(profile.amount(at)).toBe(8)
    expect(profile.slope(0)).toBe(0)
    expect(profile.slope(100)).toBe(0)
    expect(profile.amount(-5)).toBe(0)
  })

  it('takes slopes that keep it monotone and refuses those that do not', () => {
    const straight = smoothProfile([
      { at: 0, amount: 10, slope: -0.25 },
      { at: 40, amount: 0, slope: -0.25 },
    ])
    for (let at = 0; at <= 40; at += 4) expect(straight.amount(at)).toBeCloseTo(10 - at / 4, 12)
    expect(() =>
      smoothProfile([
        { at: 0, amount: 10, slope: 0.1 },
        { at: 40, amount: 0 },
      ]),
    ).toThrow(/overshoots/)
    expect(() =>
      smoothProfile([
        { at: 0, amount: 10, slope: -0.8 },
        { at: 40, amount: 0 },
      ]),
    ).toThrow(/overshoots/)
    expect(() =>
      smoothProfile([
        { at: 0, amount: 1 },
        { at: 0, amount: 2 },
      ]),
    ).toThrow(RangeError)
  })
})
