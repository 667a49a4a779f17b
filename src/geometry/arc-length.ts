import { type Cubic, derivativeAt, secondDerivativeAt, splitCubic } from './cubic.ts'
import { LENGTH_ACCURACY } from './defaults.ts'
import { distance } from './point.ts'

export interface LengthOptions {
  /** Largest absolute error of the returned number, mm. */
  readonly accuracy?: number
}

// Asking for less than this share of a stretch is asking for more digits than doubles have.
const ROUNDING = 4e-16
// Halving towards a zero shrinks what is left of the length fourfold, so this depth is never reached.
const DEEPEST = 60

/**
 * The arc length of a cubic in mm, to `accuracy` (default 1e-7), by Gauss–Legendre quadrature of the speed: right on
 * cusps, loops, backtracks, hairpins and handles that lie on their end points. The error is bounded, not estimated: the
 * speed is the root of a polynomial whose complex zeros are known in closed form, and their distance from a stretch
 * bounds the error of the rule on it (L. N. Trefethen, Approximation Theory and Approximation Practice, theorem 19.3);
 * stretches are halved until the bounds add up to less than `accuracy`. Floor: rounding, 1e-14 of the length. Cost:
 * about 0.2 µs on smooth curves, a tenth of it on a straight line. Throws where `accuracy` is not above zero.
 */
export function arcLength(c: Cubic, options?: LengthOptions): number {
  return arcLengthBetween(c, 0, 1, options)
}

/**
 * The arc length between the parameters a ≤ b in mm, to `accuracy` as `arcLength`. Cost: about 0.2 µs. Throws where
 * `accuracy` is not above zero.
 */
export function arcLengthBetween(c: Cubic, a: number, b: number, options?: LengthOptions): number {
  const accuracy = options?.accuracy ?? LENGTH_ACCURACY
  if (!(accuracy > 0)) throw new RangeError('accuracy must be above zero')
  tellSpeed(c)
  return integral(a, b, accuracy)
}

// A zero farther off than this has no influence; a finite number, so that sums stay finite.
const FAR = 1e9
// Zeros nearer to the real line than this share of the stretch are cut at.
const NEAR = 0.1
// A zero this near to the real line is on it: leaving out the rest changes a length by its square.
const REAL = 1e-9

/**
 * C′/3 of the cubic at hand as p t² + q t + v, taken as a complex polynomial (x real, y imaginary), and its zeros
 * x ± iy: px, py, qx, qy, vx, vy, x1, y1, x2, y2. One place for all of them, written anew by every call from outside and
 * read by it alone: an object each would cost as much as the sums.
 */
const SPEED = new Float64Array(10)

function tellSpeed(c: Cubic): void {
  const { p0, p1, p2, p3 } = c
  const vx = p1.x - p0.x
  const vy = p1.y - p0.y
  const ex = p2.x - p1.x
  const ey = p2.y - p1.y
  const fx = p3.x - p2.x
  const fy = p3.y - p2.y
  const px = fx - 2 * ex + vx
  const py = fy - 2 * ey + vy
  const qx = 2 * (ex - vx)
  const qy = 2 * (ey - vy)
  const even = 1e-14 * (Math.abs(p3.x - p0.x) + Math.abs(p3.y - p0.y))
  // Even speed: a straight line, as `line` makes it.
  if (Math.abs(px) + Math.abs(py) + Math.abs(qx) + Math.abs(qy) <= even) {
    SPEED.fill(0, 0, 4)
    SPEED[4] = (p3.x - p0.x) / 3
    SPEED[5] = (p3.y - p0.y) / 3
    SPEED.fill(FAR, 6)
    return
  }
  SPEED[0] = px
  SPEED[1] = py
  SPEED[2] = qx
  SPEED[3] = qy
  SPEED[4] = vx
  SPEED[5] = vy
  // The zeros of p t² + q t + v, the larger sum first so that nothing cancels: z = −2v / (q ± √(q² − 4pv)), or by p.
  const rx = qx * qx - qy * qy - 4 * (px * vx - py * vy)
  const ry = 2 * qx * qy - 4 * (px * vy + py * vx)
  const size = Math.sqrt(rx * rx + ry * ry)
  let sx = Math.sqrt(Math.max(0, (size + rx) / 2))
  let sy = Math.sqrt(Math.max(0, (size - rx) / 2))
  if (ry < 0) sy = -sy
  if (qx * sx + qy * sy < 0) {
    sx = -sx
    sy = -sy
  }
  const mx = -(qx + sx) / 2
  const my = -(qy + sy) / 2
  const mm = mx * mx + my * my
  const pp = px * px + py * py
  // One zero is m / p, the other v / m; where p or m vanishes they lie at infinity.
  SPEED[6] = pp > 0 ? (mx * px + my * py) / pp : FAR
  SPEED[7] = pp > 0 ? Math.abs(my * px - mx * py) / pp : FAR
  SPEED[8] = mm > 0 ? (vx * mx + vy * my) / mm : ((pp > 0 ? SPEED[6] : FAR) as number)
  SPEED[9] = mm > 0 ? Math.abs(vy * mx - vx * my) / mm : ((pp > 0 ? SPEED[7] : FAR) as number)
}

/** The length between the parameters a and b. */
function integral(a: number, b: number, accuracy: number): number {
  const px = SPEED[0] as number
  const py = SPEED[1] as number
  const qx = SPEED[2] as number
  const qy = SPEED[3] as number
  const vx = SPEED[4] as number
  const vy = SPEED[5] as number
  const x1 = SPEED[6] as number
  const y1 = SPEED[7] as number
  const x2 = SPEED[8] as number
  const y2 = SPEED[9] as number
  if (px === 0 && py === 0 && qx === 0 && qy === 0) return 3 * Math.sqrt(vx * vx + vy * vy) * (b - a)
  const goal = accuracy / 3
  // Cut where a zero lies near the line: an exactly real one is a corner of the speed there and none beside it.
  const near = NEAR * (b - a)
  const cut1 = y1 < near && x1 > a && x1 < b ? x1 : b
  const cut2 = y2 < near && x2 > a && x2 < b ? x2 : b
  const first = Math.min(cut1, cut2)
  const second = Math.max(cut1, cut2)
  if (first >= b) return 3 * stretch(a, b, goal, 0)
  let sum = stretch(a, first, goal / 3, 0)
  if (second > first && second < b) {
    sum += stretch(first, second, goal / 3, 0) + stretch(second, b, goal / 3, 0)
  } else sum += stretch(first, b, goal / 3, 0)
  return 3 * sum
}

/** ∫ |p t² + q t + v| dt over [a, b] with an error below `accuracy`. */
function stretch(a: number, b: number, accuracy: number, depth: number): number {
  const px = SPEED[0] as number
  const py = SPEED[1] as number
  const qx = SPEED[2] as number
  const qy = SPEED[3] as number
  const m = (a + b) / 2
  const h = (b - a) / 2
  // With t = m + s the integrand is |p s² + r s + u|.
  const ux = (px * m + qx) * m + (SPEED[4] as number)
  const uy = (py * m + qy) * m + (SPEED[5] as number)
  const rx = 2 * px * m + qx
  const ry = 2 * py * m + qy
  // The largest ellipse about the stretch, foci at its ends, without a zero inside: half-axes' sum ρ.
  const axis = Math.min(
    halfAxis((SPEED[6] as number) - m, SPEED[7] as number, h),
    halfAxis((SPEED[8] as number) - m, SPEED[9] as number, h),
    LARGEST_AXIS,
  )
  const rho = axis + Math.sqrt(Math.max(0, axis * axis - 1))
  const reach = h * axis
  const most =
    Math.sqrt(ux * ux + uy * uy) + reach * (Math.sqrt(rx * rx + ry * ry) + reach * Math.sqrt(px * px + py * py))
  const goal = Math.max(accuracy, ROUNDING * most * h)
  const shrink = 1 / (rho * rho)
  // The n-point rule errs by at most 64/15 · most · h · ρ^(2 − 2n) / (1 − ρ^−2).
  const r4 = shrink * shrink * shrink * shrink
  const eight = (((64 / 15) * most * h) / (1 - shrink)) * r4 * shrink * shrink * shrink
  const twelve = eight * r4
  const sixteen = twelve * r4
  // Written so that coordinates that are not numbers end here too.
  const rule = !(eight > goal) ? GAUSS_8 : twelve <= goal ? GAUSS_12 : GAUSS_16
  if (rule === GAUSS_16 && sixteen > goal && most * 2 * h > goal && depth < DEEPEST)
    return stretch(a, m, accuracy / 2, depth + 1) + stretch(m, b, accuracy / 2, depth + 1)
  let sum = 0
  for (let k = 0; k < rule.length; k += 2) {
    const s = h * (rule[k] as number)
    const ex = px * s * s + ux
    const ey = py * s * s + uy
    const ox = rx * s
    const oy = ry * s
    const ax = ex + ox
    const ay = ey + oy
    const bx = ex - ox
    const by = ey - oy
    sum += (rule[k + 1] as number) * (Math.sqrt(ax * ax + ay * ay) + Math.sqrt(bx * bx + by * by))
  }
  return h * sum
}

// A larger ellipse would only let `most` grow.
const LARGEST_AXIS = 8

/** Half the major axis, in units of h, of the ellipse with foci ±h through x + iy; endless for a zero on the real line outside. */
function halfAxis(x: number, y: number, h: number): number {
  if (y < REAL && Math.abs(x) >= h * (1 - 1e-9)) return LARGEST_AXIS
  return (Math.sqrt((x - h) * (x - h) + y * y) + Math.sqrt((x + h) * (x + h) + y * y)) / (2 * h)
}

// Gauss–Legendre rules on [−1, 1], node and weight of every other node: Abramowitz & Stegun, table 25.4.
// biome-ignore format: pairs
const GAUSS_8 = Float64Array.of(
  0.1834346424956498, 0.362683783378362,
  0.525532409916329, 0.31370664587788727,
  0.7966664774136267, 0.22238103445337448,
  0.9602898564975363, 0.10122853629037626,
)
// biome-ignore format: pairs
const GAUSS_12 = Float64Array.of(
  0.1252334085114689, 0.24914704581340277,
  0.3678314989981802, 0.2334925365383548,
  0.5873179542866175, 0.20316742672306592,
  0.7699026741943047, 0.16007832854334622,
  0.9041172563704749, 0.10693932599531843,
  0.9815606342467192, 0.04717533638651183,
)
// biome-ignore format: pairs
const GAUSS_16 = Float64Array.of(
  0.09501250983763744, 0.1894506104550685,
  0.2816035507792589, 0.18260341504492358,
  0.45801677765722737, 0.16915651939500254,
  0.6178762444026438, 0.14959598881657674,
  0.755404408355003, 0.12462897125553388,
  0.8656312023878318, 0.09515851168249279,
  0.9445750230732326, 0.062253523938647894,
  0.9894009349916499, 0.027152459411754096,
)

/**
 * The parameter t at which the arc length from the start is `length` mm; the length reached is within `accuracy`
 * (default 1e-7) of what was asked, cusps and backtracks included. Lengths below 0 or above the whole give 0 or 1: the
 * ends. Cost: about 0.6 µs. Throws where `accuracy` is not above zero.
 */
export function parameterAtLength(c: Cubic, length: number, options?: LengthOptions): number {
  const accuracy = options?.accuracy ?? LENGTH_ACCURACY
  if (length <= 0) return 0
  if (!(accuracy > 0)) throw new RangeError('accuracy must be above zero')
  tellSpeed(c)
  return parameterOf(c, length, integral(0, 1, accuracy / 4), accuracy)
}

/** `parameterAtLength` where the whole length is known, to a quarter of the accuracy. */
export function parameterWithin(c: Cubic, length: number, whole: number, accuracy: number): number {
  tellSpeed(c)
  return parameterOf(c, length, whole, accuracy)
}

/** With the speed of the cubic told. */
function parameterOf(c: Cubic, length: number, whole: number, accuracy: number): number {
  if (length <= 0) return 0
  if (length >= whole) return 1
  let low = 0
  let high = 1
  let t = length / whole
  let reached = 0
  let from = 0
  // Halley on the length with a bracket to fall back on: the speed may vanish (cusp), the length never decreases.
  for (let i = 0; i < 100; i++) {
    reached += t >= from ? integral(from, t, accuracy / 16) : -integral(t, from, accuracy / 16)
    from = t
    const error = reached - length
    if (Math.abs(error) <= accuracy / 2) return t
    if (error > 0) high = t
    else low = t
    const d = derivativeAt(c, t)
    const dd = secondDerivativeAt(c, t)
    const square = d.x * d.x + d.y * d.y
    const newton = error / Math.sqrt(square)
    const bend = (newton * (d.x * dd.x + d.y * dd.y)) / (2 * square)
    const next = t - newton / (Math.abs(bend) < 0.5 ? 1 - bend : 1)
    t = next > low && next < high ? next : (low + high) / 2
    if (t === from) return t
  }
  return t
}

/** The lengths of the chord and of the control polygon in mm: the arc lies between them. */
export function lengthBounds(c: Cubic): [number, number] {
  return [distance(c.p0, c.p3), distance(c.p0, c.p1) + distance(c.p1, c.p2) + distance(c.p2, c.p3)]
}

/**
 * The cubic cut where the arc length from its start is `length` mm, within `accuracy` (default 1e-7). Beyond the ends
 * one part has no length. Cost: about 0.8 µs. Throws where `accuracy` is not above zero.
 */
export function splitCubicAtLength(c: Cubic, length: number, options?: LengthOptions): [Cubic, Cubic] {
  return splitCubic(c, parameterAtLength(c, length, options))
}
