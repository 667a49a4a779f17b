import { type Cubic, derivativeAt, secondDerivativeAt } from './cubic.ts'
import type { Path } from './path.ts'
import { tangentAt } from './path-length.ts'
import { cross } from './point.ts'
import { roots } from './roots.ts'

export interface CurvatureOptions {
  /** A stretch that bulges less than this from its chord counts as straight, mm. */
  readonly straight?: number
  /** Corners between cubics that turn by less than this are smooth joints, radians. */
  readonly corner?: number
}

// A tenth of the kernel's curve tolerance: far above the noise of rounding and refitting a straight line.
const STRAIGHT = 1e-3
// A tenth of a degree: no hand or refit keeps a joint smoother, no eye sees it.
const CORNER = Math.PI / 1800

/**
 * The parameters strictly inside (0, 1) where the curvature of a cubic changes sign, in rising order; at most two. A
 * straight line has none. Exact to rounding. Cost: about 0.7 µs.
 */
export function inflections(c: Cubic): number[] {
  const [f0, f1, f2] = bend(c)
  // The sign within rounding, 0 where it cannot be told: a double root (a touch, a handle on its end point) splits
  // into two by rounding, with nothing to see between them.
  const zero = 1e-12 * (Math.abs(f0) + Math.abs(f1) + Math.abs(f2))
  const sign = (t: number) => {
    const value = f0 + t * (f1 + t * f2)
    return Math.abs(value) <= zero ? 0 : Math.sign(value)
  }
  const found: number[] = []
  const stops = [0, ...roots([f0, f1, f2]).filter((t) => t > 0 && t < 1), 1]
  let before = 0
  for (let k = 1; k < stops.length; k++) {
    const from = stops[k - 1] as number
    const here = sign((from + (stops[k] as number)) / 2)
    if (here === 0) continue
    if (before !== 0 && here !== before) found.push(from)
    before = here
  }
  return found
}

/**
 * How often the curvature changes sign along a path: inside cubics, and from one to the next. A corner (over 0.1°,
 * `corner` radians) counts as curvature of its own direction. Straight stretches and the noise on them (bulges under
 * 1e-3 mm, `straight`) have no sign. Cost: about 1.5 µs a cubic.
 */
export function curvatureChanges(path: Path, options: CurvatureOptions = {}): number {
  const signs = curvatureSigns(path, options)
  let changes = 0
  for (let i = 1; i < signs.length; i++) if (signs[i] !== signs[i - 1]) changes++
  return changes
}

/**
 * The signs of curvature met along a path as `curvatureChanges` counts them, straight stretches left out: 1
 * anticlockwise, −1 clockwise, one for each stretch or corner. Cost: about 1.5 µs a cubic.
 */
export function curvatureSigns(path: Path, options: CurvatureOptions = {}): number[] {
  const straight = options.straight ?? STRAIGHT
  const corner = options.corner ?? CORNER
  const signs: number[] = []
  path.forEach((c, index) => {
    const before = path[index - 1]
    if (before && hasLength(before) && hasLength(c)) {
      const a = tangentAt(before, 1)
      const b = tangentAt(c, 0)
      const turn = Math.atan2(cross(a, b), a.x * b.x + a.y * b.y)
      if (Math.abs(turn) > corner) signs.push(Math.sign(turn))
    }
    const stops = [0, ...inflections(c), 1]
    for (let k = 1; k < stops.length; k++) {
      const from = stops[k - 1] as number
      const to = stops[k] as number
      if (bulge(c, from, to) < straight) continue
      const t = (from + to) / 2
      const sign = Math.sign(cross(derivativeAt(c, t), secondDerivativeAt(c, t)))
      if (sign !== 0) signs.push(sign)
    }
  })
  return signs
}

/** The numerator of the curvature, C′ × C″, as a polynomial: its cubic term cancels. */
function bend(c: Cubic): readonly [number, number, number] {
  const ax = c.p3.x - 3 * c.p2.x + 3 * c.p1.x - c.p0.x
  const ay = c.p3.y - 3 * c.p2.y + 3 * c.p1.y - c.p0.y
  const bx = c.p2.x - 2 * c.p1.x + c.p0.x
  const by = c.p2.y - 2 * c.p1.y + c.p0.y
  const dx = c.p1.x - c.p0.x
  const dy = c.p1.y - c.p0.y
  // C′/3 = d + 2bt + at², C″/6 = b + at.
  return [dx * by - dy * bx, dx * ay - dy * ax, bx * ay - by * ax]
}

function hasLength(c: Cubic): boolean {
  return c.p0.x !== c.p3.x || c.p0.y !== c.p3.y || c.p0.x !== c.p1.x || c.p0.y !== c.p1.y
}

/** How far the stretch bulges from its chord, measured at its middle and quarters. */
function bulge(c: Cubic, from: number, to: number): number {
  let worst = 0
  const a = at(c, from)
  const b = at(c, to)
  const length = Math.hypot(b.x - a.x, b.y - a.y)
  for (const share of [0.25, 0.5, 0.75]) {
    const p = at(c, from + (to - from) * share)
    const off =
      length > 0
        ? Math.abs((p.x - a.x) * (b.y - a.y) - (p.y - a.y) * (b.x - a.x)) / length
        : Math.hypot(p.x - a.x, p.y - a.y)
    worst = Math.max(worst, off)
  }
  return worst
}

function at(c: Cubic, t: number) {
  const u = 1 - t
  const w0 = u * u * u
  const w1 = 3 * u * u * t
  const w2 = 3 * u * t * t
  const w3 = t * t * t
  return {
    x: w0 * c.p0.x + w1 * c.p1.x + w2 * c.p2.x + w3 * c.p3.x,
    y: w0 * c.p0.y + w1 * c.p1.y + w2 * c.p2.y + w3 * c.p3.y,
  }
}
