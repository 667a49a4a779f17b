import { type Cubic, curvatureAt } from './cubic.ts'
import { roots } from './roots.ts'

// The speed below which a cubic stands still, as a share of its control polygon.
const STANDSTILL = 1e-6
// Relative size below which the sign of the polynomial cannot be told.
const ROUNDING = 1e-12

/**
 * The parameters strictly inside (0, 1) where the signed curvature of a cubic, in 1/mm, has a local maximum or minimum, in
 * rising order, at most five. A straight line has none; a cusp, where the curvature is infinite, is not one. They are the
 * sign changes of a polynomial of the fifth degree: exact to rounding, two that nearly coincide may be taken for none,
 * and a line that is straight but for rounding has those of its rounding. Cost: about 3 µs. Never throws: there is none
 * where a coordinate is not a number.
 */
export function curvatureExtrema(c: Cubic): number[] {
  return extrema(c).flatMap(({ t, cusp }) => (cusp ? [] : [t]))
}

/**
 * The smallest radius of curvature on a cubic, ends included, mm: at an extremum of the curvature or at an end.
 * Infinity on a straight line, 0 at a cusp and where a handle lies on its end point but not on the line. Exact to
 * rounding. Cost: about 3 µs. Never throws: not a number where a
 * coordinate is not one.
 */
export function smallestRadius(c: Cubic): number {
  const { f, size } = bending(c)
  if (isStraight(f, size)) return Number.isNaN(size) ? size : Number.POSITIVE_INFINITY
  let most = 0
  for (const { t, cusp } of extrema(c))
    most = Math.max(most, cusp ? Number.POSITIVE_INFINITY : Math.abs(curvatureAt(c, t)))
  for (const t of [0, 1]) {
    const here = Math.abs(curvatureAt(c, t))
    // Not a number where the cubic stands still.
    most = Math.max(most, Number.isNaN(here) ? Number.POSITIVE_INFINITY : here)
  }
  return 1 / most
}

/** The sign changes of the curvature's derivative, cusps among them. */
function extrema(c: Cubic): { readonly t: number; readonly cusp: boolean }[] {
  const { f, g, size } = bending(c)
  if (isStraight(f, size)) return []
  // With the curvature k = f / g^(3/2), the sign of k′ is that of 2·f′·g − 3·f·g′.
  const rise = sum(scaled(product(derivative(f), g), 2), scaled(product(f, derivative(g)), -3))
  const zero = ROUNDING * rise.reduce((total, value) => total + Math.abs(value), 0)
  const stops = [0, ...roots(rise).filter((t) => t > 0 && t < 1), 1]
  const found: { t: number; cusp: boolean }[] = []
  let before = 0
  for (let k = 1; k < stops.length; k++) {
    const t = stops[k - 1] as number
    const value = valueAt(rise, (t + (stops[k] as number)) / 2)
    if (!(Math.abs(value) > zero)) continue
    if (before !== 0 && value > 0 !== before > 0)
      found.push({ t, cusp: Math.sqrt(Math.abs(valueAt(g, t))) <= STANDSTILL * size })
    before = value
  }
  return found
}

/** C′ × C″ / 18 and C′ · C′ / 9 as polynomials, and the length of the control polygon, mm. */
function bending(c: Cubic): { readonly f: readonly number[]; readonly g: readonly number[]; readonly size: number } {
  const ax = c.p3.x - 3 * c.p2.x + 3 * c.p1.x - c.p0.x
  const ay = c.p3.y - 3 * c.p2.y + 3 * c.p1.y - c.p0.y
  const bx = c.p2.x - 2 * c.p1.x + c.p0.x
  const by = c.p2.y - 2 * c.p1.y + c.p0.y
  const dx = c.p1.x - c.p0.x
  const dy = c.p1.y - c.p0.y
  const middle = Math.hypot(c.p2.x - c.p1.x, c.p2.y - c.p1.y)
  // C′/3 = d + 2bt + at², C″/6 = b + at.
  return {
    f: [dx * by - dy * bx, dx * ay - dy * ax, bx * ay - by * ax],
    g: [
      dx * dx + dy * dy,
      4 * (dx * bx + dy * by),
      4 * (bx * bx + by * by) + 2 * (dx * ax + dy * ay),
      4 * (bx * ax + by * ay),
      ax * ax + ay * ay,
    ],
    size: Math.hypot(dx, dy) + middle + Math.hypot(c.p3.x - c.p2.x, c.p3.y - c.p2.y),
  }
}

function isStraight(f: readonly number[], size: number): boolean {
  return !(Math.max(...f.map(Math.abs)) > 1e-13 * size * size)
}

function derivative(p: readonly number[]): number[] {
  return p.slice(1).map((value, k) => value * (k + 1))
}

function product(p: readonly number[], q: readonly number[]): number[] {
  const result = new Array<number>(p.length + q.length - 1).fill(0)
  p.forEach((u, i) => {
    q.forEach((v, k) => {
      result[i + k] = (result[i + k] as number) + u * v
    })
  })
  return result
}

function scaled(p: readonly number[], factor: number): number[] {
  return p.map((value) => value * factor)
}

function sum(p: readonly number[], q: readonly number[]): number[] {
  return Array.from({ length: Math.max(p.length, q.length) }, (_, k) => (p[k] ?? 0) + (q[k] ?? 0))
}

function valueAt(p: readonly number[], t: number): number {
  return p.reduceRight((value, coefficient) => value * t + coefficient, 0)
}
