import { type Cubic, curvatureAt } from './cubic.ts'
import { bend, cubicTerms } from './cubic-terms.ts'
import { signChanges, valueAt } from './sign-changes.ts'

// The speed below which a cubic stands still, as a share of its control polygon.
const STANDSTILL = 1e-6

/**
 * The parameters strictly inside (0, 1) where the signed curvature of a cubic, in 1/mm, has a local maximum or minimum, in
 * rising order, at most five. A straight line has none; a cusp, where the curvature is infinite, is not one. They are the
 * sign changes of a polynomial of the fifth degree: exact to rounding, two that nearly coincide may be taken for none,
 * and a line that is straight but for rounding has those of its rounding. Cost: about 3 µs. Never throws: there is none
 * where a coordinate is not a number.
 */
export function curvatureExtrema(c: Cubic): number[] {
  return extrema(bending(c)).flatMap(({ t, cusp }) => (cusp ? [] : [t]))
}

/**
 * The smallest radius of curvature on a cubic, ends included, mm: at an extremum of the curvature or at an end.
 * Infinity on a straight line, 0 at a cusp and where a handle lies on its end point but not on the line. Exact to
 * rounding. Cost: about 3 µs. Never throws: not a number where a coordinate is not one.
 */
export function smallestRadius(c: Cubic): number {
  const bent = bending(c)
  const { size } = bent
  if (isStraight(bent)) return Number.isNaN(size) ? size : Number.POSITIVE_INFINITY
  let most = 0
  for (const { t, cusp } of extrema(bent))
    most = Math.max(most, cusp ? Number.POSITIVE_INFINITY : Math.abs(curvatureAt(c, t)))
  for (const t of [0, 1]) {
    const here = Math.abs(curvatureAt(c, t))
    // Not a number where the cubic stands still.
    most = Math.max(most, Number.isNaN(here) ? Number.POSITIVE_INFINITY : here)
  }
  return 1 / most
}

/** C′ × C″ / 18 and C′ · C′ / 9 as polynomials, and the length of the control polygon, mm. */
interface Bending {
  readonly f: readonly number[]
  readonly g: readonly number[]
  readonly size: number
}

/** The sign changes of the curvature's derivative, cusps among them. */
function extrema(bent: Bending): { readonly t: number; readonly cusp: boolean }[] {
  if (isStraight(bent)) return []
  const { f, g, size } = bent
  // With the curvature k = f / g^(3/2), the sign of k′ is that of 2·f′·g − 3·f·g′.
  return signChanges(slopes(f, g, 2, -3)).map((t) => ({
    t,
    cusp: Math.sqrt(Math.abs(valueAt(g, t))) <= STANDSTILL * size,
  }))
}

function bending(c: Cubic): Bending {
  const terms = cubicTerms(c)
  const { ax, ay, bx, by, dx, dy } = terms
  const middle = Math.hypot(c.p2.x - c.p1.x, c.p2.y - c.p1.y)
  return {
    f: bend(terms),
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

function isStraight({ f, size }: Bending): boolean {
  return !(Math.max(...f.map(Math.abs)) > 1e-13 * size * size)
}

/** a·p′·q + b·p·q′. */
function slopes(p: readonly number[], q: readonly number[], a: number, b: number): number[] {
  const result: number[] = []
  for (let n = 0; n < p.length + q.length - 2; n++) {
    let rising = 0
    let falling = 0
    for (let i = Math.max(0, n + 2 - q.length); i < p.length && i <= n + 1; i++) {
      // p[i] meets q[k]: together they stand before the power i + k − 1 = n.
      const k = n + 1 - i
      const both = (p[i] as number) * (q[k] as number)
      rising += i * both
      falling += k * both
    }
    result.push(a * rising + b * falling)
  }
  return result
}
