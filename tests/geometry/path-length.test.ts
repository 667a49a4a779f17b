import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  type Cubic,
  cubic,
  line,
  moveCubic,
  pointAt,
  reverseCubic,
  splitCubic,
  subCubic,
} from '../../src/geometry/cubic.ts'
import { endOf, polyline, reversePath, startOf } from '../../src/geometry/path.ts'
import {
  directionAlong,
  locate,
  pathLength,
  pointAlong,
  splitPath,
  subPath,
  tangentAt,
} from '../../src/geometry/path-length.ts'
import { pathBetween, pathFrom, pathUntil } from '../../src/geometry/path-part.ts'
import { cross, distance, dot, point } from '../../src/geometry/point.ts'
import { anyCubic, anyMove, between, fairCubic, roundOutline } from './shapes.ts'

describe('cubics', () => {
  it('cut and put together again are the same curve', () => {
    fc.assert(
      fc.property(anyCubic, between(0, 1), between(0, 1), (c, t, s) => {
        const [a, b] = splitCubic(c, t)
        expect(a.p3).toBe(b.p0)
        expect(a.p0).toBe(c.p0)
        expect(b.p3).toBe(c.p3)
        expect(distance(pointAt(a, s), pointAt(c, s * t))).toBeLessThan(1e-9)
        expect(distance(pointAt(b, s), pointAt(c, t + s * (1 - t)))).toBeLessThan(1e-9)
        const [low, high] = t < s ? [t, s] : [s, t]
        expect(distance(pointAt(subCubic(c, low, high), 0.5), pointAt(c, (low + high) / 2))).toBeLessThan(1e-8)
      }),
    )
  })

  it('are run through the other way and moved with their points', () => {
    fc.assert(
      fc.property(anyCubic, anyMove, between(0, 1), (c, move, t) => {
        expect(distance(pointAt(reverseCubic(c), t), pointAt(c, 1 - t))).toBeLessThan(1e-9)
        expect(distance(pointAt(moveCubic(c, move), t), move(pointAt(c, t)))).toBeLessThan(1e-9)
      }),
    )
  })

  it('have a tangent at ends with coincident handles: the direction just inside', () => {
    fc.assert(
      fc.property(anyCubic, fc.constantFrom(0, 1), (c, t) => {
        // A handle hardly off its end turns the curve just inside it: there is nothing to compare.
        const leg = t === 0 ? distance(c.p0, c.p1) : distance(c.p2, c.p3)
        fc.pre((leg === 0 || leg > 1) && distance(c.p0, c.p3) > 1)
        const tangent = tangentAt(c, t)
        const just = tangentAt(c, t === 0 ? 1e-7 : 1 - 1e-7)
        expect(Math.hypot(tangent.x, tangent.y)).toBeCloseTo(1, 12)
        expect(Math.abs(cross(tangent, just))).toBeLessThan(1e-2)
        expect(dot(tangent, just)).toBeGreaterThan(0.99)
      }),
    )
    expect(() => tangentAt(cubic(point(1, 1), point(1, 1), point(1, 1), point(1, 1)), 0)).toThrow(RangeError)
  })
})

describe('paths by length', () => {
  const path = roundOutline(60, 200)

  it('a place found by length lies at that length', () => {
    fc.assert(
      fc.property(path, between(0, 1), (outline, share) => {
        const along = share * pathLength(outline)
        const { index, t } = locate(outline, along)
        const before = [...outline.slice(0, index), subCubic(outline[index] as Cubic, 0, t)]
        expect(Math.abs((t > 0 ? pathLength(before) : pathLength(outline.slice(0, index))) - along)).toBeLessThan(2e-6)
      }),
    )
  })

  it('lengths add up under cutting, reversing and taking parts', () => {
    fc.assert(
      fc.property(path, between(0.05, 0.95), between(0.05, 0.95), (outline, s, t) => {
        const whole = pathLength(outline)
        const [a, b] = splitPath(outline, s * whole)
        expect(Math.abs(pathLength(a) + pathLength(b) - whole)).toBeLessThan(2e-6)
        expect(startOf(b)).toEqual(endOf(a))
        fc.pre(Math.abs(s - t) > 1e-3)
        const [low, high] = s < t ? [s, t] : [t, s]
        const part = subPath(outline, low * whole, high * whole)
        expect(Math.abs(pathLength(part) - (high - low) * whole)).toBeLessThan(2e-6)
        const back = reversePath(outline)
        expect(distance(pointAlong(back, whole - s * whole), pointAlong(outline, s * whole))).toBeLessThan(2e-6)
        const there = directionAlong(outline, s * whole)
        const again = directionAlong(back, whole - s * whole)
        expect(dot(there, again)).toBeLessThan(-0.999)
      }),
    )
  })

  it('cut at places by parameter: until, from and between make up the whole', () => {
    fc.assert(
      fc.property(path, between(0, 1), between(0, 1), (outline, s, t) => {
        const whole = pathLength(outline)
        fc.pre(Math.abs(s - t) > 1e-3)
        const a = locate(outline, s * whole)
        const b = locate(outline, t * whole)
        const length = (p: readonly unknown[] & Parameters<typeof pathLength>[0]) => (p.length > 0 ? pathLength(p) : 0)
        expect(length(pathUntil(outline, a)) + length(pathFrom(outline, a))).toBeCloseTo(whole, 5)
        const between = length(pathBetween(outline, a, b))
        expect(between).toBeCloseTo(s < t ? (t - s) * whole : (1 - s + t) * whole, 5)
      }),
    )
  })

  it('a place off the path, or a cut at its end, is a mistake', () => {
    const square = polyline([point(0, 0), point(10, 0), point(10, 10)])
    expect(() => locate(square, -0.1)).toThrow(RangeError)
    expect(() => locate(square, 20.1)).toThrow(RangeError)
    expect(() => splitPath(square, 0)).toThrow(RangeError)
    expect(() => subPath(square, 5, 5)).toThrow(RangeError)
    expect(() => polyline([point(0, 0)])).toThrow(RangeError)
    expect(locate(square, 20)).toEqual({ index: 1, t: 1 })
    expect(pathLength([line(point(0, 0), point(3, 4))])).toBe(5)
  })

  it('untouched cubics stay the same objects', () => {
    fc.assert(
      fc.property(fairCubic, fairCubic, (a, b) => {
        const joined = [a, moveCubic(b, (p) => point(p.x + a.p3.x - b.p0.x, p.y + a.p3.y - b.p0.y))]
        const [first, rest] = splitPath(joined, pathLength([a]) / 2)
        expect(rest[1]).toBe(joined[1])
        expect(first).toHaveLength(1)
      }),
    )
  })
})
