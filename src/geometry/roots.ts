// Relative size below which a value at an extremum counts as a touch of zero: rounding of the evaluation.
const ROUNDING = 1e-14

/**
 * The real roots in [0, 1] of the polynomial c[0] + c[1]·t + … in rising order, each to the last bits of t. Between
 * neighbouring roots of the derivative (found the same way) the polynomial is monotone, so no simple root is missed; a
 * touch of zero counts once. A polynomial that is zero throughout has none. Cost: about 0.6 µs for a quintic. Never
 * throws: none where a coefficient is not a number.
 */
export function roots(coefficients: readonly number[]): number[] {
  let degree = coefficients.length - 1
  let size = 0
  for (let k = 0; k <= degree; k++) size += Math.abs(coefficients[k] as number)
  // Leading terms that cannot be told from rounding would send roots to infinity.
  while (degree > 0 && Math.abs(coefficients[degree] as number) <= 1e-16 * size) degree--
  if (degree === 0 || size === 0) return []
  const c = coefficients.slice(0, degree + 1)
  // Derivatives from the lowest degree up: the roots of each bracket those of the next.
  let stops: number[] = []
  for (let order = degree - 1; order >= 0; order--) stops = monotoneRoots(derivative(c, order), stops)
  return stops
}

/** c differentiated `order` times, up to a constant factor. */
function derivative(c: readonly number[], order: number): number[] {
  const d: number[] = []
  for (let k = order; k < c.length; k++) {
    let factor = c[k] as number
    for (let i = 1; i <= order; i++) factor *= (k - order + i) / i
    d.push(factor)
  }
  return d
}

/** The roots in [0, 1] of a polynomial that is monotone between the given stops. */
function monotoneRoots(c: readonly number[], stops: readonly number[]): number[] {
  const degree = c.length - 1
  const found: number[] = []
  if (degree === 1) {
    const t = -(c[0] as number) / (c[1] as number)
    // Adding 0 turns −0 into 0.
    if (t >= 0 && t <= 1) found.push(t + 0)
    return found
  }
  let zero = 0
  for (let k = 0; k <= degree; k++) zero += Math.abs(c[k] as number)
  zero *= ROUNDING
  let a = 0
  let fa = c[0] as number
  if (Math.abs(fa) <= zero) found.push(0)
  for (let k = 0; k <= stops.length; k++) {
    const b = k < stops.length ? (stops[k] as number) : 1
    if (b <= a) continue
    let fb = c[degree] as number
    for (let i = degree - 1; i >= 0; i--) fb = fb * b + (c[i] as number)
    if (Math.abs(fb) <= zero) found.push(b)
    else if (Math.abs(fa) > zero && fa > 0 !== fb > 0) found.push(bracketed(c, degree, a, b, fa))
    a = b
    fa = fb
  }
  return found
}

/** Newton inside a bracket with a change of sign; halves the bracket where Newton would leave it or crawls. */
function bracketed(c: readonly number[], degree: number, a: number, b: number, fa: number): number {
  let low = a
  let high = b
  let t = (a + b) / 2
  let step = b - a
  for (let i = 0; i < 120; i++) {
    let f = c[degree] as number
    let slope = 0
    for (let k = degree - 1; k >= 0; k--) {
      slope = slope * t + f
      f = f * t + (c[k] as number)
    }
    if (f === 0) return t
    if (f > 0 === fa > 0) low = t
    else high = t
    let next = t - f / slope
    if (!(next > low && next < high) || Math.abs(next - t) > step / 2) next = (low + high) / 2
    step = Math.abs(next - t)
    if (step <= 1e-16 || next === t) return next
    t = next
  }
  return t
}
