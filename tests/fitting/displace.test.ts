import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { displace } from '../../src/fitting/displace.ts'
import { smoothProfile } from '../../src/fitting/profile.ts'
import { hobbySpline } from '../../src/geometry/hobby.ts'
import { type Path, reversePath } from '../../src/geometry/path.ts'
import { locate, pathLength, tangentAt } from '../../src/geometry/path-length.ts'
import { point } from '../../src/geometry/point.ts'
import { densePoints, frameAt, largestCorner } from './measure.ts'

/** A smooth line of some cubics, and how far it moves: two shares of its length and two amounts, nothing at the ends or not. */
const arbitrary = fc.record({
  turns: fc.array(fc.double({ min: -0.5, max: 0.5, noNaN: true }), { minLength: 2, maxLength: 5 }),
  step: fc.double({ min: 30, max: 110, noNaN: true }),
  places: fc.tuple(fc.double({ min: 0.25, max: 0.45, noNaN: true }), fc.double({ min: 0.55, max: 0.75, noNaN: true })),
  amounts: fc.tuple(fc.double({ min: -6, max: 10, noNaN: true }), fc.double({ min: -6, max: 10, noNaN: true })),
  extra: fc.record({ x: fc.double({ min: -2, max: 2, noNaN: true }), y: fc.double({ min: -2, max: 2, noNaN: true }) }),
})

type Case = typeof arbitrary extends fc.Arbitrary<infer T> ? T : never

function lineOf({ turns, step }: Case): Path {
  let heading = 0
  const knots = [{ x: 0, y: 0 }]
  for (const turn of turns) {
    heading += turn
    const { x, y } = knots[knots.length - 1] as { x: number; y: number }
    knots.push({ x: x + step * Math.cos(heading), y: y + step * Math.sin(heading) })
  }
  return hobbySpline(knots.map(({ x, y }) => ({ at: point(x, y) })))
}

/** The amounts the plain way, on a line of this length: the profile, and what fades out at its start. */
function wanted({ places, amounts }: Case, length: number) {
  return smoothProfile([
    { at: 0, amount: 0, slope: 0 },
    { at: places[0] * length, amount: amounts[0] },
    { at: places[1] * length, amount: amounts[1] },
    { at: length, amount: 0, slope: 0 },
  ])
}

const FADE = 25

function fading(at: number): number {
  const u = Math.min(1, at / FADE)
  return 1 - u * u * (3 - 2 * u)
}

describe('displace', () => {
  it('follows the exactly moved line within its tolerance, smoothly, and tells where its places went', () => {
    fc.assert(
      fc.property(arbitrary, (one) => {
        const path = lineOf(one)
        const length = pathLength(path)
        const profile = wanted(one, length)
        const moved = displace({ path, start: 0, length, startExtra: one.extra, fade: FADE }, profile)
        if ('folds' in moved) throw new Error(`folds at ${moved.folds.at}`)
        expect(largestCorner(moved.path)).toBeLessThan(1e-3)
        const dense = densePoints(moved.path)
        for (let i = 0; i <= 40; i++) {
          const at = (length * i) / 40
          const { point: from, normal } = frameAt(path, at)
          const [amount, fade] = [profile.amount(at), fading(at)]
          const x = from.x + normal.x * amount + one.extra.x * fade
          const y = from.y + normal.y * amount + one.extra.y * fade
          expect(away(dense, x, y)).toBeLessThan(0.0102)
          // And its place on the new line.
          const k = Math.max(
            1,
            moved.old.findIndex((old) => old >= at - 1e-9),
          )
          const [a, b] = [moved.old[k - 1] as number, moved.old[k] as number]
          const [u, v] = [moved.now[k - 1] as number, moved.now[k] as number]
          const now = locate(moved.path, Math.min(u + ((v - u) * (at - a)) / (b - a), pathLength(moved.path)))
          const there = frameNear(moved.path, now)
          expect(Math.hypot(there.x - x, there.y - y)).toBeLessThan(0.02)
        }
      }),
      { numRuns: 40 },
    )
  })

  it('keeps the amounts at its nodes exactly, by a joint there', () => {
    fc.assert(
      fc.property(arbitrary, (one) => {
        const path = lineOf(one)
        const length = pathLength(path)
        const profile = wanted(one, length)
        const moved = displace({ path, start: 0, length, fade: FADE }, profile)
        if ('folds' in moved) throw new Error(`folds at ${moved.folds.at}`)
        for (const { at, amount } of profile.nodes) {
          const { index, t } = locate(path, at)
          const c = path[index] as Path[number]
          const tangent = tangentAt(c, t)
          const from = frameNear(path, { index, t })
          const [x, y] = [from.x + tangent.y * amount, from.y - tangent.x * amount]
          const joints = [(moved.path[0] as Path[number]).p0, ...moved.path.map(({ p3 }) => p3)]
          expect(Math.min(...joints.map((p) => Math.hypot(p.x - x, p.y - y)))).toBeLessThan(1e-6)
        }
      }),
      { numRuns: 40 },
    )
  })

  it('draws the same line whichever way it runs', () => {
    fc.assert(
      fc.property(arbitrary, (one) => {
        const path = lineOf(one)
        const length = pathLength(path)
        const profile = wanted(one, length)
        const turned = smoothProfile(
          [...profile.nodes].reverse().map(({ at, amount }) => ({ at: length - at, amount: 0 - amount })),
        )
        const there = displace({ path, start: 0, length, fade: FADE }, profile)
        const back = displace({ path: reversePath(path), start: 0, length, fade: FADE }, turned)
        if ('folds' in there || 'folds' in back) throw new Error('folds')
        const again = reversePath(back.path)
        expect(again.length).toBe(there.path.length)
        again.forEach((c, i) => {
          const d = there.path[i] as Path[number]
          for (const p of ['p0', 'p1', 'p2', 'p3'] as const)
            expect(Math.hypot(c[p].x - d[p].x, c[p].y - d[p].y)).toBeLessThan(1e-5)
        })
      }),
      { numRuns: 40 },
    )
  })
})

function frameNear(path: Path, { index, t }: { readonly index: number; readonly t: number }) {
  const c = path[index] as Path[number]
  const u = 1 - t
  const [a, b, d, e] = [u * u * u, 3 * u * u * t, 3 * u * t * t, t * t * t]
  return {
    x: a * c.p0.x + b * c.p1.x + d * c.p2.x + e * c.p3.x,
    y: a * c.p0.y + b * c.p1.y + d * c.p2.y + e * c.p3.y,
  }
}

/** The distance from a polyline. */
function away(line: readonly { x: number; y: number }[], x: number, y: number): number {
  let least = Number.POSITIVE_INFINITY
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1] as { x: number; y: number }, line[i] as { x: number; y: number }]
    const [dx, dy] = [b.x - a.x, b.y - a.y]
    const share = Math.min(1, Math.max(0, ((x - a.x) * dx + (y - a.y) * dy) / Math.max(1e-18, dx * dx + dy * dy)))
    least = Math.min(least, Math.hypot(a.x + share * dx - x, a.y + share * dy - y))
  }
  return least
}
