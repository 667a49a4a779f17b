import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Point } from '../../src/geometry/point.ts'
import { GAP } from '../../src/sheets/arrange.ts'
import { nearestFirst } from '../../src/sheets/nearest-first.ts'
import { overlaps, type Silhouette, SLICE, silhouette } from '../../src/sheets/silhouette.ts'

const within = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const place = fc.record({ x: within(-150, 150), y: within(-150, 150) })
const shape = fc
  .tuple(within(-20, 20), fc.array(fc.tuple(within(-80, 0), within(0, 80)), { minLength: 1, maxLength: 60 }))
  .map(([bottom, slices]) =>
    silhouette(
      bottom,
      slices.map(([left]) => left),
      slices.map(([, right]) => right),
    ),
  )

/** Every slice beside every other. */
function plainlyOverlaps(a: Silhouette, atA: Point, b: Silhouette, atB: Point): boolean {
  const reach = Math.ceil(GAP / SLICE)
  const lift = (atA.y + a.bottom - atB.y - b.bottom) / SLICE
  return a.left.some((left, n) =>
    b.left.some((other, k) => {
      if (k < Math.floor(n + lift) - reach || k > Math.ceil(n + lift) + reach) return false
      const clear = other + atB.x >= (a.right[n] as number) + atA.x + GAP
      return !clear && (b.right[k] as number) + atB.x > left + atA.x - GAP
    }),
  )
}

describe('silhouettes', () => {
  test('come too near each other where any of their slices do', () => {
    fc.assert(
      fc.property(shape, place, shape, place, (a, atA, b, atB) => {
        expect(overlaps(a, atA, b, atB)).toBe(plainlyOverlaps(a, atA, b, atB))
      }),
      { numRuns: 500 },
    )
  })
})

describe('the nearest first', () => {
  test('are in the order of their distance, those as near in the order given, asked once or again', () => {
    const values = fc.array(fc.record({ away: fc.oneof(within(0, 90), fc.nat(9)), name: fc.nat() }))
    fc.assert(
      fc.property(values, within(1, 40), (all, breadth) => {
        const found = nearestFirst(all, ({ away }) => away, breadth)
        const sorted = all.toSorted((a, b) => a.away - b.away)
        for (const first of found) {
          expect(first).toBe(sorted[0])
          break
        }
        expect([...found]).toEqual(sorted)
        expect([...found]).toEqual(sorted)
      }),
    )
  })
})
