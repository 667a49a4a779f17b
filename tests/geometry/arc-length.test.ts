import { Bezier } from 'bezier-js'
import fc from 'fast-check'
import paper from 'paper/dist/paper-core.js'
import { beforeAll, describe, expect, it } from 'vitest'
import {
  arcLength,
  arcLengthBetween,
  lengthBounds,
  parameterAtLength,
  splitCubicAtLength,
} from '../../src/geometry/arc-length.ts'
import { type Cubic, cubic, line, moveCubic, pointAt, reverseCubic, splitCubic } from '../../src/geometry/cubic.ts'
import { point } from '../../src/geometry/point.ts'
import { anyCubic, anyMove, between, fairCubic, pathData } from './shapes.ts'

const ACCURACIES = [1, 1e-1, 1e-2, 1e-3, 1e-4, 1e-5, 1e-6, 1e-7, 1e-8, 1e-9]

/** The cubic of degree two with these control points, whose length has a closed form. */
function raised(ax: number, ay: number, bx: number, by: number, cx: number, cy: number): Cubic {
  const at = (u: number, v: number) => u + (2 / 3) * (v - u)
  return cubic(point(ax, ay), point(at(ax, bx), at(ay, by)), point(at(cx, bx), at(cy, by)), point(cx, cy))
}

/** ∫ √(A t² + B t + C) over [0, 1]. */
function quadraticLength(ax: number, ay: number, bx: number, by: number, cx: number, cy: number): number {
  const px = 2 * (ax - 2 * bx + cx)
  const py = 2 * (ay - 2 * by + cy)
  const qx = 2 * (bx - ax)
  const qy = 2 * (by - ay)
  const A = px * px + py * py
  const B = 2 * (px * qx + py * qy)
  const C = qx * qx + qy * qy
  const F = (t: number) => {
    const s = Math.sqrt(A * t * t + B * t + C)
    return (
      ((2 * A * t + B) * s) / (4 * A) +
      ((4 * A * C - B * B) / (8 * A ** 1.5)) * Math.log(2 * A * t + B + 2 * Math.sqrt(A) * s)
    )
  }
  return F(1) - F(0)
}

/** The total way of a straight cubic with control values a, b, c, d: it turns where its speed changes sign. */
function straightWay(a: number, b: number, c: number, d: number): number {
  const x = (t: number) => (1 - t) ** 3 * a + 3 * (1 - t) ** 2 * t * b + 3 * (1 - t) * t * t * c + t ** 3 * d
  const p = d - 3 * c + 3 * b - a
  const q = 2 * (c - 2 * b + a)
  const r = b - a
  const root = Math.sqrt(q * q - 4 * p * r)
  const stops = [0, (-q - root) / (2 * p), (-q + root) / (2 * p), 1]
    .filter((t) => t >= 0 && t <= 1)
    .sort((s, t) => s - t)
  let way = 0
  for (let k = 1; k < stops.length; k++) way += Math.abs(x(stops[k] as number) - x(stops[k - 1] as number))
  return way
}

const s2 = Math.SQRT2
const CLOSED_FORMS: readonly { readonly name: string; readonly c: Cubic; readonly length: number }[] = [
  { name: 'straight line', c: line(point(0, 0), point(30, 40)), length: 50 },
  {
    name: 'straight line with its handles on its ends',
    c: cubic(point(0, 0), point(0, 0), point(30, 40), point(30, 40)),
    length: 50,
  },
  {
    name: 'straight line with both handles on its start',
    c: cubic(point(0, 0), point(0, 0), point(0, 0), point(3, 4)),
    length: 5,
  },
  { name: 'a single point', c: cubic(point(7, 7), point(7, 7), point(7, 7), point(7, 7)), length: 0 },
  {
    name: 'straight backtrack',
    c: cubic(point(0, 0), point(150, 0), point(-50, 0), point(100, 0)),
    length: straightWay(0, 150, -50, 100),
  },
  {
    name: 'backtrack that fools an estimate by halves',
    c: cubic(point(192.025, 0), point(123.472, 0), point(391.334, 0), point(323.714, 0)),
    length: straightWay(192.025, 123.472, 391.334, 323.714),
  },
  // Its speed is 9·|s|·√(4 + 9 s²): length 9·2·(13^1.5 − 8) / 27.
  {
    name: 'semicubical cusp x = 9 s², y = 9 s³ on [−1, 1]',
    c: semicubical(9),
    length: (2 * 9 * (13 * Math.sqrt(13) - 8)) / 27,
  },
  {
    name: 'parabola y = x² / 100 on [0, 100]',
    c: raised(0, 0, 50, 0, 100, 100),
    length: quadraticLength(0, 0, 50, 0, 100, 100),
  },
  { name: 'hairpin parabola', c: raised(0, 0, 400, 0.5, 0, 1), length: quadraticLength(0, 0, 400, 0.5, 0, 1) },
  { name: 'needle parabola', c: raised(0, 0, 400, 5e-5, 0, 1e-4), length: quadraticLength(0, 0, 400, 5e-5, 0, 1e-4) },
  // x = t − t³/3, y = t²: its speed is 1 + t², so the length is t + t³/3 (Tschirnhausen's cubic, a loop).
  { name: 'Tschirnhausen loop on [−3, 3]', c: tschirnhausen(3, 10), length: 10 * (2 * (3 + 9)) },
  { name: 'diagonal of a square', c: cubic(point(0, 0), point(1, 1), point(2, 2), point(10, 10)), length: 10 * s2 },
]

function fromPowers(x: readonly number[], y: readonly number[], from: number, to: number): Cubic {
  const f = (c: readonly number[], t: number) => c.reduce((sum, a, k) => sum + a * t ** k, 0)
  const df = (c: readonly number[], t: number) => c.reduce((sum, a, k) => (k ? sum + k * a * t ** (k - 1) : sum), 0)
  const h = (to - from) / 3
  return cubic(
    point(f(x, from), f(y, from)),
    point(f(x, from) + h * df(x, from), f(y, from) + h * df(y, from)),
    point(f(x, to) - h * df(x, to), f(y, to) - h * df(y, to)),
    point(f(x, to), f(y, to)),
  )
}

function semicubical(size: number): Cubic {
  return fromPowers([0, 0, size], [0, 0, 0, size], -1, 1)
}

function tschirnhausen(reach: number, size: number): Cubic {
  return fromPowers([0, size, 0, -size / 3], [0, 0, size], -reach, reach)
}

describe('arcLength', () => {
  for (const { name, c, length } of CLOSED_FORMS) {
    it(`keeps every accuracy from 1 to 1e-9: ${name}`, () => {
      for (const accuracy of ACCURACIES) {
        // The floor the docstring states: 1e-14 of the length.
        expect(Math.abs(arcLength(c, { accuracy }) - length), `accuracy ${accuracy}`).toBeLessThan(
          accuracy + 1e-14 * length,
        )
      }
    })
  }

  it('keeps its accuracy on parabolas of any shape against their closed form', () => {
    const value = between(-200, 200)
    fc.assert(
      fc.property(fc.tuple(value, value, value, value, value, value), fc.constantFrom(...ACCURACIES), (p, accuracy) => {
        const [ax, ay, bx, by, cx, cy] = p
        const bend = Math.hypot(ax - 2 * bx + cx, ay - 2 * by + cy)
        const area = Math.abs((bx - ax) * (cy - ay) - (by - ay) * (cx - ax))
        // Nearly straight ones divide by nothing in the closed form.
        fc.pre(bend > 20 && area > 100)
        expect(Math.abs(arcLength(raised(...p), { accuracy }) - quadraticLength(...p))).toBeLessThan(accuracy + 1e-9)
      }),
      { numRuns: 1000 },
    )
  })

  it('keeps its accuracy on straight lines that run back and forth', () => {
    const value = between(-200, 200)
    fc.assert(
      fc.property(fc.tuple(value, value, value, value), fc.constantFrom(...ACCURACIES), (p, accuracy) => {
        const [a, b, c, d] = p
        fc.pre(Math.abs(d - 3 * c + 3 * b - a) > 1)
        // Turned by 30°, so that both coordinates take part.
        const x = (v: number) => point(v * Math.cos(Math.PI / 6), v * 0.5)
        const length = arcLength(cubic(x(a), x(b), x(c), x(d)), { accuracy })
        expect(Math.abs(length - straightWay(a, b, c, d))).toBeLessThan(accuracy + 1e-9)
      }),
      { numRuns: 1000 },
    )
  })

  it('measures the hairpin of 498.0 mm that sampling takes for 476.6', () => {
    const hairpin = cubic(point(0, 0), point(332, 0.001), point(332, -0.001), point(0, 0))
    expect(arcLength(hairpin)).toBeCloseTo(498, 3)
  })

  it('lies between the chord and the control polygon, adds up over a cut, ignores moves and direction', () => {
    fc.assert(
      fc.property(anyCubic, between(0, 1), anyMove, (c, t, move) => {
        const whole = arcLength(c)
        const [least, most] = lengthBounds(c)
        expect(whole).toBeGreaterThanOrEqual(least - 1e-9)
        expect(whole).toBeLessThanOrEqual(most + 1e-9)
        const [a, b] = splitCubic(c, t)
        expect(Math.abs(arcLength(a) + arcLength(b) - whole)).toBeLessThan(3e-7)
        expect(Math.abs(arcLengthBetween(c, 0, t) - arcLength(a))).toBeLessThan(2e-7)
        expect(Math.abs(arcLength(reverseCubic(c)) - whole)).toBeLessThan(2e-7)
        expect(Math.abs(arcLength(moveCubic(c, move)) - whole)).toBeLessThan(2e-7)
        for (const factor of [1e-3, 1e3]) {
          const scaled = moveCubic(c, (p) => point(p.x * factor, p.y * factor))
          const accuracy = 1e-6 * factor
          expect(Math.abs(arcLength(scaled, { accuracy }) - whole * factor)).toBeLessThan(1.2 * accuracy)
        }
      }),
      { numRuns: 300 },
    )
  })

  it('throws on an accuracy that is not above zero and returns on coordinates that are not numbers', () => {
    const c = cubic(point(0, 0), point(1, 2), point(3, 4), point(5, 0))
    expect(() => arcLength(c, { accuracy: 0 })).toThrow(RangeError)
    expect(() => arcLength(c, { accuracy: Number.NaN })).toThrow(RangeError)
    expect(arcLength({ ...c, p1: point(Number.NaN, 0) })).toBeNaN()
  })

  describe('beside other libraries, on curves smooth enough for them', () => {
    beforeAll(() => {
      paper.setup([1, 1])
      paper.settings.insertItems = false
    })

    it('agrees with bezier-js and paper', () => {
      fc.assert(
        fc.property(fairCubic, (c) => {
          const ours = arcLength(c, { accuracy: 1e-10 })
          expect(Math.abs(new Bezier([c.p0, c.p1, c.p2, c.p3]).length() - ours)).toBeLessThan(1e-6)
          expect(Math.abs(new paper.Path(pathData([c])).length - ours)).toBeLessThan(1e-4)
        }),
      )
    })
  })
})

describe('parameterAtLength', () => {
  it('comes back to the length it was given, cusps and backtracks included', () => {
    fc.assert(
      fc.property(anyCubic, between(0, 1), fc.constantFrom(1e-2, 1e-5, 1e-9), (c, share, accuracy) => {
        const whole = arcLength(c, { accuracy: 1e-11 })
        const t = parameterAtLength(c, share * whole, { accuracy })
        expect(Math.abs(arcLengthBetween(c, 0, t, { accuracy: 1e-11 }) - share * whole)).toBeLessThan(accuracy + 1e-10)
      }),
      { numRuns: 300 },
    )
  })

  it('finds its way through a cusp and gives the ends beyond the ends', () => {
    const cusp = semicubical(9)
    const whole = arcLength(cusp)
    expect(pointAt(cusp, parameterAtLength(cusp, whole / 2, { accuracy: 1e-9 })).x).toBeCloseTo(0, 6)
    expect(parameterAtLength(cusp, -1)).toBe(0)
    expect(parameterAtLength(cusp, whole + 1)).toBe(1)
    const [a, b] = splitCubicAtLength(cusp, 3)
    expect(arcLength(a)).toBeCloseTo(3, 6)
    expect(arcLength(a) + arcLength(b)).toBeCloseTo(whole, 6)
  })
})
