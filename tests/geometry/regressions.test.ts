import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { arcLength } from '../../src/geometry/arc-length.ts'
import { area } from '../../src/geometry/area.ts'
import { crossings, selfCrossings } from '../../src/geometry/crossings.ts'
import { type Cubic, cubic, pointAt } from '../../src/geometry/cubic.ts'
import { smallestRadius } from '../../src/geometry/curvature-extrema.ts'
import { nearestOnCubic } from '../../src/geometry/nearest.ts'
import { offset } from '../../src/geometry/offset.ts'
import { endOf, movePath, type Path, startOf } from '../../src/geometry/path.ts'
import { pathLength, tangentAt } from '../../src/geometry/path-length.ts'
import { distance, heading, point } from '../../src/geometry/point.ts'
import { refit } from '../../src/geometry/refit.ts'

type Numbers = readonly [number, number][]

function fixture<T>(name: string): T {
  return JSON.parse(readFileSync(new URL(`../../fixtures/regressions/${name}.json`, import.meta.url), 'utf8')) as T
}

function cubicOf(p: Numbers): Cubic {
  const [a, b, c, d] = p.map(([x, y]) => point(x, y)) as [never, never, never, never]
  return cubic(a, b, c, d)
}

describe('offsets that broke elsewhere (CASES 37)', () => {
  for (const name of [
    'bezier-js-offset-leaves-hole',
    'bezier-js-offset-ends-short',
    'bezier-js-offset-of-handle-on-end',
    'bezier-js-offset-slivers',
  ]) {
    const { cubic: numbers, distance: d } = fixture<{ cubic: Numbers; distance: number }>(name)
    for (const by of [d, -d, d / 10]) {
      it(`${name}, by ${by}`, () => {
        const c = cubicOf(numbers)
        const path = offset([c], by)
        expectOffset(c, path, by)
        // A handful of cubics, no slivers.
        expect(path.length).toBeLessThanOrEqual(8)
        for (const piece of path) expect(arcLength(piece)).toBeGreaterThan(0.1)
      })
    }
  }

  /** Ends at point + distance · normal, no gaps, every point at its distance, nothing left out. */
  function expectOffset(c: Cubic, path: Path, by: number): void {
    for (const t of [0, 1]) {
      const p = pointAt(c, t)
      const d = tangentAt(c, t)
      const end = t === 0 ? startOf(path) : endOf(path)
      expect(distance(end, point(p.x + by * d.y, p.y - by * d.x))).toBeLessThan(1e-9)
    }
    path.forEach((piece, k) => {
      if (k > 0) expect(piece.p0).toEqual(path[k - 1]?.p3)
      for (let i = 0; i <= 50; i++) {
        expect(Math.abs(nearestOnCubic(c, pointAt(piece, i / 50)).distance - Math.abs(by))).toBeLessThan(0.01)
      }
    })
    for (let i = 0; i <= 500; i++) {
      const p = pointAt(c, i / 500)
      const d = tangentAt(c, i / 500)
      const q = point(p.x + by * d.y, p.y - by * d.x)
      // Points of the plain offset that lie nearer to another part of the curve are rightly missing.
      if (nearestOnCubic(c, q).distance < Math.abs(by) - 1e-6) continue
      expect(Math.min(...path.map((piece) => nearestOnCubic(piece, q).distance))).toBeLessThan(0.01)
    }
  }
})

describe('nearly coincident edges (CASES 38)', () => {
  const { outline, moves } = fixture<{ outline: Numbers[]; moves: number[] }>('paper-nearly-coincident-edges')
  const path = outline.map(cubicOf)

  it('an outline and itself, moved by nothing or nearly nothing, overlap along the whole line', () => {
    for (const by of [0, ...moves]) {
      for (const [x, y] of [
        [by, 0],
        [0, by],
        [by, by],
      ] as const) {
        const moved = movePath(path, (p) => point(p.x + x, p.y + y))
        const found = crossings(path, moved)
        expect(found.crossings).toEqual([])
        // Three edges, which may come as one stretch or several: together the whole.
        const covered = found.overlaps.reduce((sum, { a }) => sum + a[1].index + a[1].t - a[0].index - a[0].t, 0)
        expect(covered).toBeCloseTo(3, 6)
        expect(area(moved)).toBeCloseTo(area(path), 6)
      }
    }
    expect(selfCrossings(path)).toEqual({ crossings: [], overlaps: [] })
  })

  it('moved by more than the kernel tells apart, it crosses itself twice', () => {
    const moved = movePath(path, (p) => point(p.x + 0.01, p.y + 0.02))
    expect(crossings(path, moved).crossings.filter((c) => c.kind === 'cross')).toHaveLength(2)
  })
})

describe('hairpins (CASES 39)', () => {
  it('are measured to the accuracy asked', () => {
    const { cubic: numbers, length } = fixture<{ cubic: Numbers; length: number }>('hairpin-measured-short')
    const hairpin = cubicOf(numbers)
    expect(Math.abs(arcLength(hairpin) - length)).toBeLessThan(1e-3)
    // The polygon through many points agrees.
    let sum = 0
    for (let k = 0; k < 200_000; k++)
      sum += distance(pointAt(hairpin, k / 200_000), pointAt(hairpin, (k + 1) / 200_000))
    expect(Math.abs(pathLength([hairpin]) - sum)).toBeLessThan(1e-4)
  })
})

describe('our own', () => {
  it('refit-handle-of-no-length: a nearly straight stretch keeps its radius', () => {
    const { samples, tolerance, radius, startAngle, endAngle } = fixture<{
      samples: Numbers
      tolerance: number
      radius: number
      startAngle: number
      endAngle: number
    }>('refit-handle-of-no-length')
    const points = samples.map(([x, y]) => point(x, y))
    const directions = { startDirection: heading(startAngle), endDirection: heading(endAngle) }
    const { path } = refit(points, { tolerance, ...directions })
    for (const p of points) expect(Math.min(...path.map((c) => nearestOnCubic(c, p).distance))).toBeLessThan(tolerance)
    for (const c of path) expect(smallestRadius(c)).toBeGreaterThan(radius / 5)
  })
})
