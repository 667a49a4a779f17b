import { Bezier } from 'bezier-js'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  type Cubic,
  cubic,
  curvatureAt,
  derivativeAt,
  isLine,
  line,
  pointAt,
  secondDerivativeAt,
} from '../../src/geometry/cubic.ts'
import { endOf, firstCubic, isClosed, lastCubic, polyline, startOf } from '../../src/geometry/path.ts'
import { distance, point } from '../../src/geometry/point.ts'
import { anyCubic, anyPoint, between, fairCubic } from './shapes.ts'

const bezier = (c: Cubic) => new Bezier([c.p0, c.p1, c.p2, c.p3].map(({ x, y }) => ({ x, y })))

describe('a cubic, evaluated', () => {
  it('has the points and derivatives that bezier-js has', () => {
    fc.assert(
      fc.property(anyCubic, between(0, 1), (c, t) => {
        const theirs = bezier(c)
        expect(distance(pointAt(c, t), theirs.get(t))).toBeLessThan(1e-9)
        expect(distance(derivativeAt(c, t), theirs.derivative(t))).toBeLessThan(1e-8)
        // Its second derivative is the difference of its first, which is a parabola: exact by central differences.
        const [a, b] = [derivativeAt(c, t - 0.5), derivativeAt(c, t + 0.5)]
        expect(distance(secondDerivativeAt(c, t), point(b.x - a.x, b.y - a.y))).toBeLessThan(1e-7)
        expect(pointAt(c, 0)).toBe(c.p0)
        expect(pointAt(c, 1)).toBe(c.p3)
      }),
    )
  })

  it('bends as the circle through three near points does', () => {
    fc.assert(
      fc.property(fairCubic, between(0.05, 0.95), (c, t) => {
        const h = 1e-4
        const [p, q, r] = [pointAt(c, t - h), pointAt(c, t), pointAt(c, t + h)]
        const doubled = (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x)
        const circle = (2 * doubled) / (distance(p, q) * distance(q, r) * distance(p, r))
        // Cancellation leaves about 1e-16·300² of the area, over sides of h·100 mm each.
        expect(Math.abs(curvatureAt(c, t) - circle)).toBeLessThan(1e-4)
      }),
    )
    // y = x² / 100 at its vertex: radius 50, turning anticlockwise.
    const parabola = cubic(point(-50, 25), point(-50 / 3, -25 / 3), point(50 / 3, -25 / 3), point(50, 25))
    expect(curvatureAt(parabola, 0.5)).toBeCloseTo(1 / 50, 12)
  })

  it('a line is run through at even speed, and told from a straight cubic that is not', () => {
    fc.assert(
      fc.property(anyPoint, anyPoint, between(0, 1), (a, b, t) => {
        const c = line(a, b)
        expect(isLine(c)).toBe(true)
        expect(distance(pointAt(c, t), point(a.x + t * (b.x - a.x), a.y + t * (b.y - a.y)))).toBeLessThan(1e-9)
      }),
    )
    expect(isLine(cubic(point(0, 0), point(1, 0), point(2, 0), point(9, 0)))).toBe(false)
    expect(isLine(cubic(point(0, 0), point(3, 1e-6), point(6, 0), point(9, 0)))).toBe(false)
  })
})

describe('the ends of a path', () => {
  it('are the points and cubics themselves; an empty path has none', () => {
    const path = polyline([point(0, 0), point(5, 0), point(9, 4)])
    expect(startOf(path)).toBe(path[0]?.p0)
    expect(endOf(path)).toBe(path[1]?.p3)
    expect(firstCubic(path)).toBe(path[0])
    expect(lastCubic(path)).toBe(path[1])
    for (const end of [startOf, endOf, firstCubic, lastCubic]) expect(() => end([])).toThrow(RangeError)
    expect(() => polyline([point(0, 0)])).toThrow(RangeError)
  })

  it('close it where they are less than a millionth of a mm apart', () => {
    const back = (gap: number) => isClosed(polyline([point(0, 0), point(5, 0), point(9, 4), point(gap, 0)]))
    expect([0, 0.9e-6, 1.1e-6, 1].map(back)).toEqual([true, true, false, false])
  })
})
