import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  attributeMap,
  composeMaps,
  IDENTITY,
  isGone,
  type PositionMap,
  seamMap,
  tableMap,
} from '../../src/fitting/position-map.ts'

const place = { piece: 'sleeve', seam: 'front cap', along: 40 }
const move = (by: number): PositionMap => seamMap('sleeve', new Map([['front cap', (at: number) => at + by]]))
const remove: PositionMap = seamMap('sleeve', new Map([['front cap', () => ({ gone: 'cut off' })]]))

describe('position maps', () => {
  it('identity leaves everything where it is', () => {
    expect(IDENTITY.seam(place)).toEqual([place])
    expect(composeMaps(IDENTITY, remove)).toBe(remove)
    expect(composeMaps(remove, IDENTITY)).toBe(remove)
  })

  it('compose in order, and what is gone stays gone for the first reason', () => {
    expect(composeMaps(move(2), move(3)).seam(place)).toEqual([{ ...place, along: 45 }])
    const later = attributeMap(remove, () => 'another reason')
    expect(
      composeMaps(
        attributeMap(remove, (r) => `${r} by a take in`),
        later,
      ).seam(place),
    ).toEqual([{ gone: 'cut off by a take in' }])
  })

  it('follow every place of a split', () => {
    const split: PositionMap = {
      seam: (p) => [
        { ...p, piece: 'sleeve left' },
        { ...p, piece: 'sleeve right' },
      ],
      point: (p) => [p],
    }
    const left = seamMap('sleeve left', new Map([['front cap', (at: number) => at + 1]]))
    const moved = composeMaps(split, left).seam(place)
    expect(moved.map((m) => (isGone(m) ? m.gone : m.along))).toEqual([41, 40])
  })

  it('leave other seams, pieces and inside points alone', () => {
    expect(move(5).seam({ ...place, seam: 'wrist' })).toEqual([{ ...place, seam: 'wrist' }])
    expect(move(5).seam({ ...place, piece: 'bodice front' })).toEqual([{ ...place, piece: 'bodice front' }])
    expect(move(5).point({ piece: 'sleeve', at: { x: 1, y: 2 } })).toEqual([{ piece: 'sleeve', at: { x: 1, y: 2 } }])
  })

  it('tables are monotone, right at their pairs, and refuse to turn places round', () => {
    const steps = fc.array(
      fc.tuple(fc.double({ min: 0.01, max: 9, noNaN: true }), fc.double({ min: 0, max: 9, noNaN: true })),
      { minLength: 2, maxLength: 30 },
    )
    fc.assert(
      fc.property(
        steps,
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (pairs, s, t) => {
          const old = pairs.map((_, i) => pairs.slice(0, i + 1).reduce((sum, p) => sum + p[0], 0))
          const now = pairs.map((_, i) => pairs.slice(0, i + 1).reduce((sum, p) => sum + p[1], 0))
          const map = tableMap(old, now)
          for (const [i, at] of old.entries()) expect(map(at)).toBeCloseTo(now[i] as number, 9)
          const span = (old.at(-1) as number) - (old[0] as number)
          const [a, b] = [Math.min(s, t), Math.max(s, t)].map((share) => map((old[0] as number) + share * span))
          expect(b as number).toBeGreaterThanOrEqual(a as number)
        },
      ),
    )
    expect(() => tableMap([0, 1], [1, 0])).toThrow(RangeError)
    expect(() => tableMap([1, 1], [0, 1])).toThrow(RangeError)
  })
})
