import { atan2 } from '../base/trig.ts'
import { type Cubic, derivativeAt, pointAt, secondDerivativeAt } from './cubic.ts'
import { bend, cubicTerms } from './cubic-terms.ts'
import type { Path } from './path.ts'
import { tangentAt } from './path-length.ts'
import { cross } from './point.ts'
import { signChanges } from './sign-changes.ts'

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
 * straight line has none. Exact to rounding. Cost: about 0.2 µs.
 */
export function inflections(c: Cubic): number[] {
  return signChanges(bend(cubicTerms(c)))
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
      const turn = atan2(cross(a, b), a.x * b.x + a.y * b.y)
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

function hasLength(c: Cubic): boolean {
  return c.p0.x !== c.p3.x || c.p0.y !== c.p3.y || c.p0.x !== c.p1.x || c.p0.y !== c.p1.y
}

/** How far the stretch bulges from its chord, measured at its middle and quarters. */
function bulge(c: Cubic, from: number, to: number): number {
  let worst = 0
  const a = pointAt(c, from)
  const b = pointAt(c, to)
  const length = Math.hypot(b.x - a.x, b.y - a.y)
  for (const share of [0.25, 0.5, 0.75]) {
    const p = pointAt(c, from + (to - from) * share)
    const off =
      length > 0
        ? Math.abs((p.x - a.x) * (b.y - a.y) - (p.y - a.y) * (b.x - a.x)) / length
        : Math.hypot(p.x - a.x, p.y - a.y)
    worst = Math.max(worst, off)
  }
  return worst
}
