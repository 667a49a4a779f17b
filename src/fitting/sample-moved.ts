import { arcLengthBetween } from '../geometry/arc-length.ts'
import type { Cubic } from '../geometry/cubic.ts'
import { smallestRadius } from '../geometry/curvature-extrema.ts'
import { shortArc } from './short-arc.ts'

/**
 * Samples of the line between two joints: at least so many, none farther apart than `LONGEST` mm, than this share of the
 * smallest radius (but a mm is near enough) or of the length within which an end fades out.
 */
const LEAST_STEPS = 16
const LONGEST = 8
const OF_RADIUS = 1 / 10
const OF_FADE = 1 / 8
const NEAR_ENOUGH = 1

/** Positions are told this often, mm: twice as often where a radius is under `GENTLE` mm. Between them they run evenly. */
const TOLD = 2
const GENTLE = 80

/** Where a place of the line has moved to, and the derivative by run position. */
export interface MovedPlace {
  readonly x: number
  readonly y: number
  readonly vx: number
  readonly vy: number
}

/** Where a displacement fails because the line would fold over itself. */
export interface Folds {
  readonly folds: { readonly at: number; readonly amount: number; readonly radius: number }
}

/** A part of one cubic. */
export interface MovedPart {
  readonly cubic: Cubic
  readonly t0: number
  readonly t1: number
}

/** Samples of the moved line; where one cubic of the old line ends both speeds are kept. */
export interface MovedSamples {
  readonly at: number[]
  readonly xs: number[]
  readonly ys: number[]
  /** Length of the polyline. */
  readonly lengths: number[]
  /** The derivative by run position, and its size into the sample and out of it. */
  readonly vxs: number[]
  readonly vys: number[]
  readonly speedIn: number[]
  readonly speedOut: number[]
  /** How far apart positions are told before each sample, mm. */
  readonly told: number[]
  /** The samples at the ends of the parts. */
  readonly joints: number[]
}

/** Samples along the parts, from run position `start` to `end`; says where the line would fold over itself. */
export function sampleMoved(
  move: (cubic: Cubic, t: number, at: number) => MovedPlace | Folds,
  parts: readonly MovedPart[],
  { start, end, fades }: { readonly start: number; readonly end: number; readonly fades: number },
): MovedSamples | Folds {
  const at: number[] = []
  const xs: number[] = []
  const ys: number[] = []
  const lengths: number[] = []
  const vxs: number[] = []
  const vys: number[] = []
  const speedIn: number[] = []
  const speedOut: number[] = []
  const told: number[] = []
  const joints = [0]
  let here = start
  for (let k = 0; k < parts.length; k++) {
    const { cubic, t0, t1 } = parts[k] as MovedPart
    const radius = gentleRadius(cubic)
    const length = parts.length === 1 ? end - start : arcLengthBetween(cubic, t0, t1)
    const step = Math.min(LONGEST, Math.max(NEAR_ENOUGH, radius * OF_RADIUS), fades * OF_FADE)
    const share = (LEAST_STEPS * length) / (end - start)
    // An even number, so that there is one in the middle.
    const steps = 2 * Math.max(1, Math.ceil(Math.max(share, length / step) / 2 - 1e-6))
    const often = radius < GENTLE ? TOLD / 2 : TOLD
    let before = t0
    for (let i = 0; i <= steps; i++) {
      const t = i === steps ? t1 : t0 + ((t1 - t0) * i) / steps
      if (i > 0) here += shortArc(cubic, before, t)
      before = t
      // The sum of short lengths misses the end by rounding only; the amount there must be exact.
      if (k === parts.length - 1 && i === steps) here = end
      const moved = move(cubic, t, here)
      if ('folds' in moved) return moved
      const { x, y, vx, vy } = moved
      const speed = apart(vx, vy)
      if (k > 0 && i === 0) {
        const last = at.length - 1
        speedOut[last] = speed
        // Where the curvature jumps the moved line would have a slight corner; a cut there goes midway, either way round.
        vxs[last] = ((vxs[last] as number) + vx) / 2
        vys[last] = ((vys[last] as number) + vy) / 2
        continue
      }
      at.push(here)
      const last = xs.length - 1
      lengths.push(last < 0 ? 0 : (lengths[last] as number) + apart(x - (xs[last] as number), y - (ys[last] as number)))
      xs.push(x)
      ys.push(y)
      vxs.push(vx)
      vys.push(vy)
      speedIn.push(speed)
      speedOut.push(speed)
      told.push(often)
    }
    joints.push(at.length - 1)
  }
  return { at, xs, ys, lengths, vxs, vys, speedIn, speedOut, told, joints }
}

function apart(dx: number, dy: number): number {
  return Math.sqrt(dx * dx + dy * dy)
}

/** The smallest radius of a cubic, or one that it does not fall below where that is gentle enough and told at once. */
function gentleRadius(c: Cubic): number {
  const ax = c.p1.x - c.p0.x
  const ay = c.p1.y - c.p0.y
  const bx = c.p2.x - c.p1.x
  const by = c.p2.y - c.p1.y
  const dx = c.p3.x - c.p2.x
  const dy = c.p3.y - c.p2.y
  // C′ / 3 lies among a, b and d, so it goes at least as far along the chord as the least of them.
  const cx = c.p3.x - c.p0.x
  const cy = c.p3.y - c.p0.y
  const chord = Math.sqrt(cx * cx + cy * cy)
  const slowest = Math.min(ax * cx + ay * cy, bx * cx + by * cy, dx * cx + dy * cy) / chord
  if (!(slowest > 0)) return smallestRadius(c)
  // C′ × C″ / 18 lies among the crosses of a and b, half of a and d, and b and d.
  const bend = Math.max(Math.abs(ax * by - ay * bx), Math.abs(ax * dy - ay * dx) / 2, Math.abs(bx * dy - by * dx))
  const radius = (1.5 * slowest * slowest * slowest) / bend
  return radius >= GENTLE ? radius : smallestRadius(c)
}
