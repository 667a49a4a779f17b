import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { chainOf, crossings, distanceWithin, isWithin, signedArea } from './reader-chains.ts'
import type { Pt } from './reader-curves.ts'

const coordinate = fc.integer({ min: -40, max: 40 }).map((k) => k + 0.25)
const points = fc.array(fc.tuple(coordinate, coordinate), { minLength: 3, maxLength: 60 })

type Edge = readonly [Pt, Pt]

/** The same without trees: every edge. */
function edgesOf(points: readonly Pt[], closed: boolean): Edge[] {
  const ring = closed ? [...points, points[0] as Pt] : points
  return ring.slice(1).flatMap((q, k): Edge[] => {
    const p = ring[k] as Pt
    return p[0] === q[0] && p[1] === q[1] ? [] : [[p, q]]
  })
}

function doCross([p, q]: Edge, [r, s]: Edge): boolean {
  const side = (a: Pt, b: Pt, c: Pt) => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
  return side(p, q, r) * side(p, q, s) < 0 && side(r, s, p) * side(r, s, q) < 0
}

function distanceTo([a, b]: Edge, p: Pt): number {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]]
  const t = Math.min(1, Math.max(0, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / (dx * dx + dy * dy)))
  return Math.hypot(p[0] - a[0] - t * dx, p[1] - a[1] - t * dy)
}

describe('the trees of the independent reader pass over nothing that matters', () => {
  test('crossings of a closed chain with itself', () => {
    fc.assert(
      fc.property(points, (some) => {
        const edges = edgesOf(some, true)
        const pairs = edges.flatMap((one, i) => edges.slice(i + 2).filter((other) => doCross(one, other)))
        expect(crossings(chainOf(some, true))).toBe(pairs.length)
      }),
    )
  })

  test('crossings of two chains', () => {
    fc.assert(
      fc.property(points, points, (some, others) => {
        const pairs = edgesOf(some, true).flatMap((one) =>
          edgesOf(others, false).filter((other) => doCross(one, other)),
        )
        expect(crossings(chainOf(some, true), chainOf(others, false))).toBe(pairs.length)
      }),
    )
  })

  test('the distance to a chain, and whether there is one within a bound', () => {
    fc.assert(
      fc.property(points, coordinate, coordinate, fc.integer({ min: 1, max: 90 }), (some, x, y, bound) => {
        const edges = edgesOf(some, false)
        fc.pre(edges.length > 0)
        const least = Math.min(...edges.map((edge) => distanceTo(edge, [x, y])))
        const chain = chainOf(some, false)
        expect(distanceWithin(chain, x, y, 1000)).toBeCloseTo(least, 9)
        expect(distanceWithin(chain, x, y, bound) < Infinity).toBe(least < bound)
      }),
    )
  })

  test('area and inside', () => {
    const square = chainOf(
      [
        [0, 0],
        [10, 0],
        [10, 10],
        [0, 10],
      ],
      true,
    )
    expect(signedArea(square)).toBe(100)
    expect([isWithin(square, [5, 5]), isWithin(square, [15, 5])]).toEqual([true, false])
  })
})
