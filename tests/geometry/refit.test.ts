import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { pointAt } from '../../src/geometry/cubic.ts'
import { smallestRadius } from '../../src/geometry/curvature-extrema.ts'
import { nearestOnCubic } from '../../src/geometry/nearest.ts'
import type { Path } from '../../src/geometry/path.ts'
import { tangentAt } from '../../src/geometry/path-length.ts'
import { along, distance, heading, type Point, point, scale, turnBetween } from '../../src/geometry/point.ts'
import { type Refit, refit } from '../../src/geometry/refit.ts'
import { anyMove, between, fairCubic, roundOutline } from './shapes.ts'

const sampled = (f: (t: number) => Point, n: number) => Array.from({ length: n + 1 }, (_, k) => f(k / n))

/** What every refit promises, whatever the samples. */
function expectPromise(samples: readonly Point[], { path, parameters }: Refit, tolerance: number): void {
  expect(parameters).toHaveLength(samples.length)
  let last = -1
  samples.forEach((sample, k) => {
    const { index, t } = parameters[k] as (typeof parameters)[number]
    expect(index + t).toBeGreaterThanOrEqual(last)
    last = index + t
    expect(distance(pointAt(path[index] as Path[number], t), sample)).toBeLessThanOrEqual(tolerance)
  })
  expect(path[0]?.p0).toEqual(samples[0])
  expect(path[path.length - 1]?.p3).toEqual(samples[samples.length - 1])
  expect(parameters[0]).toEqual({ index: 0, t: 0 })
  expect(parameters[parameters.length - 1]).toEqual({ index: path.length - 1, t: 1 })
  for (let k = 1; k < path.length; k++) {
    expect(path[k]?.p0).toBe(path[k - 1]?.p3)
    const before = tangentAt(path[k - 1] as Path[number], 1)
    expect(Math.abs(turnBetween(before, tangentAt(path[k] as Path[number], 0)))).toBeLessThan(1e-9)
  }
}

/** The largest distance from the true curve, between samples too. */
function trueError(f: (t: number) => Point, path: Path): number {
  let worst = 0
  for (let k = 0; k <= 1000; k++)
    worst = Math.max(worst, Math.min(...path.map((c) => nearestOnCubic(c, f(k / 1000)).distance)))
  return worst
}

const arc =
  (angle: number, radius = 100) =>
  (t: number) =>
    scale(heading(angle * t), radius)
const wave = (t: number) => point(300 * t, 40 * Math.sin(6 * t))
const spiral = (t: number) => scale(heading(8 * t), 20 + 100 * t)

/** Samples about 1 mm apart of a line whose curvature runs smoothly through the `bends` over the radius; its last heading. */
function gentle(bends: readonly number[], radius: number, length: number): { samples: Point[]; end: number } {
  const count = Math.max(8, Math.ceil(length))
  const fine = 20
  const step = length / count / fine
  const samples = [point(0, 0)]
  let p = point(0, 0)
  let angle = 0
  for (let i = 0; i < count * fine; i++) {
    const place = ((i + 0.5) / count / fine) * (bends.length - 1)
    const k = Math.floor(place)
    const share = (1 - Math.cos(Math.PI * (place - k))) / 2
    const curvature = ((bends[k] as number) * (1 - share) + (bends[k + 1] as number) * share) / radius
    p = along(p, heading(angle + (curvature * step) / 2), step)
    angle += curvature * step
    if ((i + 1) % fine === 0) samples.push(p)
  }
  return { samples, end: angle }
}

describe('refit', () => {
  it('keeps its promise on smooth curves at every tolerance, between the samples too', () => {
    for (const tolerance of [1, 0.1, 0.05, 0.01, 1e-3, 1e-4]) {
      for (const [f, n] of [
        [arc(Math.PI / 2), 80],
        [arc(2 * Math.PI), 300],
        [wave, 200],
        [spiral, 400],
      ] as const) {
        const samples = sampled(f, n)
        const fitted = refit(samples, { tolerance })
        expectPromise(samples, fitted, tolerance)
        expect(trueError(f, fitted.path)).toBeLessThan(1.05 * tolerance)
      }
    }
  })

  it('takes as few cubics as the known error of cubic arcs allows', () => {
    // A cubic over an arc of angle a is off by about R·(a/90°)⁶·2.7e-4 with its best handles outside, half of it in least squares.
    const count = (angle: number, tolerance: number) => refit(sampled(arc(angle), 200), { tolerance }).path.length
    expect(count(Math.PI / 2, 0.03)).toBe(1)
    expect(count(2 * Math.PI, 0.1)).toBe(4)
    expect(count(2 * Math.PI, 0.03)).toBeLessThanOrEqual(5)
    expect(count(2 * Math.PI, 1e-3)).toBeLessThanOrEqual(8)
  })

  it('gives back a cubic that its samples come from', () => {
    fc.assert(
      fc.property(fairCubic, (c) => {
        const samples = sampled((t) => pointAt(c, t), 60)
        const directions = { startDirection: tangentAt(c, 0), endDirection: tangentAt(c, 1) }
        const fitted = refit(samples, { tolerance: 1e-4, ...directions })
        expectPromise(samples, fitted, 1e-4)
        expect(fitted.path).toHaveLength(1)
        // Without them the end directions come from the first samples, 1 to 5 mm apart here.
        expect(refit(samples, { tolerance: 0.01 }).path.length).toBeLessThanOrEqual(3)
      }),
    )
  })

  it('keeps given end directions exactly and its promise on any smooth outline, moved anywhere', () => {
    fc.assert(
      fc.property(
        roundOutline(80, 160),
        anyMove,
        fc.constantFrom(0.5, 0.05, 0.01),
        between(-0.3, 0.3),
        (outline, move, tolerance, off) => {
          const samples = outline.flatMap((c) => sampled((t) => move(pointAt(c, t)), 40).slice(1))
          const startDirection = heading(off)
          const fitted = refit(samples, { tolerance, startDirection, endDirection: startDirection })
          expectPromise(samples, fitted, tolerance)
          expect(Math.abs(turnBetween(tangentAt(fitted.path[0] as Path[number], 0), startDirection))).toBeLessThan(1e-9)
          const last = fitted.path[fitted.path.length - 1] as Path[number]
          expect(Math.abs(turnBetween(tangentAt(last, 1), startDirection))).toBeLessThan(1e-9)
        },
      ),
      { numRuns: 60 },
    )
  })

  it('is the same whichever way the samples run, and the same every time', () => {
    for (const tolerance of [0.1, 0.01]) {
      const samples = sampled(spiral, 401)
      const there = refit(samples, { tolerance }).path
      const back = refit([...samples].reverse(), { tolerance }).path
      expect(back).toHaveLength(there.length)
      there.forEach((c, k) => {
        expect(distance(c.p0, back[back.length - 1 - k]?.p3 as Point)).toBeLessThan(1e-9)
      })
      expect(refit(samples, { tolerance })).toEqual(refit(samples, { tolerance }))
    }
  })

  it('stays steady on samples that are off by less than the tolerance', () => {
    let seed = 1
    const noise = () => {
      seed = (seed * 16807) % 2147483647
      return 0.03 * (seed / 2147483647 - 0.5)
    }
    const samples = sampled(wave, 300).map((p) => point(p.x, p.y + noise()))
    const fitted = refit(samples, { tolerance: 0.05 })
    expectPromise(samples, fitted, 0.05)
    expect(fitted.path.length).toBeLessThanOrEqual(refit(sampled(wave, 300), { tolerance: 0.05 }).path.length + 2)
    expect(trueError(wave, fitted.path)).toBeLessThan(0.06)
  })

  it('of gentle curves is gentle: no radius far below the smallest of the curve', () => {
    const bend = fc.tuple(between(-1, 1), fc.constantFrom(1, 1, 0.01)).map(([k, factor]) => k * factor)
    fc.assert(
      fc.property(
        fc.array(bend, { minLength: 4, maxLength: 4 }),
        between(20, 300),
        between(Math.log(2), Math.log(400)),
        fc.boolean(),
        (bends, radius, logLength, given) => {
          const { samples, end } = gentle(bends, radius, Math.exp(logLength))
          const directions = given ? { startDirection: heading(0), endDirection: heading(end) } : {}
          const fitted = refit(samples, { tolerance: 0.01, ...directions })
          expectPromise(samples, fitted, 0.01)
          for (const c of fitted.path) expect(smallestRadius(c)).toBeGreaterThan(radius / 5)
        },
      ),
      { numRuns: 500 },
    )
  })

  it('scales with its samples', () => {
    const samples = sampled(wave, 200)
    for (const factor of [1e-3, 1e3]) {
      const scaled = samples.map((p) => scale(p, factor))
      const fitted = refit(scaled, { tolerance: 0.01 * factor })
      expectPromise(scaled, fitted, 0.01 * factor)
      expect(fitted.path).toHaveLength(refit(samples, { tolerance: 0.01 }).path.length)
    }
  })

  it('takes two, three and repeated samples, straight lines and corners', () => {
    const two = [point(0, 0), point(10, 0)]
    expectPromise(two, refit(two), 0.01)
    const three = [point(0, 0), point(10, 3), point(20, 0)]
    expectPromise(three, refit(three), 0.01)
    const repeated = [point(0, 0), point(0, 0), point(5, 1), point(5, 1), point(10, 0), point(10, 0)]
    expectPromise(repeated, refit(repeated), 0.01)
    const straight = sampled((t) => point(100 * t, 30 * t), 50)
    const fitted = refit(straight)
    expectPromise(straight, fitted, 1e-9)
    expect(fitted.path).toHaveLength(1)
    const corner = sampled((t) => point(300 * t, Math.abs(100 - 200 * t)), 100)
    expectPromise(corner, refit(corner, { tolerance: 0.05 }), 0.05)
    const jagged = sampled((t) => point(100 * t, 10 * (Math.round(40 * t) % 2)), 40)
    expectPromise(jagged, refit(jagged, { tolerance: 0.01 }), 0.01)
  })

  it('throws on what cannot be fitted', () => {
    expect(() => refit([point(0, 0)])).toThrow(RangeError)
    expect(() => refit([point(0, 0), point(0, 0)])).toThrow(RangeError)
    expect(() => refit([point(0, 0), point(Number.NaN, 0)])).toThrow(RangeError)
    expect(() => refit([point(0, 0), point(1, 0)], { tolerance: 0 })).toThrow(RangeError)
  })
})
