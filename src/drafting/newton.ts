export type Pair = readonly [number, number]

export interface NewtonOptions {
  /** Both residuals are at most this at the solution. */
  readonly accuracy: number
  readonly steps?: number
}

/**
 * A zero of two functions of two unknowns by damped Newton with differences for the derivatives: every step
 * lessens the larger residual, halving the stride where it must. Undefined where it does not get there.
 * `residuals` may return undefined outside its domain.
 */
export function newton(
  residuals: (x: number, y: number) => Pair | undefined,
  start: Pair,
  { accuracy, steps = 40 }: NewtonOptions,
): Pair | undefined {
  let [x, y] = start
  let f = residuals(x, y)
  for (let i = 0; f && i < steps; i++) {
    if (size(f) <= accuracy) return [x, y]
    // Differences of a micrometre: small against the curve, large against the error of its length.
    const d = 1e-3
    const fx = residuals(x + d, y)
    const fy = residuals(x, y + d)
    if (!fx || !fy) return undefined
    const a = (fx[0] - f[0]) / d
    const b = (fy[0] - f[0]) / d
    const c = (fx[1] - f[1]) / d
    const e = (fy[1] - f[1]) / d
    const det = a * e - b * c
    if (det === 0) return undefined
    const stepX = (e * f[0] - b * f[1]) / det
    const stepY = (a * f[1] - c * f[0]) / det
    let stride = 1
    let next: Pair | undefined
    for (; stride > 1e-4; stride /= 2) {
      next = residuals(x - stride * stepX, y - stride * stepY)
      if (next && size(next) < size(f)) break
      next = undefined
    }
    if (!next) return undefined
    x -= stride * stepX
    y -= stride * stepY
    f = next
  }
  return undefined
}

function size(f: Pair): number {
  return Math.max(Math.abs(f[0]), Math.abs(f[1]))
}
