import { arcLengthBetween } from '../geometry/arc-length.ts'
import { type Cubic, curvatureAt, derivativeAt, pointAt, secondDerivativeAt } from '../geometry/cubic.ts'
import { smallestRadius } from '../geometry/curvature-extrema.ts'
import { CURVE_TOLERANCE } from '../geometry/defaults.ts'
import type { Path } from '../geometry/path.ts'
import { locate, type PathParameter, tangentAt } from '../geometry/path-length.ts'
import type { Point } from '../geometry/point.ts'
import { refit } from '../geometry/refit.ts'
import type { Profile } from './profile.ts'
import { shortArc } from './short-arc.ts'

/**
 * Distance of samples along the old line, mm: a stitching line turns little on so short a way. Twice that where no radius
 * is under `GENTLE` mm: positions between samples are as good there as on the tightest curve with the shorter step.
 */
const STEP = 1
const GENTLE = 80

/** Nodes nearer than this to an end are the end, mm. */
const APART = 1e-4

/** Fewest steps between two nodes. */
const LEAST_STEPS = 8

/**
 * What is left of a mm of the old line on the new one where it runs inside a curve: below this the new line is
 * about to fold back on itself.
 */
const LEAST_SPEED = 0.1

/** So near to the ends of a cubic, and so slow in mm, its derivative may be as good as nothing. */
const BESIDE = 1e-6
const STANDSTILL = 1e-3

/** A smooth path cut out of a run, to be displaced: its cubics and the run position of its start. */
export interface DisplaceRequest {
  readonly path: Path
  readonly start: number
  readonly length: number
  /** How far its ends are to land beside amount times normal, for a corner or a dart mouth that moves as one; mm. */
  readonly startExtra?: Point
  readonly endExtra?: Point
  /** Over how many mm of the path the extra fades out. */
  readonly fade: number
}

export interface Displaced {
  readonly path: Path
  /** Run positions of samples on the old line, from the path's start to its end, and how far along the new path they lie. */
  readonly old: readonly number[]
  readonly now: readonly number[]
}

/** Where a displacement fails because the line would fold over itself. */
export interface Folds {
  readonly folds: { readonly at: number; readonly amount: number; readonly radius: number }
}

/**
 * The path moved along its outward normals by the profile (the path runs anticlockwise round its piece), refitted
 * within `tolerance` mm from node to node, so that the amounts at the nodes are exact. Its directions at the ends
 * are those of the moved line. Says where the line would fold over itself instead of returning one that does.
 */
export function displace(request: DisplaceRequest, profile: Profile, tolerance = CURVE_TOLERANCE): Displaced | Folds {
  const path: Cubic[] = []
  const old: number[] = []
  const now: number[] = []
  let length = 0
  for (const samples of sampleBetweenNodes(request, profile)) {
    const moved: Moved[] = []
    for (const sample of samples) {
      const m = move(sample, request, profile)
      if ('folds' in m) return m
      moved.push(m)
    }
    const first = moved[0] as Moved
    const last = moved[moved.length - 1] as Moved
    // Neighbouring spans share the very same point.
    const before = path[path.length - 1]
    const points = moved.map((m) => m.point)
    if (before) points[0] = before.p3
    const fit = refit(points, { tolerance, startDirection: first.velocity, endDirection: last.velocity })
    fit.parameters.forEach((place, i) => {
      if (i > 0) length += lengthBetween(fit.path, fit.parameters[i - 1] as typeof place, place)
      if (i === 0 && now.length > 0) return
      old.push((samples[i] as Sample).at)
      now.push(length)
    })
    path.push(...fit.path)
  }
  return { path, old, now }
}

interface Sample {
  readonly cubic: Cubic
  readonly t: number
  readonly at: number
}

interface Moved {
  readonly point: Point
  /** The derivative by run position. */
  readonly velocity: Point
}

/** Samples of the old line, one list for each stretch between neighbouring nodes of the profile. */
function sampleBetweenNodes(request: DisplaceRequest, profile: Profile): Sample[][] {
  const { path, start, length } = request
  const end = start + length
  const inside = profile.nodes.map((node) => node.at).filter((at) => at > start + APART && at < end - APART)
  const cuts = [start, ...inside, end]
  const places: PathParameter[] = cuts.map((at, k) => {
    if (k === 0) return { index: 0, t: 0 }
    return k === cuts.length - 1 ? { index: path.length - 1, t: 1 } : locate(path, at - start)
  })
  return cuts.slice(1).map((to, k) => {
    const from = cuts[k] as number
    const a = places[k] as PathParameter
    const b = places[k + 1] as PathParameter
    const least = LEAST_STEPS / (to - from)
    const samples: Sample[] = [{ cubic: path[a.index] as Cubic, t: a.t, at: from }]
    let at = from
    for (let index = a.index; index <= b.index; index++) {
      const c = path[index] as Cubic
      const t0 = index === a.index ? a.t : 0
      const t1 = index === b.index ? b.t : 1
      if (!(t1 > t0)) continue
      const step = smallestRadius(c) < GENTLE ? STEP : 2 * STEP
      const steps = Math.max(1, Math.ceil(arcLengthBetween(c, t0, t1) * Math.max(least, 1 / step) - 1e-6))
      let before = t0
      for (let i = 1; i <= steps; i++) {
        const t = i === steps ? t1 : t0 + ((t1 - t0) * i) / steps
        at += shortArc(c, before, t)
        before = t
        samples.push({ cubic: c, t, at })
      }
    }
    // The sum of short lengths misses the node by rounding only; the amount there must be exact.
    samples[samples.length - 1] = { ...(samples[samples.length - 1] as Sample), at: to }
    return samples
  })
}

function move({ cubic: c, t, at }: Sample, request: DisplaceRequest, profile: Profile): Moved | Folds {
  const { tangent, curvature } = frameAt(c, t)
  const amount = profile.amount(at)
  const slope = profile.slope(at)
  const speed = 1 + curvature * amount
  // The outward normal lies clockwise of the tangent.
  let x = tangent.y * amount
  let y = -tangent.x * amount
  let vx = tangent.x * speed + tangent.y * slope
  let vy = tangent.y * speed - tangent.x * slope
  const { startExtra, endExtra } = request
  if (startExtra) {
    const { value, slope: rate } = fade((at - request.start) / request.fade)
    x += startExtra.x * value
    y += startExtra.y * value
    vx += (startExtra.x * rate) / request.fade
    vy += (startExtra.y * rate) / request.fade
  }
  if (endExtra) {
    const { value, slope: rate } = fade((request.start + request.length - at) / request.fade)
    x += endExtra.x * value
    y += endExtra.y * value
    vx -= (endExtra.x * rate) / request.fade
    vy -= (endExtra.y * rate) / request.fade
  }
  if (!(vx * tangent.x + vy * tangent.y >= LEAST_SPEED)) {
    return { folds: { at, amount, radius: Math.abs(1 / curvature) } }
  }
  const old = pointAt(c, t)
  return { point: { x: old.x + x, y: old.y + y }, velocity: { x: vx, y: vy } }
}

/** The unit tangent and the curvature at a place of a cubic. */
function frameAt(c: Cubic, t: number): { readonly tangent: Point; readonly curvature: number } {
  const d = derivativeAt(c, t)
  const speed = Math.sqrt(d.x * d.x + d.y * d.y)
  // Next to an end a handle may lie on it: the direction is the limit there, and the curvature that a little inside.
  if (t < BESIDE || t > 1 - BESIDE || speed < STANDSTILL) {
    return { tangent: tangentAt(c, t), curvature: curvatureAt(c, Math.min(1 - BESIDE, Math.max(BESIDE, t))) }
  }
  const dd = secondDerivativeAt(c, t)
  return { tangent: { x: d.x / speed, y: d.y / speed }, curvature: (d.x * dd.y - d.y * dd.x) / (speed * speed * speed) }
}

/** 1 at 0 falling to 0 at 1, flat at both. */
function fade(u: number): { value: number; slope: number } {
  if (u >= 1) return { value: 0, slope: 0 }
  return { value: 1 - u * u * (3 - 2 * u), slope: -6 * u * (1 - u) }
}

function lengthBetween(path: Path, a: PathParameter, b: PathParameter): number {
  if (a.index === b.index) return shortArc(path[a.index] as Cubic, a.t, b.t)
  let sum = shortArc(path[a.index] as Cubic, a.t, 1) + shortArc(path[b.index] as Cubic, 0, b.t)
  for (let i = a.index + 1; i < b.index; i++) sum += shortArc(path[i] as Cubic, 0, 1)
  return sum
}
