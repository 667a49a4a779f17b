import { type Cubic, derivativeAt } from '../geometry/cubic.ts'
import { type CubicFit, fitCubic } from '../geometry/fit-cubic.ts'
import type { Path } from '../geometry/path.ts'
import type { PathParameter } from '../geometry/path-length.ts'
import { magnitude } from '../geometry/point.ts'
import { type Folds, type MovedPart, type MovedPlace, type MovedSamples, sampleMoved } from './sample-moved.ts'
import { shortArc } from './short-arc.ts'

/** Samples so near to the straight line between the ends lie on it, mm. */
const STRAIGHT = 1e-9

/** Between samples a fit may miss by a little more than at them. */
const AT_SAMPLES = 0.9

/** A stretch is cut at a joint of the old line so near to its middle, as shares of it; else in the middle of a cubic. */
const NEAR_MIDDLE = 0.2

/** A half with fewer steps than this is sampled anew. */
const FEWEST_STEPS = 6

/** So short a stretch is drawn by its ends alone, mm. */
const SHORT = 0.25

/** A moved line as far as it is drawn: run positions of places on the old line, and how far along the new one they lie. */
export interface MovedLine {
  readonly path: Cubic[]
  readonly old: number[]
  readonly now: number[]
}

/** A smooth stretch of a line to be drawn where it has moved to. */
export interface MovedStretch {
  readonly path: Path
  readonly from: PathParameter
  readonly to: PathParameter
  /** Run positions of both ends. */
  readonly start: number
  readonly end: number
  /** The shortest length within which an end comes round to its own way, mm. */
  readonly fades: number
  readonly tolerance: number
  /** Where a place of the line has moved to. */
  readonly move: (cubic: Cubic, t: number, at: number) => MovedPlace | Folds
}

/**
 * Draws the stretch on: one cubic where one follows the moved line within the tolerance, else each half by itself. Ends
 * and directions there are those of the moved line. What is drawn does not depend on the way the line runs, but for
 * rounding. Says where the line would fold over itself, and draws nothing then.
 */
export function drawMoved(line: MovedLine, stretch: MovedStretch): Folds | undefined {
  const { path, from, to, start, end } = stretch
  const parts: MovedPart[] = []
  for (let index = from.index; index <= to.index; index++) {
    const t0 = index === from.index ? from.t : 0
    const t1 = index === to.index ? to.t : 1
    if (t1 > t0) parts.push({ cubic: path[index] as Cubic, t0, t1 })
  }
  const samples = sampleMoved(stretch.move, parts, { start, end, fades: stretch.fades })
  if ('folds' in samples) return samples
  return drawSpan(line, stretch, samples, { parts, joints: samples.joints })
}

/** Some parts, and the samples at their ends. */
interface Span {
  readonly parts: readonly MovedPart[]
  readonly joints: readonly number[]
}

function drawSpan(line: MovedLine, stretch: MovedStretch, samples: MovedSamples, span: Span): Folds | undefined {
  const fit = fitted(samples, span, stretch.tolerance)
  if (fit) {
    append(line, samples, span, fit)
    return undefined
  }
  for (const half of halves(samples, span)) {
    const again = hasEnough(half) ? undefined : sampledAgain(samples, half, stretch)
    if (again && 'folds' in again) return again
    const folds = again
      ? drawSpan(line, stretch, again, { parts: half.parts, joints: again.joints })
      : drawSpan(line, stretch, samples, half)
    if (folds) return folds
  }
  return undefined
}

/** Whether a half has samples enough, and one in the middle of each part. */
function hasEnough({ joints }: Span): boolean {
  const from = joints[0] as number
  const to = joints[joints.length - 1] as number
  return to - from >= FEWEST_STEPS && joints.every((i, k) => k === 0 || (i - (joints[k - 1] as number)) % 2 === 0)
}

function sampledAgain({ at, vxs, vys }: MovedSamples, { parts, joints }: Span, { move, fades }: MovedStretch) {
  const from = joints[0] as number
  const to = joints[joints.length - 1] as number
  const samples = sampleMoved(move, parts, { start: at[from] as number, end: at[to] as number, fades })
  if ('folds' in samples) return samples
  // Halves meet in the very same direction.
  const last = samples.at.length - 1
  return {
    ...samples,
    vxs: samples.vxs.map((v, i) => (i === 0 ? (vxs[from] as number) : i === last ? (vxs[to] as number) : v)),
    vys: samples.vys.map((v, i) => (i === 0 ? (vys[from] as number) : i === last ? (vys[to] as number) : v)),
  }
}

/** The one cubic that follows the samples of a span, where one does. */
function fitted(samples: MovedSamples, { parts, joints }: Span, tolerance: number): CubicFit | undefined {
  const { at, vxs, vys } = samples
  const from = joints[0] as number
  const to = joints[joints.length - 1] as number
  const start = at[from] as number
  const whole = (at[to] as number) - start
  const within = whole < SHORT ? Number.POSITIVE_INFINITY : tolerance * AT_SAMPLES
  const direction = (i: number) => {
    const vx = vxs[i] as number
    const vy = vys[i] as number
    const speed = Math.sqrt(vx * vx + vy * vy)
    return { speed, unit: { x: vx / speed, y: vy / speed } }
  }
  const first = direction(from)
  const last = direction(to)
  const only = parts.length === 1 ? parts[0] : undefined
  // The handles of the old line, as much longer as the line has become at its ends. The way is even on a straight line.
  const pace = (t: number) => (only ? magnitude(derivativeAt(only.cubic, t)) * (only.t1 - only.t0) : whole)
  const guess = isStraight(samples, from, to)
    ? undefined
    : {
        start: (first.speed * pace(only ? only.t0 : 0)) / 3,
        end: (last.speed * pace(only ? only.t1 : 1)) / 3,
        parameter: (i: number) => (only ? (i - from) / (to - from) : ((at[i] as number) - start) / whole),
      }
  return fitCubic(samples, from, to, first.unit, last.unit, within, guess).fit
}

function isStraight({ xs, ys }: MovedSamples, from: number, to: number): boolean {
  const x = xs[from] as number
  const y = ys[from] as number
  const dx = (xs[to] as number) - x
  const dy = (ys[to] as number) - y
  const most = STRAIGHT * Math.sqrt(dx * dx + dy * dy)
  for (let i = from + 1; i < to; i++) {
    if (Math.abs(((xs[i] as number) - x) * dy - ((ys[i] as number) - y) * dx) > most) return false
  }
  return true
}

/** Both halves of a span that no one cubic follows. */
function halves({ at }: MovedSamples, { parts, joints }: Span): [Span, Span] {
  const start = at[joints[0] as number] as number
  const end = at[joints[joints.length - 1] as number] as number
  const middle = (start + end) / 2
  const away = (k: number) => Math.abs((at[joints[k] as number] as number) - middle)
  let nearest = 0
  for (let k = 1; k < parts.length; k++) if (away(k) < away(nearest)) nearest = k
  if (nearest > 0 && away(nearest) <= NEAR_MIDDLE * (end - start)) {
    return [
      { parts: parts.slice(0, nearest), joints: joints.slice(0, nearest + 1) },
      { parts: parts.slice(nearest), joints: joints.slice(nearest) },
    ]
  }
  // The part that holds the middle, cut in its own.
  let k = 0
  while (k < parts.length - 1 && (at[joints[k + 1] as number] as number) <= middle) k++
  const { cubic, t0, t1 } = parts[k] as MovedPart
  const t = (t0 + t1) / 2
  const i = ((joints[k] as number) + (joints[k + 1] as number)) / 2
  return [
    { parts: [...parts.slice(0, k), { cubic, t0, t1: t }], joints: [...joints.slice(0, k + 1), i] },
    { parts: [{ cubic, t0: t, t1 }, ...parts.slice(k + 1)], joints: [i, ...joints.slice(k + 1)] },
  ]
}

/** Puts a fit at the end of the line, with places between the samples told where the speeds say. */
function append(line: MovedLine, samples: MovedSamples, { joints }: Span, { cubic, parameters }: CubicFit): void {
  const { at, speedIn, speedOut, told } = samples
  const before = line.path[line.path.length - 1]
  // Neighbours share the very same point.
  const c = before ? { ...cubic, p0: before.p3 } : cubic
  line.path.push(c)
  const first = joints[0] as number
  let start = line.now[line.now.length - 1] as number
  for (let i = 1; i < parameters.length; i++) {
    const from = at[first + i - 1] as number
    const width = (at[first + i] as number) - from
    const rise = shortArc(c, parameters[i - 1] as number, parameters[i] as number)
    const steps = Math.ceil(width / (told[first + i] as number) - 1e-6)
    // Never beyond three times the mean, so that no place turns round.
    const out = Math.min((speedOut[first + i - 1] as number) * width, 3 * rise)
    const into = Math.min((speedIn[first + i] as number) * width, 3 * rise)
    for (let k = 1; k < steps; k++) {
      const u = k / steps
      line.old.push(from + u * width)
      line.now.push(start + rise * u * u * (3 - 2 * u) + u * (1 - u) * ((1 - u) * out - u * into))
    }
    start += rise
    line.old.push(at[first + i] as number)
    line.now.push(start)
  }
}
