import { differenceD, EndType, FillRule, inflatePathsD, JoinType, type PathD, xorD } from 'clipper2-ts'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { area } from '../../src/geometry/area.ts'
import { contains } from '../../src/geometry/contains.ts'
import { crossings, selfCrossings } from '../../src/geometry/crossings.ts'
import { type Cubic, cubic, line, pointAt } from '../../src/geometry/cubic.ts'
import { flatten } from '../../src/geometry/flatten.ts'
import { hobbySpline } from '../../src/geometry/hobby.ts'
import { nearestParameter } from '../../src/geometry/nearest.ts'
import { type Corner, type OutlineEdge, offsetOutline } from '../../src/geometry/offset-outline.ts'
import { endOf, type Path, polyline, startOf } from '../../src/geometry/path.ts'
import { pathLength, tangentAt } from '../../src/geometry/path-length.ts'
import {
  add,
  cross,
  distance,
  dot,
  heading,
  type Point,
  point,
  rightOf,
  scale,
  subtract,
  turnBetween,
  unit,
} from '../../src/geometry/point.ts'
import { mirrorAcross } from '../../src/geometry/transform.ts'
import { between, roundOutline } from './shapes.ts'

const CLIPPER_DIGITS = 5

const polygon = (path: Path, tolerance = 1e-3): PathD => flatten(path, { tolerance }).slice(0, -1)

const areaOf = (paths: readonly PathD[]) =>
  paths.reduce((sum, p) => sum + p.reduce((s, a, k) => s + cross(a, p[(k + 1) % p.length] as Point) / 2, 0), 0)

/** The outer boundaries of clipper's answer: holes, which a cutting line does not have, are left out. */
const outer = (paths: readonly PathD[]) => [...paths].sort((a, b) => areaOf([b]) - areaOf([a])).slice(0, 1)

function expectSound(result: Path, edges: readonly OutlineEdge[]): void {
  expect(startOf(result)).toEqual(endOf(result))
  for (let k = 1; k < result.length; k++) expect(result[k]?.p0).toEqual(result[k - 1]?.p3)
  expect(selfCrossings(result).crossings.filter((c) => c.kind === 'cross')).toEqual([])
  const outline = edges.flatMap((e) => e.path)
  expect(crossings(result, outline).crossings.filter((c) => c.kind === 'cross')).toEqual([])
  expect(area(result)).toBeGreaterThanOrEqual(area(outline) - 1e-6)
}

/** Corners on rays about the origin, joined by lines or bulging curves: any of the corners may be hollow. */
const cornered = fc
  .array(fc.record({ radius: between(60, 160), bulge: between(-0.25, 0.25), curved: fc.boolean() }), {
    minLength: 4,
    maxLength: 8,
  })
  .map((list) => {
    const corners = list.map(({ radius }, k) => scale(heading((2 * Math.PI * k) / list.length), radius))
    return corners.map((a, k): Path => {
      const b = corners[(k + 1) % corners.length] as Point
      const { bulge, curved } = list[k] as (typeof list)[number]
      if (!curved) return [line(a, b)]
      const chord = subtract(b, a)
      const off = scale(rightOf(chord), bulge)
      return [cubic(a, add(add(a, scale(chord, 1 / 3)), off), add(add(a, scale(chord, 2 / 3)), off), b)]
    })
  })
  .filter((edges) => selfCrossings(edges.flat()).crossings.length === 0)

/** The neighbours of an edge, drawn on straight from its ends. */
function drawnOn(edges: readonly OutlineEdge[], k: number): Path {
  const before = (edges[(k + edges.length - 1) % edges.length] as OutlineEdge).path[0] as Cubic
  const after = (edges[(k + 1) % edges.length] as OutlineEdge).path[0] as Cubic
  return [
    line(before.p3, add(before.p3, scale(unit(subtract(before.p3, before.p2)), 100))),
    line(after.p0, add(after.p0, scale(unit(subtract(after.p0, after.p1)), 100))),
  ]
}

/** The turns at the corners of an outline, radians. */
function turnsOf(paths: readonly Path[]): number[] {
  return paths.map((path, k) => {
    const next = paths[(k + 1) % paths.length] as Path
    return turnBetween(tangentAt(path[path.length - 1] as Cubic, 1), tangentAt(next[0] as Cubic, 0))
  })
}

const edgesOf = (paths: readonly Path[], distance: number): OutlineEdge[] => paths.map((path) => ({ path, distance }))

describe('offsetOutline with one distance, beside clipper', () => {
  const compare = (paths: readonly Path[], d: number, join: JoinType) => {
    const edges = edgesOf(paths, d)
    const result = offsetOutline(edges)
    expectSound(result, edges)
    const theirs = outer(inflatePathsD([polygon(paths.flat())], d, join, EndType.Polygon, 2, CLIPPER_DIGITS))
    const apart = xorD([polygon(result)], theirs, FillRule.NonZero, CLIPPER_DIGITS)
    // Within the tolerance all along, and the flattening of both. Holes count negative: what is apart is a thin ring.
    expect(Math.abs(areaOf(apart))).toBeLessThan(0.015 * pathLength(result))
  }

  it('agrees on smooth outlines with hollows', () => {
    fc.assert(
      fc.property(roundOutline(60, 150), fc.constantFrom(5, 12.7, 25.4), (outline, d) => {
        fc.pre(selfCrossings(outline).crossings.length === 0)
        compare(
          outline.map((c) => [c]),
          d,
          JoinType.Round,
        )
      }),
      { numRuns: 60 },
    )
  })

  it('agrees on outlines with corners, mitred and cut off, outer and inner', () => {
    fc.assert(
      fc.property(cornered, fc.constantFrom(5, 12.7, 25.4), (paths, d) => {
        // At a turn of 120° a mitre is exactly two distances long: one side of that is mitred, the other cut off.
        fc.pre(turnsOf(paths).every((turn) => Math.abs(turn - (2 * Math.PI) / 3) > 1e-3))
        compare(paths, d, JoinType.Miter)
      }),
      { numRuns: 150 },
    )
  })
})

describe('offsetOutline with a different distance on every edge', () => {
  /** A convex polygon whose corners turn by less than 110°. */
  const convex = fc.array(between(0.6, 1.4), { minLength: 5, maxLength: 8 }).map((steps) => {
    const whole = steps.reduce((a, b) => a + b, 0)
    let angle = 0
    const corners = steps.map((s) => {
      angle += (s / whole) * 2 * Math.PI
      return scale(heading(angle), 150)
    })
    return corners
  })

  it('is, for convex polygons, the intersection of the moved half-planes', () => {
    fc.assert(
      fc.property(convex, fc.array(between(8, 25), { minLength: 8, maxLength: 8 }), (corners, distances) => {
        const n = corners.length
        const edges = corners.map(
          (a, k): OutlineEdge => ({ path: [line(a, corners[(k + 1) % n] as Point)], distance: distances[k] as number }),
        )
        const result = offsetOutline(edges, { mitreLimit: 10 })
        expectSound(result, edges)
        const directions = corners.map((a, k) => unit(subtract(corners[(k + 1) % n] as Point, a)))
        const expected = corners.map((corner, k) => {
          // Where the moved lines of the edge before and after the corner cross.
          const before = (k + n - 1) % n
          const [d, e] = [directions[before], directions[k]] as [Point, Point]
          const p = add(corner, scale(rightOf(d), distances[before] as number))
          const q = add(corner, scale(rightOf(e), distances[k] as number))
          return add(p, scale(d, cross(subtract(q, p), e) / cross(d, e)))
        })
        expect(result).toHaveLength(n)
        for (const p of expected) expect(Math.min(...result.map((c) => distance(c.p0, p)))).toBeLessThan(1e-6)
      }),
      { numRuns: 100 },
    )
  })

  it('keeps every edge its own distance where no other edge is near, and never crosses', () => {
    fc.assert(
      fc.property(
        cornered,
        fc.array(fc.constantFrom(0, 5, 12.7, 25.4), { minLength: 8, maxLength: 8 }),
        (paths, distances) => {
          const edges = paths.map((path, k): OutlineEdge => ({ path, distance: distances[k] as number }))
          const result = offsetOutline(edges)
          expectSound(result, edges)
          edges.forEach(({ path }, k) => {
            const d = distances[k] as number
            const others = edges.filter((_, i) => i !== k).flatMap((e) => e.path)
            const c = path[0] as Cubic
            for (const t of [0.3, 0.5, 0.7]) {
              const p = pointAt(c, t)
              // Neighbours are drawn on straight to where they meet: not near this point.
              if (nearestParameter(others, p).distance < 60 || nearestParameter(drawnOn(edges, k), p).distance < 40)
                continue
              expect(Math.abs(nearestParameter(result, p).distance - d)).toBeLessThan(0.01)
            }
          })
          // Nothing of the outline is lost, but for the flattening of both and clipper's rounding, 1e-5 each.
          const [before, after] = [polygon(paths.flat(), 1e-5), polygon(result, 1e-5)]
          const lost = differenceD([before], [after], FillRule.NonZero, CLIPPER_DIGITS)
          expect(Math.abs(areaOf(lost))).toBeLessThan(4e-5 * pathLength(result))
        },
      ),
      { numRuns: 150 },
    )
  })

  it('an edge at distance 0 stays exactly where it is, made longer to the ends of its neighbours', () => {
    const half = [
      line(point(0, 0), point(100, 0)),
      cubic(point(100, 0), point(120, 60), point(60, 100), point(0, 110)),
      line(point(0, 110), point(0, 0)),
    ]
    const edges = half.map((c, k): OutlineEdge => ({ path: [c], distance: k === 2 ? 0 : 10 }))
    const result = offsetOutline(edges)
    expectSound(result, edges)
    const fold = result.filter((c) => Math.abs(c.p0.x) < 1e-9 && Math.abs(c.p3.x) < 1e-9)
    expect(Math.min(...fold.map((c) => c.p3.y))).toBeCloseTo(-10, 9)
    expect(Math.min(...result.flatMap((c) => [c.p0.x, c.p1.x, c.p2.x]))).toBeGreaterThan(-1e-9)
    expect(Math.max(...fold.map((c) => c.p0.y))).toBeGreaterThan(119)
  })

  it('takes tapered distances', () => {
    const widening = (f: number) => 10 + 10 * f
    const square = [point(0, 0), point(100, 0), point(100, 100), point(0, 100)]
    const edges = square.map(
      (a, k): OutlineEdge => ({
        path: [line(a, square[(k + 1) % 4] as Point)],
        distance: k === 0 ? widening : k === 1 ? 20 : 10,
      }),
    )
    const result = offsetOutline(edges)
    expectSound(result, edges)
    // 100² and the bands, the first of 15 on average, and the corners 10·10, 20·20, 20·10, 10·10; the slope of the first
    // band makes its corners differ a little.
    expect(area(result)).toBeGreaterThan(10000 + 1500 + 2000 + 1000 + 1000 + 700)
    expect(area(result)).toBeLessThan(10000 + 1500 + 2000 + 1000 + 1000 + 900)
  })
})

describe('corners', () => {
  /** A hem along y = 0 from the origin to (100, 0), with sides that lean by the given slopes. */
  const skirt = (left: number, right: number, corner: Corner, cornerBefore: Corner): OutlineEdge[] => [
    { path: [line(point(0, 0), point(100, 0))], distance: 30, cornerAfter: corner },
    { path: [line(point(100, 0), point(100 + 200 * right, 200))], distance: 15 },
    { path: [line(point(100 + 200 * right, 200), point(-200 * left, 200))], distance: 15 },
    { path: [line(point(-200 * left, 200), point(0, 0))], distance: 15, cornerAfter: cornerBefore },
  ]

  it('mirrored: folded along the hem, its sides lie on the sides of the allowance', () => {
    for (const [left, right] of [
      [0, 0],
      [0.2, 0.3],
      [-0.2, -0.15],
    ] as const) {
      const edges = skirt(left, right, 'mirror', 'mirror at next')
      const result = offsetOutline(edges)
      expectSound(result, edges)
      const fold = mirrorAcross(point(0, 0), point(1, 0))
      const hem = result.filter((c) => c.p0.y < -1e-6 && c.p3.y < 1e-6 && Math.abs(c.p0.x - c.p3.x) < 50)
      const sides = result.filter((c) => Math.abs(c.p0.y - c.p3.y) > 1)
      for (const c of [...hem, ...sides]) {
        for (let k = 1; k < 10; k++) {
          const p = pointAt(c, k / 10)
          if (p.y < -1e-6 && p.y > -30 + 1e-6) expect(nearestParameter(result, fold(p)).distance).toBeLessThan(1e-6)
        }
      }
      expect(Math.min(...result.map((c) => c.p0.y))).toBeCloseTo(-30, 9)
    }
  })

  it('mirrored with a curved side, the image is the curve itself', () => {
    const edges: OutlineEdge[] = [
      { path: [line(point(0, 0), point(100, 0))], distance: 30, cornerAfter: 'mirror' },
      { path: [cubic(point(100, 0), point(95, 40), point(120, 100), point(120, 200))], distance: 15 },
      { path: [line(point(120, 200), point(0, 200))], distance: 15 },
      { path: [line(point(0, 200), point(0, 0))], distance: 15 },
    ]
    const result = offsetOutline(edges)
    expectSound(result, edges)
    let seen = 0
    for (const c of result) {
      for (let k = 0; k <= 20; k++) {
        const p = pointAt(c, k / 20)
        if (p.x < 90 || p.y > -1e-3 || p.y < -29) continue
        seen++
        expect(nearestParameter(result, point(p.x, -p.y)).distance).toBeLessThan(1e-6)
      }
    }
    expect(seen).toBeGreaterThan(10)
  })

  it('square: the allowance ends square to its seam, over the point where the seam drawn on meets the next cutting line', () => {
    for (const degrees of [60, 90, 100, 120]) {
      // A shoulder along −x at the top, its neighbour leaving at the given inner angle.
      const angle = (degrees * Math.PI) / 180
      const end = point(0, 100)
      const next = add(end, scale(heading(-angle), 90))
      for (const which of ['square', 'square to next'] as const) {
        const shoulder = [line(point(120, 100), end)]
        const neighbour = [line(end, next)]
        const rest = polyline([next, point(200, -100), point(120, 100)])
        const mirrored = (p: Point) => point(-p.x, p.y)
        const flip = (path: Path): Path => [...path].reverse().map((c) => line(mirrored(c.p3), mirrored(c.p0)))
        const edges: OutlineEdge[] =
          which === 'square'
            ? [
                { path: shoulder, distance: 20, cornerAfter: 'square' },
                { path: neighbour, distance: 10 },
                { path: rest, distance: 5 },
              ]
            : [
                { path: flip(neighbour), distance: 10, cornerAfter: 'square to next' },
                { path: flip(shoulder), distance: 20 },
                { path: flip(rest), distance: 5 },
              ]
        const result = offsetOutline(edges)
        expectSound(result, edges)
        // 10 / sin of the angle beyond the shoulder's end, along the shoulder, and 20 above it.
        const beyond = (which === 'square' ? -1 : 1) * (10 / Math.sin(angle))
        for (const corner of [point(beyond, 100), point(beyond, 120)]) {
          expect(Math.min(...result.map((c) => distance(c.p0, corner)))).toBeLessThan(1e-6)
        }
      }
    }
  })

  it('dart: closed, the edge over its mouth lies on the edge beside it', () => {
    const tip = point(50, 80)
    const [a, b] = [point(40, 0), point(62, -1.5)]
    // Legs of equal length as darts have them, and not.
    const equal = add(tip, scale(unit(subtract(b, tip)), distance(a, tip)))
    for (const [end, onto] of [
      [equal, 'this'],
      [equal, 'next'],
      [b, 'this'],
      [b, 'next'],
    ] as const) {
      const left = hobbySpline([{ at: point(0, 3) }, { at: a, direction: point(10, -0.5) }])
      const right = hobbySpline([{ at: end, direction: point(10, 1) }, { at: point(100, 4) }])
      const edges: OutlineEdge[] = [
        { path: left, distance: 15, cornerAfter: { dart: tip, onto } },
        { path: right, distance: 15 },
        { path: polyline([point(100, 4), point(100, 150), point(0, 150), point(0, 3)]), distance: 15 },
      ]
      const result = offsetOutline(edges)
      expectSound(result, [...edges.slice(0, 1), { path: [line(a, end)], distance: 0 }, ...edges.slice(1)])
      const onCenter = add(tip, add(unit(subtract(a, tip)), unit(subtract(b, tip))))
      const leg = onto === 'this' ? a : b
      const overLeg = mirrorAcross(tip, leg)
      const overCenter = mirrorAcross(tip, onCenter)
      const side = (p: Point, q: Point) => cross(subtract(q, tip), subtract(p, tip))
      let seen = 0
      for (const c of result) {
        for (let k = 1; k < 20; k++) {
          const p = pointAt(c, k / 20)
          if (p.y > 20) continue
          const inMouth = side(p, a) > 0.2 && side(p, b) < -0.2
          if (!inMouth) continue
          seen++
          // The half at the leg it lies on is turned over once, the other first over the center.
          const near = side(p, onCenter) < 0 === (onto === 'this')
          const folded = near ? overLeg(p) : overLeg(overCenter(p))
          expect(nearestParameter(result, folded).distance).toBeLessThan(1e-6)
        }
      }
      expect(seen).toBeGreaterThan(10)
    }
  })
})

describe('trimming', () => {
  it('a bay narrower than the allowance closes at its mouth', () => {
    const bay = polyline([
      point(0, 0),
      point(100, 0),
      point(100, 100),
      point(55, 100),
      point(55, 40),
      point(45, 40),
      point(45, 100),
      point(0, 100),
      point(0, 0),
    ])
    const edges = bay.map((c): OutlineEdge => ({ path: [c], distance: 10 }))
    const result = offsetOutline(edges)
    expectSound(result, edges)
    expect(area(result)).toBeCloseTo(120 * 120, 3)
  })

  it('an armscye-like hollow is trimmed, the rest untouched', () => {
    const armscye = hobbySpline([
      { at: point(80, 60), direction: point(-1, 0) },
      { at: point(50, 90) },
      { at: point(52, 150), direction: point(0, 1) },
    ])
    const edges: OutlineEdge[] = [
      { path: [line(point(0, 0), point(80, 0))], distance: 25.4 },
      { path: [line(point(80, 0), point(80, 60))], distance: 25.4 },
      { path: armscye, distance: 25.4 },
      { path: [line(point(52, 150), point(0, 170))], distance: 25.4, cornerAfter: 'square' },
      { path: [line(point(0, 170), point(0, 0))], distance: 0 },
    ]
    const result = offsetOutline(edges)
    expectSound(result, edges)
    for (const c of result) {
      for (let k = 0; k <= 20; k++) {
        const near = nearestParameter(armscye, pointAt(c, k / 20))
        if (near.index + near.t > 0.05 && near.index + near.t < 1.95 && pointAt(c, k / 20).x > 40) {
          expect(near.distance).toBeGreaterThan(25.4 - 0.01)
        }
      }
    }
    expect(contains(result, point(79, 59))).toBe(true)
    expect(dot(point(1, 0), point(0, 1))).toBe(0)
  })

  it('throws on fewer than two edges', () => {
    expect(() => offsetOutline([{ path: [line(point(0, 0), point(1, 0))], distance: 1 }])).toThrow(RangeError)
  })
})
