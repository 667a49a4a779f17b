import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { acos, asin, atan, atan2, cos, sin, tan, unitVector } from '../../src/base/trig.ts'

/** Bits by which a result may be off the engine's own, which is itself within one. */
const ULP = 2.3e-16
const near = (ours: number, theirs: number, ulps: number) =>
  Object.is(ours, theirs) || Math.abs(ours - theirs) <= ulps * ULP * Math.max(Math.abs(theirs), 1e-300)

const angle = fc.double({ min: -7000, max: 7000, noNaN: true })
const small = fc.double({ min: -4, max: 4, noNaN: true })
const unit = fc.double({ min: -1, max: 1, noNaN: true })
const any = fc.double({ min: -1e6, max: 1e6, noNaN: true })

describe('sines and their kin', () => {
  test.each([
    ['sin', fc.oneof(angle, small), sin, Math.sin, 2],
    ['cos', fc.oneof(angle, small), cos, Math.cos, 2],
    ['tan', fc.oneof(angle, small), tan, Math.tan, 4],
    ['atan', fc.oneof(any, small), atan, Math.atan, 2],
    ['asin', unit, asin, Math.asin, 4],
    ['acos', fc.double({ min: -1, max: 0.99, noNaN: true }), acos, Math.acos, 4],
  ] as const)('%s is that of the engine to its last bits', (_name, arbitrary, ours, theirs, ulps) => {
    fc.assert(
      fc.property(arbitrary, (x) => near(ours(x), theirs(x), ulps)),
      { numRuns: 2000 },
    )
  })

  test('atan2 is that of the engine, in every quarter', () => {
    fc.assert(
      fc.property(fc.oneof(any, small), fc.oneof(any, small), (y, x) => near(atan2(y, x), Math.atan2(y, x), 4)),
      { numRuns: 4000 },
    )
  })

  test('both at once are the same numbers as one by one', () => {
    const exact = fc.oneof(angle, small, fc.constantFrom(0, -0, Math.PI / 2, -Math.PI, 100 * Math.PI, Number.NaN))
    fc.assert(
      fc.property(exact, (x) => {
        expect(unitVector(x)).toEqual({ x: cos(x), y: sin(x) })
      }),
      { numRuns: 3000 },
    )
  })

  test('zeros, axes and what is no number are those of the engine', () => {
    const special = [0, -0, 1, -1, Number.NaN]
    for (const y of special) for (const x of special) expect(atan2(y, x), `${y}, ${x}`).toBe(Math.atan2(y, x))
    for (const x of [0, -0, Number.NaN]) {
      for (const [ours, theirs] of [
        [sin, Math.sin],
        [cos, Math.cos],
        [tan, Math.tan],
        [atan, Math.atan],
        [asin, Math.asin],
      ] as const)
        expect(ours(x)).toBe(theirs(x))
    }
    expect([asin(1), asin(-1), acos(1), acos(-1), acos(0)]).toEqual([
      Math.PI / 2,
      -Math.PI / 2,
      0,
      Math.PI,
      Math.PI / 2,
    ])
    expect([asin(1.0001), acos(-1.0001)]).toEqual([Number.NaN, Number.NaN])
  })
})
