import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { area } from '../../src/geometry/area.ts'
import { moveCubic } from '../../src/geometry/cubic.ts'
import { lineCrossings } from '../../src/geometry/line-crossings.ts'
import { moveBeyond } from '../../src/geometry/move-beyond.ts'
import { endOf, type Path, polyline } from '../../src/geometry/path.ts'
import { pathLength, pointAlong } from '../../src/geometry/path-length.ts'
import { along, cross, distance, heading, type Point, point, rotateAbout, subtract } from '../../src/geometry/point.ts'
import { spread } from '../../src/geometry/spread.ts'
import { wedge } from '../../src/geometry/wedge.ts'
import { between, roundOutline } from './shapes.ts'

const outline = roundOutline(90, 150)

const SQUARE = polyline([point(0, 0), point(100, 0), point(100, 100), point(0, 100), point(0, 0)])

/** Where the line crosses the outline first and last along itself. */
function ends(path: Path, a: Point, b: Point): [Point, Point] {
  const shares = lineCrossings(path, a, b).sort((m, n) => m.share - n.share)
  fc.pre(shares.length === 2)
  return [shares[0]?.at as Point, shares[1]?.at as Point]
}

const rounded = (value: number) => Math.round(value * 1e9) / 1e9 + 0

/** The outline holds together: every cubic starts where the one before it ends, the last ends at the first. */
function expectClosed(path: Path): void {
  path.forEach((c, k) => {
    expect(c.p0).toEqual(k === 0 ? endOf(path) : path[k - 1]?.p3)
  })
}

describe('wedge', () => {
  it('opened about a point of an outline adds the triangle at its mouth, and its chord to the length', () => {
    fc.assert(
      fc.property(outline, between(0, 1), between(-Math.PI, Math.PI), between(0.02, 0.6), (path, at, way, angle) => {
        const pivot = pointAlong(path, at * pathLength(path))
        const [near, far] = ends(path, pivot, along(pivot, heading(way), 1))
        const [own, other] = distance(near, pivot) < distance(far, pivot) ? [near, far] : [far, near]
        expect(distance(own, pivot)).toBeLessThan(1e-5)
        const reach = distance(pivot, other)
        fc.pre(reach > 20)
        const opened = wedge(path, pivot, other, angle)
        expectClosed(opened)
        expect(area(opened) - area(path)).toBeCloseTo((reach * reach * Math.sin(angle)) / 2, 2)
        expect(pathLength(opened) - pathLength(path)).toBeCloseTo(2 * reach * Math.sin(angle / 2), 4)
      }),
      { numRuns: 200 },
    )
  })

  it('about a point inside opens on one side and laps by as much on the other', () => {
    const angle = 0.2
    const opened = wedge(SQUARE, point(50, 50), point(50, 100), angle)
    expectClosed(opened)
    // The left half turned about its middle; chords of 50 mm at both ends.
    expect(pathLength(opened)).toBeCloseTo(400 + 4 * 50 * Math.sin(angle / 2), 9)
    expect(area(opened)).toBeCloseTo(10_000, 6)
    const corner = rotateAbout(point(0, 0), point(50, 50), angle)
    expect(Math.min(...opened.map((c) => distance(c.p0, corner)))).toBeLessThan(1e-9)
    // Lapped by a negative angle, it loses the wedge.
    const lapped = wedge(SQUARE, point(50, 0), point(50, 100), -angle)
    expect(area(lapped)).toBeCloseTo(10_000 - (100 * 100 * Math.sin(angle)) / 2, 6)
  })
})

describe('spread', () => {
  it('of an outline adds the slash times the amount to the area and twice the amount to the length', () => {
    fc.assert(
      fc.property(outline, between(-60, 60), between(-Math.PI, Math.PI), between(1, 60), (path, off, way, by) => {
        const from = point(off, -off / 2)
        const to = along(from, heading(way), 10)
        const [near, far] = ends(path, from, to)
        const opened = spread(path, from, to, by)
        expectClosed(opened)
        expect(area(opened) - area(path)).toBeCloseTo(distance(near, far) * by, 4)
        expect(pathLength(opened) - pathLength(path)).toBeCloseTo(2 * by, 5)
        // What lies to the right stays where it is.
        const right = path.filter((c) =>
          [c.p0, c.p1, c.p2, c.p3].every((p) => cross(subtract(to, from), subtract(p, from)) < 0),
        )
        for (const c of right) expect(opened).toContain(c)
      }),
      { numRuns: 200 },
    )
  })
})

describe('moveBeyond', () => {
  it('cuts an open path wherever it crosses, and leaves a path on one side alone or moves it whole', () => {
    const zigzag = polyline([point(0, -10), point(10, 10), point(20, -10), point(30, 10)])
    const up = (p: Point) => point(p.x, p.y + 5)
    const raised = moveBeyond(zigzag, point(0, 0), point(1, 0), up)
    expect(raised.map((c) => [rounded(c.p3.x), rounded(c.p3.y)])).toEqual([
      [5, 0],
      [5, 5],
      [10, 15],
      [15, 5],
      [15, 0],
      [20, -10],
      [25, 0],
      [25, 5],
      [30, 15],
    ])
    expect(moveBeyond(zigzag, point(0, 50), point(1, 50), up)).toEqual(zigzag)
    expect(moveBeyond(zigzag, point(0, -50), point(1, -50), up)).toEqual(zigzag.map((c) => moveCubic(c, up)))
  })

  it('an edge on the slash stays with the right side; a start on the slash is joined too', () => {
    const raised = spread(SQUARE, point(0, 0), point(100, 0), 10)
    expectClosed(raised)
    expect(area(raised)).toBeCloseTo(11_000, 6)
    const apart = spread(
      polyline([point(0, 0), point(10, 10), point(0, 20), point(-10, 10), point(0, 0)]),
      point(0, 0),
      point(0, 20),
      5,
    )
    expectClosed(apart)
    expect(area(apart)).toBeCloseTo(200 + 100, 6)
  })

  it('throws on a slash without direction and on an empty path', () => {
    expect(() => wedge(SQUARE, point(1, 1), point(1, 1), 0.1)).toThrow(RangeError)
    expect(() => spread(SQUARE, point(1, 1), point(1, 1), 1)).toThrow(RangeError)
    expect(() => moveBeyond([], point(0, 0), point(1, 1), (p) => p)).toThrow(RangeError)
  })
})
