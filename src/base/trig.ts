/**
 * Sines and their kin out of sums, products and square roots alone, which every engine must round alike (ECMAScript leaves
 * `Math.sin` and the others to the engine: between two versions of V8 one result in thirty differs in its last bit, one in six
 * of `atan2`, and the search for a place on paper turns on such bits). Polynomials of fdlibm (Sun Microsystems, 1993).
 */

const PI_LOW = 1.2246467991473532e-16

/** π/2 in three parts, the first two of 33 bits each. */
const HALF_PI_1 = 1.5707963267341256
const HALF_PI_2 = 6.077100506303966e-11
const HALF_PI_3 = 2.0222662487959506e-21

/** The sine of an angle in radians, to 1e-16 for angles up to a thousand turns. */
export function sin(angle: number): number {
  return quarter(angle, 0)
}

/** The cosine of an angle in radians, to 1e-16 for angles up to a thousand turns. */
export function cos(angle: number): number {
  return quarter(angle, 1)
}

/** Cosine (x) and sine (y) of an angle in radians, the same numbers as one by one. */
export function unitVector(angle: number): { readonly x: number; readonly y: number } {
  if (Math.abs(angle) < 0.785) return { x: cosine(angle, 0), y: sine(angle, 0) }
  const { n, x, y } = reduced(angle)
  const s = sine(x, y)
  const c = cosine(x, y)
  const which = n & 3
  if (which === 0) return { x: c, y: s }
  if (which === 1) return { x: -s, y: c }
  return which === 2 ? { x: -c, y: -s } : { x: s, y: -c }
}

/** The tangent of an angle in radians, to 4e-16 of it. */
export function tan(angle: number): number {
  return sin(angle) / cos(angle)
}

/** The angle of this sine, in radians; not a number beyond −1 and 1. To 4e-16. */
export function asin(sine: number): number {
  return atan2(sine, Math.sqrt((1 - sine) * (1 + sine)))
}

/** The angle of this cosine, in radians; not a number beyond −1 and 1. To 4e-16. */
export function acos(cosine: number): number {
  return atan2(Math.sqrt((1 - cosine) * (1 + cosine)), cosine)
}

/** The angle of the vector (x, y) from the x axis, in (−π, π], as `Math.atan2`; for finite numbers. To 4e-16. */
export function atan2(y: number, x: number): number {
  if (Number.isNaN(x)) return x
  if (y === 0) return x > 0 || Object.is(x, 0) ? y : Object.is(y, -0) ? -Math.PI : Math.PI
  if (x === 0) return y > 0 ? Math.PI / 2 : y < 0 ? -Math.PI / 2 : Number.NaN
  const z = atan(Math.abs(y / x))
  if (x > 0) return y > 0 ? z : -z
  return y > 0 ? Math.PI - (z - PI_LOW) : z - PI_LOW - Math.PI
}

const HIGH = [0.4636476090008061, 0.7853981633974483, 0.982793723247329, 1.5707963267948966]
const LOW = [2.2698777452961687e-17, 3.061616997868383e-17, 1.3903311031230998e-17, 6.123233995736766e-17]

/** The angle of this tangent, in (−π/2, π/2). To 2e-16. */
export function atan(tangent: number): number {
  const size = Math.abs(tangent)
  if (tangent === 0) return tangent
  if (size < 0.4375) return tangent - tangent * atanTerms(tangent)
  const k = size < 0.6875 ? 0 : size < 1.1875 ? 1 : size < 2.4375 ? 2 : 3
  const x =
    k === 0
      ? (2 * size - 1) / (2 + size)
      : k === 1
        ? (size - 1) / (size + 1)
        : k === 2
          ? (size - 1.5) / (1 + 1.5 * size)
          : -1 / size
  const angle = (HIGH[k] as number) - (x * atanTerms(x) - (LOW[k] as number) - x)
  return tangent < 0 ? -angle : angle
}

function atanTerms(x: number): number {
  const z = x * x
  const w = z * z
  const odd =
    z *
    (0.3333333333333293 +
      w *
        (0.14285714272503466 +
          w *
            (0.09090887133436507 + w * (0.06661073137387531 + w * (0.049768779946159324 + w * 0.016285820115365782)))))
  const even =
    w *
    (-0.19999999999876483 +
      w * (-0.11111110405462356 + w * (-0.0769187620504483 + w * (-0.058335701337905735 + w * -0.036531572744216916))))
  return odd + even
}

/** The sine of the angle and so many quarter turns. */
function quarter(angle: number, turns: number): number {
  if (Math.abs(angle) < 0.785) return turns === 0 ? sine(angle, 0) : cosine(angle, 0)
  const { n, x, y } = reduced(angle)
  // Of any whole number the last two bits: its rest by four.
  const which = (n + turns) & 3
  const value = which % 2 === 0 ? sine(x, y) : cosine(x, y)
  return which < 2 ? value : -value
}

/** The angle as n quarter turns and x + y, |x| ≤ π/4, y what rounding left of it. */
function reduced(angle: number): { readonly n: number; readonly x: number; readonly y: number } {
  const n = Math.round(angle / HALF_PI_1)
  const rest = angle - n * HALF_PI_1
  const near = rest - n * HALF_PI_2
  const low = n * HALF_PI_3 - (rest - near - n * HALF_PI_2)
  const x = near - low
  return { n, x, y: near - x - low }
}

/** The sine of x + y, |x| ≤ π/4, y what rounding left of it. */
function sine(x: number, y: number): number {
  const z = x * x
  const v = z * x
  const r =
    0.00833333333332249 +
    z *
      (-0.0001984126982985795 +
        z * (0.0000027557313707070068 + z * (-2.5050760253406863e-8 + z * 1.58969099521155e-10)))
  return x - (z * (0.5 * y - v * r) - y - v * -0.16666666666666632)
}

/** The cosine of x + y, as `sine`. */
function cosine(x: number, y: number): number {
  const z = x * x
  const r =
    z *
    (0.0416666666666666 +
      z *
        (-0.001388888888887411 +
          z *
            (0.00002480158728947673 +
              z * (-2.7557314351390663e-7 + z * (2.087572321298175e-9 + z * -1.1359647557788195e-11)))))
  const half = 0.5 * z
  const w = 1 - half
  return w + (1 - w - half + (z * r - x * y))
}
