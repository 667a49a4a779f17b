import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { area } from '../../src/geometry/area.ts'
import { selfCrossings } from '../../src/geometry/crossings.ts'
import { type Cubic, cubic, curvatureAt, line, pointAt } from '../../src/geometry/cubic.ts'
import { nearestOnCubic, nearestParameter } from '../../src/geometry/nearest.ts'
import { offset } from '../../src/geometry/offset.ts'
import { endOf, movePath, type Path, polyline, reversePath, startOf } from '../../src/geometry/path.ts'
import { pathLength, pointAlong, tangentAt } from '../../src/geometry/path-length.ts'
import { distance, heading, type Point, point, scale } from '../../src/geometry/point.ts'
import { anyCubic, anyMove, between, circle, fairCubic, roundOutline } from './shapes.ts'

const normalPoint = (c: Cubic, t: number, by: number) => {
  const p = pointAt(c, t)
  const d = tangentAt(c, t)
  return point(p.x + by * d.y, p.y - by * d.x)
}

const signedDistance = fc.tuple(fc.constantFrom(-1, 1), fc.constantFrom(1, 5, 12.7, 25.4)).map(([sign, d]) => sign * d)

function expectConnected(path: Path): void {
  for (let k = 1; k < path.length; k++) expect(path[k]?.p0).toEqual(path[k - 1]?.p3)
}

/** Least signed radius left: below zero somewhere the plain offset runs backward. */
function roomLeft(c: Cubic, by: number): number {
  let least = Number.POSITIVE_INFINITY
  for (let k = 1; k < 400; k++) least = Math.min(least, 1 + by * curvatureAt(c, k / 400))
  return least
}

describe('offset of one cubic', () => {
  it('has its distance within the tolerance everywhere, whatever the tolerance', () => {
    fc.assert(
      fc.property(fairCubic, signedDistance, fc.constantFrom(0.1, 0.01, 1e-3, 1e-4), (c, by, tolerance) => {
        fc.pre(roomLeft(c, by) > 0.05)
        const path = offset([c], by, { tolerance })
        expectConnected(path)
        for (const piece of path) {
          for (let k = 0; k <= 40; k++) {
            expect(Math.abs(nearestOnCubic(c, pointAt(piece, k / 40)).distance - Math.abs(by))).toBeLessThan(tolerance)
          }
        }
        for (let k = 0; k <= 100; k++) {
          expect(nearestParameter(path, normalPoint(c, k / 100, by)).distance).toBeLessThan(tolerance)
        }
      }),
      { numRuns: 150 },
    )
  })

  it('starts and ends exactly at point + distance · normal, on any cubic', () => {
    fc.assert(
      fc.property(anyCubic, signedDistance, (c, by) => {
        fc.pre(distance(c.p0, c.p3) > 1e-3)
        const path = offset([c], by)
        expect(distance(startOf(path), normalPoint(c, 0, by))).toBeLessThan(1e-9)
        expect(distance(endOf(path), normalPoint(c, 1, by))).toBeLessThan(1e-9)
        expectConnected(path)
      }),
      { numRuns: 300 },
    )
  })

  it('is never farther than its distance, and leaves nothing out where it keeps it, on any cubic without a loop', () => {
    fc.assert(
      fc.property(anyCubic, signedDistance, (c, by) => {
        fc.pre(distance(c.p0, c.p3) > 1e-3 && selfCrossings([c]).crossings.length === 0)
        const path = offset([c], by)
        // A cusp is a corner: its mitre is cut off at the distance, √2 times as far at its corners.
        const most = isCusped(c) ? Math.SQRT2 : 1
        for (const piece of path) {
          for (let k = 0; k <= 20; k++) {
            expect(nearestOnCubic(c, pointAt(piece, k / 20)).distance).toBeLessThan(Math.abs(by) * most + 0.01)
          }
        }
        // Where the plain offset keeps its distance all along, all of it is there; hollows are cut off at their mouth with
        // all that lies behind it.
        const plain = Array.from({ length: 101 }, (_, k) => normalPoint(c, k / 100, by))
        if (plain.some((q) => nearestOnCubic(c, q).distance < Math.abs(by) - 1e-6)) return
        for (const q of plain) expect(nearestParameter(path, q).distance).toBeLessThan(0.01)
      }),
      { numRuns: 300 },
    )
  })

  it('is exact where it can be: lines, distance 0, arcs within the error of arcs', () => {
    expect(offset([line(point(0, 0), point(30, 40))], 5)).toEqual([line(point(4, -3), point(34, 37))])
    const s = [cubic(point(0, 0), point(60, 5), point(60, 110), point(120, 120))]
    expect(offset(s, 0)).toBe(s)
    const round = circle(100)
    for (const by of [-50, 25]) {
      const path = offset(round, by)
      for (const piece of path) {
        for (let k = 0; k <= 20; k++) {
          const r = Math.hypot(pointAt(piece, k / 20).x, pointAt(piece, k / 20).y)
          expect(Math.abs(r - (100 + by))).toBeLessThan(0.01 + 2.8e-2)
        }
      }
    }
  })

  it('to the right of travel where positive: outside an anticlockwise outline', () => {
    expect(area(offset(circle(50), 10))).toBeGreaterThan(area(circle(50)))
    expect(area(offset(circle(50), -10))).toBeLessThan(area(circle(50)))
    expect(startOf(offset([line(point(0, 0), point(10, 0))], 2))).toEqual(point(0, -2))
  })

  it('moves, turns and scales with its curve, and comes back reversed from the other side', () => {
    fc.assert(
      fc.property(fairCubic, signedDistance, anyMove, (c, by, move) => {
        fc.pre(roomLeft(c, by) > 0.2)
        const path = offset([c], by)
        const moved = offset(movePath([c], move), by)
        for (let k = 0; k <= 10; k++) {
          const along = (k / 10) * pathLength(path)
          expect(nearestParameter(moved, move(pointAlong(path, along))).distance).toBeLessThan(0.02)
        }
        const back = offset(reversePath([c]), -by)
        for (let k = 0; k <= 10; k++) {
          const p = pointAlong(back, (k / 10) * pathLength(back))
          expect(nearestParameter(path, p).distance).toBeLessThan(0.02)
        }
        for (const factor of [1e-3, 1e3]) {
          const grown = movePath([c], (p) => scale(p, factor))
          const tolerance = 0.01 * factor
          for (const piece of offset(grown, by * factor, { tolerance })) {
            for (let k = 0; k <= 10; k++) {
              const near = nearestParameter(grown, pointAt(piece, k / 10)).distance
              expect(Math.abs(near - Math.abs(by) * factor)).toBeLessThan(tolerance)
            }
          }
        }
      }),
      { numRuns: 40 },
    )
  })
})

describe('offset of hollows, corners and closed lines', () => {
  it('a hollow narrower than the distance is cut off where the line comes back to itself', () => {
    const deep = [cubic(point(0, 0), point(30, 160), point(30, 160), point(60, 0))]
    const path = offset(deep, 25)
    expect(selfCrossings(path).crossings).toEqual([])
    for (const piece of path) {
      for (let k = 0; k <= 50; k++) {
        expect(nearestParameter(deep, pointAt(piece, k / 50)).distance).toBeGreaterThan(25 - 0.01)
      }
    }
    // The hollow is symmetric: the cut lies on its axis.
    expect(Math.min(...path.map((c) => Math.abs(c.p3.x - 30)))).toBeLessThan(0.01)
  })

  it('a parabola offset inward past its radius has its tip where the closed form says', () => {
    // y = x²/(2·20): radius 20 at the tip. Points at distance d on the axis are centres of circles touching it twice:
    // height h with h − 20 = x²/40 and d² = x² + 20²  →  tip at y = 20 + (d² − 400)/40.
    const parabola = [cubic(point(-80, 160), point(-80 / 3, -160 / 3), point(80 / 3, -160 / 3), point(80, 160))]
    for (const d of [25, 40]) {
      const path = offset(parabola, -d)
      expect(selfCrossings(path).crossings).toEqual([])
      const tip = Math.min(...path.flatMap((c) => [c.p0.y, c.p3.y]))
      expect(tip).toBeCloseTo(20 + (d * d - 400) / 40, 1)
    }
  })

  it('outer corners are mitred up to twice the distance, sharper ones keep the distance', () => {
    const corner = (turn: number) => {
      const far = scale(heading(turn), 100)
      return [line(point(-100, 0), point(0, 0)), line(point(0, 0), far)]
    }
    // A turn of 2·acos(1/2) = 120° has a mitre of exactly two distances.
    for (const [degrees, most] of [
      [45, 1 / Math.cos(Math.PI / 8)],
      [90, Math.SQRT2],
      [119, 1.97],
    ] as const) {
      const path = offset(corner((degrees * Math.PI) / 180), 10)
      const reach = Math.max(...path.map((c) => nearestParameter(corner((degrees * Math.PI) / 180), c.p3).distance))
      expect(reach / 10).toBeCloseTo(most, 2)
    }
    for (const degrees of [125, 150, 175, 179.9]) {
      const path = corner((degrees * Math.PI) / 180)
      const around = offset(path, 10)
      for (const c of around) {
        for (let k = 0; k <= 20; k++) {
          const near = nearestParameter(path, pointAt(c, k / 20)).distance
          expect(near).toBeGreaterThan(10 - 1e-6)
          expect(near).toBeLessThan(10 * Math.SQRT2 + 1e-6)
        }
      }
    }
  })

  it('the inside of a nearly closed line stays, though its ends cross; a keyhole is cut off at its mouth', () => {
    const teardrop = [cubic(point(0, 0), point(157, 0), point(0, 166), point(-3, -17))]
    const inside = offset(teardrop, -20)
    expect(pathLength(inside)).toBeGreaterThan(60)
    expect(selfCrossings(inside).crossings).toHaveLength(1)
    const keyhole = polyline([
      point(-80, 0),
      point(-5, 0),
      point(-5, 30),
      point(-50, 50),
      point(-50, 130),
      point(50, 130),
      point(50, 50),
      point(5, 30),
      point(5, 0),
      point(80, 0),
    ])
    const over = offset(keyhole, 15)
    expect(selfCrossings(over).crossings).toEqual([])
    expect(Math.max(...over.map((c) => c.p3.y))).toBeLessThan(0)
  })

  it('inner corners meet on the bisector', () => {
    const path = offset([line(point(-100, 0), point(0, 0)), line(point(0, 0), point(0, -100))], 10)
    expect(path).toHaveLength(2)
    expect(distance(path[0]?.p3 as Point, point(-10, -10))).toBeLessThan(1e-9)
  })

  it('a cusp and a straight way back are rounded squarely', () => {
    const back = offset([cubic(point(0, 0), point(150, 0), point(-50, 0), point(100, 0))], 10)
    expectConnected(back)
    const cusp = [cubic(point(0, 0), point(100, 100), point(0, 100), point(100, 0))]
    for (const by of [10, -10]) {
      const path = offset(cusp, by)
      expect(selfCrossings(path).crossings).toEqual([])
      for (const c of path) {
        for (let k = 0; k <= 50; k++)
          expect(nearestParameter(cusp, pointAt(c, k / 50)).distance).toBeGreaterThan(10 - 0.01)
      }
    }
  })

  it('a convex outline grows by Steiner: area A + L·d + π·d² for round ones', () => {
    fc.assert(
      fc.property(roundOutline(97, 103), between(1, 40), (outline, d) => {
        const path = offset(outline, d)
        expect(startOf(path)).toEqual(endOf(path))
        const expected = area(outline) + pathLength(outline) * d + Math.PI * d * d
        expect(Math.abs(area(path) - expected)).toBeLessThan(0.01 * pathLength(path))
      }),
      { numRuns: 60 },
    )
    // A polygon: A + L·d + d²·Σ tan(turn / 2) with mitres.
    const hexagon = polyline([0, 1, 2, 3, 4, 5, 6].map((k) => scale(heading((k * Math.PI) / 3), 50)))
    const grown = area(offset(hexagon, 10))
    expect(grown).toBeCloseTo(area(hexagon) + 300 * 10 + 6 * Math.tan(Math.PI / 6) * 100, 6)
  })

  it('closed lines of either direction stay closed and on their own side', () => {
    fc.assert(
      fc.property(roundOutline(70, 130), fc.constantFrom(12.7, -12.7, 25.4), (outline, d) => {
        const path = offset(outline, d)
        expect(startOf(path)).toEqual(endOf(path))
        expectConnected(path)
        expect(selfCrossings(path).crossings.filter((c) => c.kind === 'cross')).toEqual([])
        for (const c of path) {
          for (let k = 0; k <= 10; k++) {
            expect(nearestParameter(outline, pointAt(c, k / 10)).distance).toBeGreaterThan(Math.abs(d) - 0.01)
          }
        }
        const reversed = offset(reversePath(outline), -d)
        expect(area(reversed)).toBeCloseTo(-area(path), 6)
      }),
      { numRuns: 60 },
    )
  })
})

describe('tapered offset', () => {
  it('has at every fraction of the length the distance of that fraction, along the normal', () => {
    fc.assert(
      fc.property(fairCubic, fairCubic, between(0, 20), between(0, 20), (a, b, from, to) => {
        const end = tangentAt(a, 1)
        const start = tangentAt(b, 0)
        const angle = Math.atan2(end.y, end.x) - Math.atan2(start.y, start.x)
        const turned = movePath([b], (p) => {
          const c = Math.cos(angle)
          const s = Math.sin(angle)
          return point(a.p3.x + c * p.x - s * p.y, a.p3.y + s * p.x + c * p.y)
        })
        const path = [a, ...turned.map((c) => ({ ...c, p0: a.p3 }))]
        const most = Math.max(from, to)
        fc.pre(
          path.every((c) => roomLeft(c, most) > 0.3 && roomLeft(c, 0) > 0.3) &&
            selfCrossings(path).crossings.length === 0,
        )
        // From one value to the other, smoothly: a cosine.
        const taper = (f: number) => from + ((to - from) * (1 - Math.cos(Math.PI * f))) / 2
        const tapered = offset(path, taper)
        fc.pre(selfCrossings(offset(path, most)).crossings.length === 0)
        expectConnected(tapered)
        const whole = pathLength(path)
        let run = 0
        path.forEach((c) => {
          const length = pathLength([c])
          for (let k = 0; k <= 20; k++) {
            const p = pointAlong([c], (length * k) / 20)
            const f = Math.min(1, (run + (length * k) / 20) / whole)
            const t = nearestOnCubic(c, p).t
            const d = tangentAt(c, t)
            const q = point(p.x + taper(f) * d.y, p.y - taper(f) * d.x)
            const near = nearestParameter(path, q).distance
            if (near < taper(f) - 1e-3) continue
            expect(nearestParameter(tapered, q).distance).toBeLessThan(0.011)
          }
          run += length
        })
      }),
      { numRuns: 60 },
    )
  })

  it('ends at nothing where the distance ends at nothing', () => {
    const path = [cubic(point(0, 0), point(40, 20), point(80, 20), point(120, 0))]
    const tapered = offset(path, (f) => 20 * f * (1 - f))
    expect(distance(startOf(tapered), point(0, 0))).toBeLessThan(1e-12)
    expect(distance(endOf(tapered), point(120, 0))).toBeLessThan(1e-12)
  })
})

describe('misuse', () => {
  it('throws', () => {
    const dot = [cubic(point(1, 1), point(1, 1), point(1, 1), point(1, 1))]
    expect(() => offset(dot, 5)).toThrow(RangeError)
    expect(() => offset([line(point(0, 0), point(1, 0))], 5, { tolerance: 0 })).toThrow(RangeError)
  })
})

function isCusped(c: Cubic): boolean {
  for (let k = 1; k < 2000; k++) {
    const a = tangentAt(c, (k - 1) / 2000)
    const b = tangentAt(c, k / 2000)
    if (a.x * b.x + a.y * b.y < 0) return true
  }
  return false
}
