import fc from 'fast-check'
import paper from 'paper/dist/paper-core.js'
import { beforeAll, describe, expect, it } from 'vitest'
import { type Crossing, crossings, selfCrossings } from '../../src/geometry/crossings.ts'
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
import { cubicCrossings } from '../../src/geometry/cubic-crossings.ts'
import { levelCrossings } from '../../src/geometry/level-crossings.ts'
import { lineCrossings } from '../../src/geometry/line-crossings.ts'
import { meetAtJoint } from '../../src/geometry/meet-at-joint.ts'
import { nearestOnCubic } from '../../src/geometry/nearest.ts'
import { movePath, type Path, polyline, reversePath } from '../../src/geometry/path.ts'
import { tangentAt } from '../../src/geometry/path-length.ts'
import { distance, type Point, point, turnBetween } from '../../src/geometry/point.ts'
import { anyCubic, anyMove, anyPoint, between, circle, fairCubic, pathData, roundOutline } from './shapes.ts'

beforeAll(() => {
  paper.setup([1, 1])
  paper.settings.insertItems = false
})

/** Every result must be a true meeting: both parameters give the same point. */
function expectTrue(a: Path, b: Path, found: readonly Crossing[]): void {
  for (const { at, a: s, b: t } of found) {
    expect(distance(pointAt(a[s.index] as Cubic, s.t), at)).toBeLessThan(3e-6)
    expect(distance(pointAt(b[t.index] as Cubic, t.t), at)).toBeLessThan(3e-6)
  }
}

const s = cubic(point(21, 59), point(59, 84), point(153, 16), point(189, 41))
const arch = cubic(point(0, 0), point(50, 100), point(100, 100), point(150, 0))

describe('crossings', () => {
  it('are those that paper finds, for cubics that cross at an angle', () => {
    fc.assert(
      fc.property(anyCubic, anyCubic, (a, b) => {
        const ours = crossings([a], [b])
        expectTrue([a], [b], ours.crossings)
        const theirs = new paper.Path(pathData([a])).getIntersections(new paper.Path(pathData([b])))
        // paper's own places are right to about 1e-6; where the curves run nearly alike it may find none or two.
        const clear = theirs.filter((x) => {
          const d = nearestDirections(a, b, point(x.point.x, x.point.y))
          return d === undefined || Math.abs(Math.sin(d)) > 1e-2
        })
        for (const x of clear) {
          const p = point(x.point.x, x.point.y)
          expect(ours.crossings.some((c) => distance(c.at, p) < 1e-3) || ours.overlaps.length > 0).toBe(true)
        }
        const sure = ours.crossings.filter((c) => Math.abs(Math.sin(angleAt(a, b, c))) > 1e-2 && c.kind === 'cross')
        for (const c of sure) expect(theirs.some((x) => distance(c.at, point(x.point.x, x.point.y)) < 1e-3)).toBe(true)
      }),
      { numRuns: 400 },
    )
  })

  it('of random polygons are those of their sides, solved one by one', () => {
    fc.assert(
      fc.property(
        fc.array(anyPoint, { minLength: 2, maxLength: 6 }),
        fc.array(anyPoint, { minLength: 2, maxLength: 6 }),
        (p, q) => {
          fc.pre([p, q].every((l) => l.every((x, i) => i === 0 || distance(x, l[i - 1] as Point) > 1)))
          const ours = crossings(polyline(p), polyline(q))
          let count = 0
          for (let i = 1; i < p.length; i++) {
            for (let k = 1; k < q.length; k++) {
              const [a, b] = p.slice(i - 1, i + 1) as [Point, Point]
              const [c, d] = q.slice(k - 1, k + 1) as [Point, Point]
              const det = (b.x - a.x) * (d.y - c.y) - (b.y - a.y) * (d.x - c.x)
              fc.pre(Math.abs(det) > 1)
              const t = ((c.x - a.x) * (d.y - c.y) - (c.y - a.y) * (d.x - c.x)) / det
              const u = ((c.x - a.x) * (b.y - a.y) - (c.y - a.y) * (b.x - a.x)) / det
              fc.pre([t, u].every((v) => Math.abs(v) > 1e-5 && Math.abs(v - 1) > 1e-5))
              if (t > 0 && t < 1 && u > 0 && u < 1) count++
            }
          }
          expect(ours.crossings).toHaveLength(count)
        },
      ),
      { numRuns: 300 },
    )
  })

  it('do not depend on order, direction or place', () => {
    fc.assert(
      fc.property(fairCubic, fairCubic, anyMove, anyMove, (a, b, move, both) => {
        const c = moveCubic(b, move)
        const found = crossings([a], [c]).crossings
        fc.pre(found.every((x) => Math.abs(Math.sin(angleAt(a, c, x))) > 1e-3))
        expect(crossings([c], [a]).crossings).toHaveLength(found.length)
        expect(crossings([reverseCubic(a)], [c]).crossings).toHaveLength(found.length)
        const moved = crossings(movePath([a], both), movePath([c], both)).crossings
        expect(moved).toHaveLength(found.length)
        moved.forEach((x, k) => {
          expect(distance(x.at, both(found[k]?.at ?? x.at))).toBeLessThan(1e-5)
        })
      }),
    )
  })

  it('a circle and a line, a circle and a circle: closed forms', () => {
    const round = circle(100)
    const found = crossings(round, [line(point(-200, 0), point(200, 0))])
    expect(found.crossings.map((c) => Math.round(c.at.x)).sort((a, b) => a - b)).toEqual([-100, 100])
    expect(found.crossings.every((c) => c.kind === 'cross')).toBe(true)
    const lens = crossings(
      round,
      movePath(round, (p) => point(p.x + 120, p.y)),
    )
    expect(lens.crossings).toHaveLength(2)
    for (const c of lens.crossings) expect(Math.abs(c.at.y)).toBeCloseTo(80, 1)
    for (const c of lens.crossings) expect(c.at.x).toBeCloseTo(60, 9)
  })

  it('a tangent touches once, a secant of a millionth crosses twice, a miss of a hundred-thousandth not at all', () => {
    const at = (y: number) => crossings([arch], [line(point(0, y), point(200, y))])
    const touch = at(75)
    expect(touch.overlaps).toEqual([])
    expect(touch.crossings.map((c) => c.kind)).toEqual(['touch'])
    expect(distance(touch.crossings[0]?.at ?? point(0, 0), point(75, 75))).toBeLessThan(0.02)
    expect(at(75 - 1e-5).crossings.map((c) => c.kind)).toEqual(['cross', 'cross'])
    expect(at(75 + 1e-5).crossings).toEqual([])
    // At a joint the touch and the crossing count once too.
    const joined = splitCubic(arch, 0.5)
    expect(crossings(joined, [line(point(0, 75), point(200, 75))]).crossings.map((c) => c.kind)).toEqual(['touch'])
    expect(crossings(joined, [line(point(75, 0), point(75, 200))]).crossings.map((c) => c.kind)).toEqual(['cross'])
  })

  it('a line through an inflection along its tangent crosses once', () => {
    const flat = cubic(point(-100, -100), point(-100 / 3, 100 / 3), point(100 / 3, -100 / 3), point(100, 100))
    const found = crossings([flat], [line(point(-100, 0), point(100, 0))])
    expect(found.crossings.map((c) => c.kind)).toEqual(['cross'])
    expect(distance(found.crossings[0]?.at ?? point(9, 9), point(0, 0))).toBeLessThan(0.02)
  })

  it('common ends and ends on the other line are ends', () => {
    const from = point(10, 10)
    expect(crossings([line(from, point(50, 20))], [line(from, point(20, 60))]).crossings.map((c) => c.kind)).toEqual([
      'end',
    ])
    const t = crossings([line(point(0, 0), point(10, 0))], [line(point(5, 0), point(5, 10))]).crossings
    expect(t).toHaveLength(1)
    expect(t[0]).toMatchObject({ kind: 'end', a: { index: 0, t: 0.5 }, b: { index: 0, t: 0 } })
    // Short of it by half a millionth counts, by two millionths not.
    expect(crossings([line(point(0, 0), point(10, 0))], [line(point(5, 5e-7), point(5, 10))]).crossings).toHaveLength(1)
    expect(crossings([line(point(0, 0), point(10, 0))], [line(point(5, 2e-6), point(5, 10))]).crossings).toHaveLength(0)
    // Tangent continuation of a curve: only the common end.
    const [a, b] = splitCubic(s, 0.4)
    expect(crossings([a], [b]).crossings.map((c) => c.kind)).toEqual(['end'])
  })

  it('a needle is crossed twice, on its way there and back, however near its tip', () => {
    const needle = polyline([point(0, -1), point(0, 0), point(0, -1)])
    expect(crossings(needle, [line(point(-1, -1e-3), point(1, -1e-3))]).crossings).toHaveLength(2)
    expect(crossings(needle, [line(point(-1, 0), point(1, 0))]).crossings.map((c) => c.kind)).toEqual(['touch'])
  })

  it('corners that cross, touch and pass are told apart', () => {
    const v = polyline([point(-10, 10), point(0, 0), point(10, 10)])
    const level = [line(point(-20, 0), point(20, 0))]
    expect(crossings(v, level).crossings.map((c) => c.kind)).toEqual(['touch'])
    expect(crossings(v, [line(point(0, -5), point(0, 5))]).crossings.map((c) => c.kind)).toEqual(['cross'])
    const under = polyline([point(-10, -10), point(0, 0), point(10, -10)])
    expect(crossings(v, under).crossings.map((c) => c.kind)).toEqual(['touch'])
    const through = polyline([point(0, 10), point(0, 0), point(10, -10)])
    expect(crossings(v, through).crossings.map((c) => c.kind)).toEqual(['cross'])
  })

  it('common stretches are overlaps, whole, in part, reversed, over joints and a ten-millionth apart', () => {
    const whole = (a: Path, b: Path) => {
      const found = crossings(a, b)
      expect(found.crossings).toEqual([])
      expect(found.overlaps).toHaveLength(1)
      return found.overlaps[0] as (typeof found.overlaps)[0]
    }
    const ends = ({ a, b }: ReturnType<typeof whole>) => [...a, ...b].map((p) => Number((p.index + p.t).toFixed(6)))
    expect(ends(whole([s], [s]))).toEqual([0, 1, 0, 1])
    expect(ends(whole([s], [reverseCubic(s)]))).toEqual([0, 1, 1, 0])
    expect(ends(whole([s], [subCubic(s, 0.3, 0.7)]))).toEqual([0.3, 0.7, 0, 1])
    expect(ends(whole([subCubic(s, 0, 0.6)], [subCubic(s, 0.3, 1)]))).toEqual([0.5, 1, 0, 0.428571])
    expect(ends(whole(splitCubic(s, 0.4), [s]))).toEqual([0, 2, 0, 1])
    expect(ends(whole([s], [moveCubic(s, (p) => point(p.x, p.y + 1e-7))]))).toEqual([0, 1, 0, 1])
    expect(ends(whole([line(point(0, 0), point(10, 0))], [line(point(15, 0), point(5, 0))]))).toEqual([0.5, 1, 1, 0.5])
    const beside = crossings([s], [moveCubic(s, (p) => point(p.x, p.y + 1e-3))])
    expect(beside).toEqual({ crossings: [], overlaps: [] })
  })
})

describe('meetAtJoint', () => {
  const away = fc.tuple(between(-40, 40), between(-40, 40))
  const way = fc.record({ length: between(-30, 30), second: away, third: away })

  it('is true only of neighbours that the search finds to meet at their joint alone', () => {
    let onward = 0
    let back = 0
    fc.assert(
      fc.property(anyCubic, way, fc.boolean(), (a, { length, second, third }, alongHandle) => {
        fc.pre(distance(a.p2, a.p3) > 1e-3)
        const along = { x: (a.p2.x - a.p3.x) / distance(a.p2, a.p3), y: (a.p2.y - a.p3.y) / distance(a.p2, a.p3) }
        const [x, y] = alongHandle ? [along.x * length, along.y * length] : [length, second[1]]
        const at = (dx: number, dy: number) => point(a.p3.x + dx, a.p3.y + dy)
        const b = cubic(a.p3, at(x, y), at(...second), at(...third))
        fc.pre(meetAtJoint(a, b))
        if (x * along.x + y * along.y > 0) back++
        else onward++
        const { meetings, overlaps } = cubicCrossings(a, b)
        expect(overlaps).toEqual([])
        expect(meetings.map((m) => [m.a, m.b])).toEqual([[1, 0]])
      }),
      { numRuns: 300 },
    )
    expect(Math.min(onward, back)).toBeGreaterThan(30)
  })

  it('is false where one lies on the other, or crosses it again', () => {
    const there = line(point(0, 0), point(10, 0))
    expect(meetAtJoint(there, line(point(10, 0), point(4, 0)))).toBe(false)
    expect(meetAtJoint(there, cubic(point(10, 0), point(12, 8), point(4, 8), point(4, -8)))).toBe(false)
    expect(meetAtJoint(there, line(point(10, 1), point(20, 1)))).toBe(false)
  })
})

describe('selfCrossings', () => {
  it('a loop in one cubic is found in closed form', () => {
    const loop = cubic(point(0, 0), point(200, 150), point(-100, 150), point(100, 0))
    const [found, ...rest] = selfCrossings([loop]).crossings
    expect(rest).toEqual([])
    expect(distance(found?.at ?? point(0, 0), point(50, 45))).toBeLessThan(1e-9)
    fc.assert(
      fc.property(anyCubic, (c) => {
        const { crossings: list } = selfCrossings([c])
        expect(list.length).toBeLessThanOrEqual(1)
        for (const { a, b } of list) expect(distance(pointAt(c, a.t), pointAt(c, b.t))).toBeLessThan(1e-6)
      }),
    )
  })

  it('finds the crossings of a figure of eight and none on round outlines or their joints', () => {
    const eight = polyline([point(0, 0), point(10, 10), point(0, 10), point(10, 0), point(0, 0)])
    expect(selfCrossings(eight).crossings.map((c) => c.kind)).toEqual(['cross'])
    fc.assert(
      fc.property(roundOutline(90, 110), anyMove, (outline, move) => {
        expect(selfCrossings(movePath(outline, move))).toEqual({ crossings: [], overlaps: [] })
        expect(selfCrossings(outline.flatMap((c) => splitCubic(c, 0.3)))).toEqual({ crossings: [], overlaps: [] })
      }),
    )
  })

  it('a line there and back is an overlap, a touching corner a touch', () => {
    const spike = polyline([
      point(0, 0),
      point(10, 0),
      point(20, 0),
      point(10, 0),
      point(10, 10),
      point(0, 10),
      point(0, 0),
    ])
    expect(selfCrossings(spike).overlaps).toHaveLength(1)
    const pinched = polyline([point(0, 0), point(20, 0), point(20, 20), point(10, 0), point(0, 20), point(0, 0)])
    expect(selfCrossings(pinched).crossings.map((c) => c.kind)).toEqual(['touch'])
  })

  it('the crossings of two outlines laid on a common path agree with crossings', () => {
    fc.assert(
      fc.property(fairCubic, between(0.1, 0.9), (c, t) => {
        const p = pointAt(c, t)
        const d = tangentAt(c, t)
        const cut = line(point(p.x - 20 * d.y, p.y + 20 * d.x), point(p.x + 20 * d.y, p.y - 20 * d.x))
        expect(crossings([c], [cut]).crossings.some((x) => distance(x.at, p) < 1e-6)).toBe(true)
        expect(crossings(reversePath([c]), [cut]).crossings.some((x) => distance(x.at, p) < 1e-6)).toBe(true)
      }),
    )
  })
})

describe('lineCrossings', () => {
  it('finds what crossings finds with a long line, and lies on the line', () => {
    fc.assert(
      fc.property(anyCubic, anyPoint, anyPoint, (c, a, b) => {
        fc.pre(distance(a, b) > 10)
        const found = lineCrossings([c], a, b)
        const direction = point((b.x - a.x) / distance(a, b), (b.y - a.y) / distance(a, b))
        for (const { at, t, share } of found) {
          expect(Math.abs((at.x - a.x) * direction.y - (at.y - a.y) * direction.x)).toBeLessThan(1e-8)
          expect(distance(pointAt(c, t), at)).toBeLessThan(1e-9)
          expect(share * distance(a, b)).toBeCloseTo((at.x - a.x) * direction.x + (at.y - a.y) * direction.y, 6)
        }
        const long = line(
          point(a.x - 2000 * direction.x, a.y - 2000 * direction.y),
          point(a.x + 2000 * direction.x, a.y + 2000 * direction.y),
        )
        const others = crossings([c], [long]).crossings.filter((x) => x.kind === 'cross')
        for (const x of others) expect(found.some((f) => distance(f.at, x.at) < 1e-2)).toBe(true)
      }),
    )
  })

  it('counts a joint on the line once and a stretch on it not at all', () => {
    expect(lineCrossings(splitCubic(arch, 0.5), point(75, 0), point(75, 9))).toHaveLength(1)
    expect(lineCrossings([line(point(0, 0), point(9, 0))], point(-1, 0), point(20, 0))).toEqual([])
    expect(lineCrossings([arch], point(0, 75), point(9, 75))).toHaveLength(1)
    expect(() => lineCrossings([arch], point(1, 1), point(1, 1))).toThrow(RangeError)
  })
})

describe('levelCrossings', () => {
  it('are the crossings of the level line that change sides, in order', () => {
    fc.assert(
      fc.property(anyCubic, between(-300, 300), (c, height) => {
        fc.pre([c.p0, c.p3].every(({ y }) => Math.abs(y - height) > 1e-6))
        const found = levelCrossings([c], height)
        for (const p of found) {
          expect(p.y).toBe(height)
          expect(nearestOnCubic(c, p).distance).toBeLessThan(1e-9)
        }
        // As many as the ends' sides want, but for pairs.
        expect(found.length % 2).toBe(c.p0.y < height === c.p3.y < height ? 0 : 1)
        const clear = lineCrossings([c], point(0, height), point(1, height)).filter(
          ({ t }) => t > 1e-6 && t < 1 - 1e-6 && Math.abs(tangentAt(c, t).y) > 1e-3,
        )
        for (const { at } of clear) expect(found.some((p) => distance(p, at) < 1e-6)).toBe(true)
        expect(found.length).toBeGreaterThanOrEqual(clear.length)
      }),
      { numRuns: 300 },
    )
  })

  it('a joint, a stretch and an end on the level count once, a touch from either side not', () => {
    const at = (...heights: readonly number[]) => polyline(heights.map((y, k) => point(5 * k, y)))
    expect(levelCrossings(at(-5, 0, 5), 0)).toEqual([point(5, 0)])
    expect(levelCrossings(at(-5, 0, 0, 5), 0)).toEqual([point(5, 0)])
    expect(levelCrossings(at(5, 0, 5), 0)).toEqual([])
    expect(levelCrossings(at(-5, 0, -5), 0)).toEqual([])
    expect(levelCrossings(at(-5, 0, 0, -5, 5), 0)).toEqual([point(17.5, 0)])
    expect(levelCrossings([arch], 75)).toEqual([])
    expect(levelCrossings(at(0, 5), 0)).toEqual([point(0, 0)])
    expect(levelCrossings(at(5, -5, 0), 0)).toEqual([point(2.5, 0), point(10, 0)])
    expect(levelCrossings(at(0, 0), 0)).toEqual([])
    // A needle there and back is crossed twice.
    expect(levelCrossings(polyline([point(0, -5), point(0, 5), point(0, -5)]), 0)).toEqual([point(0, 0), point(0, 0)])
  })
})

function angleAt(a: Cubic, b: Cubic, c: Crossing): number {
  return turnBetween(tangentAt(a, c.a.t), tangentAt(b, c.b.t))
}

/** The angle between two cubics at a point both run through, by sampling. */
function nearestDirections(a: Cubic, b: Cubic, p: { x: number; y: number }): number | undefined {
  const near = (c: Cubic) => {
    let best = 0
    for (let k = 1; k <= 2000; k++)
      if (distance(pointAt(c, k / 2000), p) < distance(pointAt(c, best), p)) best = k / 2000
    return tangentAt(c, best)
  }
  return turnBetween(near(a), near(b))
}
