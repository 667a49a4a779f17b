import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Cubic, cubic, curvatureAt, line, moveCubic, reverseCubic } from '../../src/geometry/cubic.ts'
import { curvatureExtrema, smallestRadius } from '../../src/geometry/curvature-extrema.ts'
import { distance, point } from '../../src/geometry/point.ts'
import { anyCubic, anyMove, fairCubic } from './shapes.ts'

/** Where sampled curvature turns from rising to falling or back. */
function sampledTurns(c: Cubic, n: number): number[] {
  const k = Array.from({ length: n + 1 }, (_, i) => curvatureAt(c, i / n))
  const turns: number[] = []
  for (let i = 1; i < n; i++) {
    const [a, b, d] = k.slice(i - 1, i + 2) as [number, number, number]
    if ((b - a) * (d - b) < 0) turns.push(i / n)
  }
  return turns
}

/** y = a·x² over [−u, v], as a cubic. */
function parabola(a: number, u: number, v: number): Cubic {
  const third = (u + v) / 3
  return cubic(
    point(-u, a * u * u),
    point(-u + third, a * u * u - 2 * a * u * third),
    point(v - third, a * v * v - 2 * a * v * third),
    point(v, a * v * v),
  )
}

describe('curvatureExtrema', () => {
  it('are where the curvature, sampled, stops rising or falling', () => {
    fc.assert(
      fc.property(fairCubic, (c) => {
        // On a straight line the samples show nothing but rounding.
        fc.pre(smallestRadius(c) < 1e6)
        const found = curvatureExtrema(c)
        expect(found.length).toBeLessThanOrEqual(5)
        const turns = sampledTurns(c, 2000)
        // Every turn that the samples show is found; two of them within one sample they cannot show.
        for (const t of turns) expect(found.some((s) => Math.abs(s - t) < 1.5e-3)).toBe(true)
        found.forEach((s, k) => {
          const apart = Math.min(...found.filter((_, i) => i !== k).map((other) => Math.abs(s - other)), s, 1 - s)
          if (apart < 5e-3) return
          expect(turns.some((t) => Math.abs(s - t) < 1.5e-3)).toBe(true)
        })
      }),
      { numRuns: 300 },
    )
  })

  it('the vertex of a parabola, where the radius is 1 / 2a', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-3, max: 1, noNaN: true }), fc.integer({ min: 5, max: 200 }), (a, v) => {
        const c = parabola(a, 30, v)
        const [t, ...more] = curvatureExtrema(c)
        expect(more).toEqual([])
        expect(t).toBeCloseTo(30 / (30 + v), 9)
        expect(smallestRadius(c) * 2 * a).toBeCloseTo(1, 9)
      }),
    )
  })

  it('no place of any cubic bends more than the smallest radius says', () => {
    fc.assert(
      fc.property(anyCubic, (c) => {
        const most = 1 / smallestRadius(c)
        // What is straight but for rounding has the curvature of its rounding, the more the smaller the cubic.
        const size = distance(c.p0, c.p1) + distance(c.p1, c.p2) + distance(c.p2, c.p3)
        const rounding = 1e-12 * Math.max(1, 1 / size)
        for (let k = 1; k < 200; k++) {
          const here = Math.abs(curvatureAt(c, k / 200))
          if (Number.isFinite(here)) expect(here).toBeLessThanOrEqual(most * (1 + 1e-6) + rounding)
        }
      }),
      { numRuns: 300 },
    )
  })

  it('move and turn with their cubic', () => {
    fc.assert(
      fc.property(fairCubic, anyMove, (c, move) => {
        // A line that is straight but for rounding has those of its rounding, which a move changes.
        fc.pre(smallestRadius(c) < 1e6)
        const found = curvatureExtrema(c)
        // Extrema that are about to merge may do so by rounding.
        fc.pre(found.every((t, k) => k === 0 || t - (found[k - 1] as number) > 1e-3))
        const back = curvatureExtrema(reverseCubic(c))
        const moved = curvatureExtrema(moveCubic(c, move))
        const scaled = curvatureExtrema(moveCubic(c, ({ x, y }) => point(1000 * x, 1000 * y)))
        for (const other of [back.map((t) => 1 - t).reverse(), moved, scaled]) {
          expect(other).toHaveLength(found.length)
          other.forEach((t, k) => {
            expect(t).toBeCloseTo(found[k] as number, 6)
          })
        }
      }),
    )
  })

  it('a straight line has none, the cubic nearest to a quarter of a circle three', () => {
    expect(curvatureExtrema(line(point(0, 0), point(5, 5)))).toEqual([])
    expect(smallestRadius(line(point(0, 0), point(5, 5)))).toBe(Number.POSITIVE_INFINITY)
    const handle = (4 / 3) * (Math.SQRT2 - 1)
    const quarter = cubic(point(100, 0), point(100, 100 * handle), point(100 * handle, 100), point(0, 100))
    const [a, b, d, ...more] = curvatureExtrema(quarter)
    expect(more).toEqual([])
    expect(b).toBeCloseTo(0.5, 12)
    expect((a as number) + (d as number)).toBeCloseTo(1, 12)
    // Its radius is off by 0.6 % at worst.
    expect(Math.abs(smallestRadius(quarter) - 100)).toBeLessThan(1)
    // A cusp bends without end, and is no extremum: x = s², y = s³ on [−1, 1].
    const cusp = cubic(point(1, -1), point(-1 / 3, 1), point(-1 / 3, -1), point(1, 1))
    expect(smallestRadius(cusp)).toBe(0)
    expect(curvatureExtrema(cusp)).toEqual([])
    expect(smallestRadius(cubic(point(0, 0), point(0, 0), point(5, 5), point(10, 0)))).toBe(0)
    const speck = cubic(point(1, 1), point(1, 1), point(1, 1), point(1, 1))
    expect(curvatureExtrema(speck)).toEqual([])
  })
})
