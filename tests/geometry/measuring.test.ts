import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { area } from '../../src/geometry/area.ts'
import { bounds, boxesMeet, cubicBounds, joinBoxes } from '../../src/geometry/bounds.ts'
import { contains, windingNumber } from '../../src/geometry/contains.ts'
import { type Cubic, cubic, curvatureAt, line, moveCubic, pointAt } from '../../src/geometry/cubic.ts'
import { flatten } from '../../src/geometry/flatten.ts'
import { curvatureChanges, curvatureSigns, inflections } from '../../src/geometry/inflections.ts'
import { alongOf, nearest, nearestOnCubic, nearestParameter } from '../../src/geometry/nearest.ts'
import { movePath, type Path, polyline, reversePath } from '../../src/geometry/path.ts'
import { pathLength, pointAlong } from '../../src/geometry/path-length.ts'
import { distance, heading, type Point, point, scale } from '../../src/geometry/point.ts'
import { roots } from '../../src/geometry/roots.ts'
import { inTurn, mirrorAcross, mirrorPathX, mirrorX, shift, turn } from '../../src/geometry/transform.ts'
import { anyCubic, anyMove, anyPoint, between, circle, roundOutline } from './shapes.ts'

/** The polygon through many points of a path: the reference that knows no cubics. */
const dense = (path: Path, n = 400) => path.flatMap((c) => Array.from({ length: n }, (_, k) => pointAt(c, k / n)))

function shoelace(points: readonly Point[]): number {
  let sum = 0
  points.forEach((p, k) => {
    const q = points[(k + 1) % points.length] as Point
    sum += p.x * q.y - q.x * p.y
  })
  return sum / 2
}

/** Even–odd ray casting on a polygon. */
function insidePolygon(points: readonly Point[], p: Point): boolean {
  let inside = false
  points.forEach((a, k) => {
    const b = points[(k + 1) % points.length] as Point
    if (a.y > p.y !== b.y > p.y && p.x < a.x + ((p.y - a.y) / (b.y - a.y)) * (b.x - a.x)) inside = !inside
  })
  return inside
}

describe('roots', () => {
  it('finds the roots a polynomial was made from', () => {
    const root = fc.integer({ min: -20, max: 120 }).map((n) => n / 100)
    fc.assert(
      fc.property(fc.uniqueArray(root, { minLength: 1, maxLength: 5 }), (list) => {
        let c = [1]
        for (const r of list) c = [...c.map((v) => -r * v), 0].map((v, k) => v + (k > 0 ? (c[k - 1] as number) : 0))
        const inside = list.filter((r) => r >= 0 && r <= 1).sort((a, b) => a - b)
        const found = roots(c).filter((t) => inside.some((r) => Math.abs(r - t) < 1e-6))
        for (const r of inside) {
          // A root at the very end may fall out by rounding.
          if (r > 0 && r < 1) expect(found.some((t) => Math.abs(t - r) < 1e-9)).toBe(true)
        }
        for (const t of roots(c)) expect(list.some((r) => Math.abs(r - t) < 1e-7)).toBe(true)
      }),
    )
  })

  it('counts a touch once, knows constants and lost leading terms', () => {
    expect(roots([0.25, -1, 1])).toEqual([0.5])
    expect(roots([0, 0, 0])).toEqual([])
    expect(roots([5])).toEqual([])
    expect(roots([-0.5, 1, 1e-30])).toEqual([0.5])
    expect(roots([0, 1])).toEqual([0])
  })
})

describe('bounds', () => {
  it('are as tight as dense sampling, and never tighter', () => {
    fc.assert(
      fc.property(anyCubic, (c) => {
        const box = cubicBounds(c)
        const points = [...dense([c], 2000), c.p3]
        const xs = points.map((p) => p.x)
        const ys = points.map((p) => p.y)
        for (const [side, sampled] of [
          [-box.left, -Math.min(...xs)],
          [box.right, Math.max(...xs)],
          [-box.bottom, -Math.min(...ys)],
          [box.top, Math.max(...ys)],
        ] as const) {
          expect(side).toBeGreaterThanOrEqual(sampled - 1e-9)
          // Between samples h apart an extremum rises at most |C″|·h²/8 above them.
          expect(side - sampled).toBeLessThan(4000 / 8 / 2000 ** 2 + 1e-3)
        }
      }),
    )
  })

  it('join, and hold a circle exactly', () => {
    const { left, right, bottom, top } = bounds(circle(100))
    for (const side of [-left, right, -bottom, top]) expect(side).toBeCloseTo(100, 9)
    const a = bounds([line(point(0, 0), point(1, 2))])
    expect(joinBoxes(a, bounds([line(point(-5, 1), point(0, 1))]))).toEqual({ left: -5, bottom: 0, right: 1, top: 2 })
    expect(() => bounds([])).toThrow(RangeError)
  })

  it('meet where they share a point, or miss each other by rounding', () => {
    const side = fc.tuple(between(-20, 20), between(0, 20))
    const box = fc.tuple(side, side).map(([[left, wide], [bottom, high]]) => ({
      left,
      bottom,
      right: left + wide,
      top: bottom + high,
    }))
    fc.assert(
      fc.property(box, box, (a, b) => {
        // The point of a that is nearest to the middle of b, and then the point of b nearest to that: the same or none.
        const clamp = (v: number, low: number, high: number) => Math.min(Math.max(v, low), high)
        const x = clamp((b.left + b.right) / 2, a.left, a.right)
        const y = clamp((b.bottom + b.top) / 2, a.bottom, a.top)
        const off = Math.max(Math.abs(x - clamp(x, b.left, b.right)), Math.abs(y - clamp(y, b.bottom, b.top)))
        fc.pre(off === 0 || off > 2e-6)
        expect(boxesMeet(a, b)).toBe(off === 0)
        expect(boxesMeet(b, a)).toBe(off === 0)
      }),
    )
    const unit = { left: 0, bottom: 0, right: 1, top: 1 }
    expect(boxesMeet(unit, { ...unit, left: 1 + 5e-7, right: 2 })).toBe(true)
    expect(boxesMeet(unit, { ...unit, left: 1 + 2e-6, right: 2 })).toBe(false)
  })
})

describe('area', () => {
  it('is exact on polygons and parabolas', () => {
    const triangle = polyline([point(0, 0), point(10, 0), point(0, 4), point(0, 0)])
    expect(area(triangle)).toBeCloseTo(20, 12)
    expect(area(reversePath(triangle))).toBeCloseTo(-20, 12)
    // Under y = x (6 − x) on [0, 6]: 36; the cubic is the parabola raised.
    const cap = [line(point(0, 0), point(6, 0)), cubic(point(6, 0), point(4, 12), point(2, 12), point(0, 0))]
    expect(area(cap)).toBeCloseTo(36, 12)
    // An open path is closed by its chord; far away no digits are lost.
    expect(area([cap[1] as Cubic])).toBeCloseTo(36, 12)
    expect(area(movePath(cap, shift(point(1e6, -1e6))))).toBeCloseTo(36, 6)
  })

  it('agrees with the polygon through many points and ignores moves', () => {
    fc.assert(
      fc.property(roundOutline(50, 150), anyMove, (outline, move) => {
        const exact = area(outline)
        expect(Math.abs(exact - shoelace(dense(outline, 1000)))).toBeLessThan(1e-5 * Math.abs(exact))
        expect(Math.abs(area(movePath(outline, move)) - exact)).toBeLessThan(1e-6)
      }),
    )
  })
})

describe('inflections', () => {
  it('are where the curvature, sampled, changes sign', () => {
    fc.assert(
      fc.property(anyCubic, (c) => {
        const found = inflections(c)
        expect(found.length).toBeLessThanOrEqual(2)
        for (const t of found) {
          if (t > 1e-5 && t < 1 - 1e-5) expect(curvatureAt(c, t - 1e-5) * curvatureAt(c, t + 1e-5)).toBeLessThan(1e-30)
        }
        // Between them no sample has the other sign.
        const stops = [0, ...found, 1]
        for (let k = 1; k < stops.length; k++) {
          const a = stops[k - 1] as number
          const b = stops[k] as number
          if (b - a < 1e-3) continue
          const signs = new Set<number>()
          for (let i = 1; i < 20; i++) {
            const value = curvatureAt(c, a + ((b - a) * i) / 20)
            if (Math.abs(value) > 1e-9) signs.add(Math.sign(value))
          }
          expect(signs.size).toBeLessThanOrEqual(1)
        }
      }),
    )
  })

  it('a cusp is none: the curve turns back, but bends the same way before and after', () => {
    const cusp = cubic(point(0, 0), point(100, 100), point(0, 100), point(100, 0))
    expect(curvatureAt(cusp, 0.4) * curvatureAt(cusp, 0.6)).toBeGreaterThan(0)
    expect(inflections(cusp)).toEqual([])
    fc.assert(
      fc.property(anyMove, (move) => {
        expect(inflections(moveCubic(cusp, move))).toEqual([])
      }),
    )
  })

  it('counts changes inside cubics and at joints, but not the noise on straight pieces', () => {
    const s = cubic(point(0, 0), point(60, 5), point(60, 110), point(120, 120))
    expect(curvatureChanges([s])).toBe(1)
    const up = cubic(point(0, 0), point(10, 0), point(20, 5), point(30, 15))
    const down = cubic(point(30, 15), point(40, 25), point(50, 30), point(60, 30))
    expect(curvatureChanges([up, down])).toBe(1)
    expect(curvatureSigns([up, down])).toEqual([1, -1])
    const noisy = cubic(point(60, 30), point(70, 30 + 1e-9), point(80, 30 - 1e-9), point(90, 30))
    expect(curvatureChanges([up, down, noisy])).toBe(1)
    expect(curvatureChanges([line(point(0, 0), point(5, 0)), line(point(5, 0), point(9, 1))])).toBe(0)
    // Left corner, right corner: one change.
    expect(curvatureChanges(polyline([point(0, 0), point(5, 0), point(9, 4), point(15, 4)]))).toBe(1)
    expect(curvatureSigns(polyline([point(0, 0), point(5, 0), point(9, 4), point(15, 4)]))).toEqual([1, -1])
    expect(curvatureChanges(circle(80))).toBe(0)
    expect(inflections(line(point(0, 0), point(5, 5)))).toEqual([])
  })
})

describe('flatten', () => {
  it('stays within the tolerance at every tolerance, measured from the curve', () => {
    fc.assert(
      fc.property(anyCubic, fc.constantFrom(1, 0.1, 0.01), (c, tolerance) => {
        const points = flatten([c], { tolerance })
        expect(points[0]).toBe(c.p0)
        expect(points[points.length - 1]).toBe(c.p3)
        const chain = polyline(points)
        for (const p of dense([c], 100))
          expect(nearestParameter(chain, p).distance).toBeLessThanOrEqual(tolerance + 1e-9)
      }),
      { numRuns: 60 },
    )
  })

  it('leaves lines alone and keeps joints', () => {
    expect(flatten(polyline([point(0, 0), point(9, 0), point(9, 9)]))).toEqual([point(0, 0), point(9, 0), point(9, 9)])
    expect(() => flatten([line(point(0, 0), point(1, 0))], { tolerance: 0 })).toThrow(RangeError)
  })
})

describe('nearest', () => {
  it('is no farther than the nearest of a thousand samples, and lies on the path where it says', () => {
    fc.assert(
      fc.property(anyCubic, anyCubic, anyPoint, (a, b, p) => {
        const path = [a, { ...b, p0: a.p3 }]
        const found = nearest(path, p)
        const sampled = Math.min(...dense(path, 500).map((q) => distance(p, q)))
        expect(found.distance).toBeLessThanOrEqual(sampled + 1e-9)
        expect(distance(pointAt(path[found.index] as Cubic, found.t), found.at)).toBeLessThan(1e-9)
        expect(distance(found.at, p)).toBeCloseTo(found.distance, 9)
        // From the true nearest point no sample is nearer than the distance between samples allows.
        expect(sampled - found.distance).toBeLessThan(4)
        const { along, ...place } = found
        expect(nearestParameter(path, p)).toEqual(place)
        expect(Math.min(...path.map((c) => nearestOnCubic(c, p).distance))).toBe(found.distance)
      }),
    )
  })

  it('gives back the length along that a point of the path was taken at', () => {
    fc.assert(
      fc.property(roundOutline(80, 120), between(0.01, 0.99), (outline, share) => {
        const along = share * pathLength(outline)
        const p = pointAlong(outline, along)
        const found = nearest(outline, p)
        expect(found.distance).toBeLessThan(1e-6)
        expect(found.along).toBeCloseTo(along, 4)
        expect(alongOf(outline, found)).toBe(found.along)
      }),
    )
  })

  it('of a point on a cubic is that point to rounding, also where the cubic nearly stands still', () => {
    fc.assert(
      fc.property(anyCubic, between(0, 1), fc.constantFrom(1, 1e-2, 1e-3, 1e-4), (c, share, near) => {
        const legs = [distance(c.p0, c.p1), distance(c.p1, c.p2), distance(c.p2, c.p3)]
        const fair = legs.every((leg) => leg === 0 || leg > 1) && legs.some((leg) => leg > 1)
        for (const t of [share * near, 1 - share * near]) {
          const p = pointAt(c, t)
          expect(nearestOnCubic(c, p).distance).toBeLessThan(fair ? 1e-11 : 1e-7)
        }
      }),
      { numRuns: 500 },
    )
  })

  it('knows a circle, and a cubic that is a point', () => {
    expect(nearest(circle(100), point(0, 150)).distance).toBeCloseTo(50, 6)
    expect(nearest([cubic(point(1, 1), point(1, 1), point(1, 1), point(1, 1))], point(4, 5)).distance).toBe(5)
    const still = cubic(point(0, -233.243), point(0, -233.243), point(0, 0.011), point(0, 0.011))
    expect(nearestOnCubic(still, point(1, -116.616)).distance).toBeCloseTo(1, 12)
    expect(() => nearest([], point(0, 0))).toThrow(RangeError)
  })
})

describe('contains', () => {
  it('agrees with ray casting on the polygon through many points', () => {
    fc.assert(
      fc.property(roundOutline(60, 160), anyPoint, (outline, q) => {
        const p = scale(q, 0.6)
        fc.pre(nearestParameter(outline, p).distance > 0.1)
        expect(contains(outline, p)).toBe(insidePolygon(dense(outline, 200), p))
        expect(contains(reversePath(outline), p)).toBe(contains(outline, p))
      }),
    )
  })

  it('counts windings, and answers on the line itself too', () => {
    const twice = [...circle(50), ...circle(50)]
    expect(windingNumber(twice, point(3, 4))).toBe(2)
    expect(windingNumber(reversePath(circle(50)), point(3, 4))).toBe(-1)
    expect(windingNumber(circle(50), point(60, 0))).toBe(0)
    const square = polyline([point(0, 0), point(1, 0), point(1, 1), point(0, 1), point(0, 0)])
    for (const p of [point(0, 0), point(0.5, 0), point(1, 0.5)]) expect([0, 1]).toContain(windingNumber(square, p))
    expect(windingNumber(square, point(Number.NaN, 0))).toBeNaN()
    const speck = cubic(point(1, 1), point(1, 1), point(1, 1), point(1, 1))
    expect(windingNumber([speck], point(1, 1))).toBe(0)
  })
})

describe('moves', () => {
  it('keep lengths; mirrors turn an outline over, and reversed it is anticlockwise again', () => {
    fc.assert(
      fc.property(roundOutline(50, 150), between(-200, 200), (outline, axis) => {
        const mirrored = mirrorPathX(outline, axis)
        expect(area(mirrored)).toBeCloseTo(area(outline), 6)
        expect(area(movePath(outline, mirrorX(axis)))).toBeCloseTo(-area(outline), 6)
        expect(pathLength(mirrored)).toBeCloseTo(pathLength(outline), 5)
        expect(distance(mirrorX(axis)(mirrorX(axis)(point(3, 4))), point(3, 4))).toBeLessThan(1e-9)
      }),
    )
  })

  it('mirror across any line, turn and shift in turn', () => {
    const p = point(7, -2)
    const across = mirrorAcross(point(1, 1), point(4, 5))
    expect(distance(across(across(p)), p)).toBeLessThan(1e-12)
    expect(distance(across(point(4, 5)), point(4, 5))).toBeLessThan(1e-12)
    const along = heading(Math.atan2(4, 3))
    const middle = scale(point(p.x + across(p).x, p.y + across(p).y), 0.5)
    expect((middle.x - 1) * along.y - (middle.y - 1) * along.x).toBeCloseTo(0, 12)
    expect(distance(inTurn(turn(point(0, 0), Math.PI / 2), shift(point(1, 1)))(point(2, 0)), point(1, 3))).toBeLessThan(
      1e-12,
    )
    expect(() => mirrorAcross(p, p)).toThrow(RangeError)
  })
})
