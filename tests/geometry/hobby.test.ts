import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { curvatureAt } from '../../src/geometry/cubic.ts'
import { hobbySpline, type Knot } from '../../src/geometry/hobby.ts'
import type { Path } from '../../src/geometry/path.ts'
import { tangentAt } from '../../src/geometry/path-length.ts'
import { distance, heading, type Point, point, scale, subtract, turnBetween, unit } from '../../src/geometry/point.ts'
import { anyMove, anyPoint, between } from './shapes.ts'

/** Angles between the chord and the curve at both ends of a cubic, as the spline's equations name them. */
function angles(path: Path, k: number): { theta: number; phi: number; length: number } {
  const c = path[k] as Path[number]
  const chord = subtract(c.p3, c.p0)
  return {
    theta: turnBetween(chord, tangentAt(c, 0)),
    phi: turnBetween(tangentAt(c, 1), chord),
    length: distance(c.p0, c.p3),
  }
}

const tensionOf = (knot: Knot | undefined) => 1 / (knot?.tension ?? 1)

/** Difference of the mock curvatures into and out of a knot between two cubics, times the length scale. */
function mockCurvatureGap(path: Path, before: number, after: number, knots: readonly (Knot | undefined)[]): number {
  const [kBefore, kHere, kAfter] = knots
  const a = angles(path, before)
  const b = angles(path, after)
  const here = tensionOf(kHere)
  const into = (tensionOf(kBefore) * (a.theta + a.phi) - 3 * a.phi) / (here * here * a.length)
  const out = (tensionOf(kAfter) * (b.theta + b.phi) - 3 * b.theta) / (here * here * b.length)
  return (into - out) * Math.min(a.length, b.length)
}

/** Hobby's velocity function, written out from the paper. */
function velocity(theta: number, phi: number): number {
  const a =
    Math.SQRT2 *
    (Math.sin(theta) - Math.sin(phi) / 16) *
    (Math.sin(phi) - Math.sin(theta) / 16) *
    (Math.cos(theta) - Math.cos(phi))
  return (2 + a) / (3 * (1 + ((Math.sqrt(5) - 1) / 2) * Math.cos(theta) + ((3 - Math.sqrt(5)) / 2) * Math.cos(phi)))
}

const knots = fc
  .array(fc.record({ at: anyPoint, tension: between(0.75, 1.5) }), { minLength: 3, maxLength: 8 })
  .filter((list) => list.every((k, i) => i === 0 || distance(k.at, (list[i - 1] as Knot).at) > 5))
  // Chords that turn nearly straight back make angles beyond half a turn, which cannot be read off the curve again.
  .filter((list) =>
    list.every((k, i) => {
      const a = list[i - 1]
      const b = list[i + 1]
      return !a || !b || Math.abs(turnBetween(subtract(k.at, a.at), subtract(b.at, k.at))) < 1.7
    }),
  )

describe('hobbySpline', () => {
  it('matches the control points published in the MetaPost manual for its five-point curve', () => {
    const path = hobbySpline(
      [point(0, 0), point(60, 40), point(40, 90), point(10, 70), point(30, 50)].map((at) => ({ at })),
    )
    const published = [
      [26.8, -1.8, 51.4, 14.6],
      [67.1, 61.0, 59.8, 84.6],
      [25.4, 94.0, 10.5, 84.5],
      [9.6, 58.8, 18.8, 49.6],
    ]
    path.forEach((c, k) => {
      const [x1, y1, x2, y2] = published[k] as [number, number, number, number]
      expect(distance(c.p1, point(x1, y1))).toBeLessThan(0.08)
      expect(distance(c.p2, point(x2, y2))).toBeLessThan(0.08)
    })
  })

  it('draws a quarter of a circle with the well-known handles 4/3·(√2 − 1)', () => {
    const [c] = hobbySpline([
      { at: point(1, 0), direction: point(0, 5) },
      { at: point(0, 1), direction: point(-2, 0) },
    ])
    expect(c?.p1.y).toBeCloseTo((4 / 3) * (Math.SQRT2 - 1), 12)
    expect(c?.p2.x).toBeCloseTo((4 / 3) * (Math.SQRT2 - 1), 12)
  })

  it('draws a circle through the corners of any regular polygon, within the known error of cubics', () => {
    for (const n of [4, 6, 8, 12]) {
      const path = hobbySpline(
        Array.from({ length: n }, (_, k) => ({ at: scale(heading((2 * Math.PI * k) / n), 100) })),
        { closed: true },
      )
      expect(path).toHaveLength(n)
      for (const c of path) {
        const handle = (4 / 3) * Math.tan(Math.PI / (2 * n)) * 100
        // Hobby's function is within 2e-3 of the handle of an arc, and on it at 90° exactly.
        expect(Math.abs(distance(c.p0, c.p1) - handle) / handle).toBeLessThan(n === 4 ? 1e-12 : 2e-3)
      }
    }
  })

  it('runs through its knots with continuous tangents and continuous mock curvature, open', () => {
    fc.assert(
      fc.property(knots, (list) => {
        const path = hobbySpline(list)
        list.forEach((knot, k) => {
          if (k < path.length) expect(path[k]?.p0).toEqual(knot.at)
          else expect(path[k - 1]?.p3).toEqual(knot.at)
        })
        for (let k = 1; k < path.length; k++) {
          const before = path[k - 1] as Path[number]
          const after = path[k] as Path[number]
          expect(Math.abs(turnBetween(tangentAt(before, 1), tangentAt(after, 0)))).toBeLessThan(1e-9)
          expect(Math.abs(mockCurvatureGap(path, k - 1, k, [list[k - 1], list[k], list[k + 1]]))).toBeLessThan(1e-9)
        }
      }),
    )
  })

  it('the same closed, also at the first knot', () => {
    fc.assert(
      fc.property(fc.array(between(50, 150), { minLength: 3, maxLength: 8 }), (radii) => {
        const n = radii.length
        const list = radii.map((r, k) => ({ at: scale(heading((2 * Math.PI * k) / n), r) }))
        const path = hobbySpline(list, { closed: true })
        for (let k = 0; k < n; k++) {
          const before = (k + n - 1) % n
          expect(
            Math.abs(turnBetween(tangentAt(path[before] as Path[number], 1), tangentAt(path[k] as Path[number], 0))),
          ).toBeLessThan(1e-9)
          expect(Math.abs(mockCurvatureGap(path, before, k, [undefined, undefined, undefined]))).toBeLessThan(1e-9)
        }
      }),
    )
  })

  it('gives each cubic the handles of the velocity function over the tension', () => {
    fc.assert(
      fc.property(knots, (list) => {
        const path = hobbySpline(list)
        path.forEach((c, k) => {
          const { theta, phi, length } = angles(path, k)
          const from = velocity(theta, phi) * tensionOf(list[k])
          const to = velocity(phi, theta) * tensionOf(list[k + 1])
          expect(distance(c.p0, c.p1)).toBeCloseTo(from * length, 7)
          expect(distance(c.p2, c.p3)).toBeCloseTo(to * length, 7)
        })
      }),
    )
  })

  it('keeps given directions, and they part the spline into independent runs', () => {
    const list: Knot[] = [
      { at: point(0, 0), direction: point(1, 1) },
      { at: point(40, 20) },
      { at: point(80, 0), direction: point(1, 0) },
      { at: point(140, 60) },
    ]
    const path = hobbySpline(list)
    expect(turnBetween(tangentAt(path[0] as Path[number], 0), point(1, 1))).toBeCloseTo(0, 12)
    expect(turnBetween(tangentAt(path[2] as Path[number], 0), point(1, 0))).toBeCloseTo(0, 12)
    const moved = hobbySpline([...list.slice(0, 3), { at: point(200, -30) }])
    expect(moved.slice(0, 2)).toEqual(path.slice(0, 2))
  })

  it('a given direction on a closed spline keeps the knots in the order they were given', () => {
    const list = [0, 1, 2, 3].map(
      (k): Knot => ({ at: scale(heading((k * Math.PI) / 2), 100), ...(k === 2 && { direction: point(0, -1) }) }),
    )
    const path = hobbySpline(list, { closed: true })
    list.forEach((knot, k) => {
      expect(path[k]?.p0).toEqual(knot.at)
    })
    // A circle's own direction changes nothing.
    const free = hobbySpline(
      list.map(({ at }) => ({ at })),
      { closed: true },
    )
    path.forEach((c, k) => {
      expect(distance(c.p1, free[k]?.p1 as Point)).toBeLessThan(0.5)
    })
  })

  it('curl 0 ends straight to first order, curl 1 with nearly the curvature of its neighbour', () => {
    const list = [{ at: point(0, 0) }, { at: point(50, 30) }, { at: point(120, 20) }]
    const straight = hobbySpline(list, { curl: 0 })
    const { theta, phi } = angles(straight, 0)
    // Mock curvature at a free end: (θ + φ) − 3θ, zero for curl 0.
    expect(theta + phi - 3 * theta).toBeCloseTo(0, 12)
    const arc = hobbySpline(list)
    expect(curvatureAt(arc[0] as Path[number], 1e-6) / curvatureAt(arc[0] as Path[number], 1)).toBeGreaterThan(0.5)
  })

  it('two free knots are joined by a straight line, at any curl and tension', () => {
    for (const curl of [0, 1, 2]) {
      const [c, ...rest] = hobbySpline([{ at: point(10, 20) }, { at: point(40, 60), tension: 2 }], { curl })
      expect(rest).toEqual([])
      expect(distance(c?.p1 as Point, point(20, 20 + 40 / 3))).toBeLessThan(1e-9)
      expect(distance(c?.p2 as Point, point(35, 60 - 20 / 3))).toBeLessThan(1e-9)
    }
  })

  it('moves with its knots', () => {
    fc.assert(
      fc.property(knots, anyMove, (list, move) => {
        const there = hobbySpline(list.map((k) => ({ ...k, at: move(k.at) })))
        hobbySpline(list).forEach((c, k) => {
          expect(distance(move(c.p1), there[k]?.p1 as Point)).toBeLessThan(1e-6)
          expect(distance(move(c.p2), there[k]?.p2 as Point)).toBeLessThan(1e-6)
        })
      }),
    )
  })

  it('throws on knots that lie on each other and on too few', () => {
    expect(() => hobbySpline([{ at: point(0, 0) }, { at: point(0, 0) }])).toThrow(RangeError)
    expect(() => hobbySpline([{ at: point(0, 0) }])).toThrow(RangeError)
    expect(() => hobbySpline([{ at: point(0, 0) }, { at: point(1, 0) }], { closed: true })).toThrow(RangeError)
    expect(unit(point(3, 4))).toEqual(point(0.6, 0.8))
  })
})
