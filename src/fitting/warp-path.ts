import { arcLengthBetween } from '../geometry/arc-length.ts'
import { type Cubic, pointAt } from '../geometry/cubic.ts'
import { CURVE_TOLERANCE } from '../geometry/defaults.ts'
import type { Path } from '../geometry/path.ts'
import { type PathParameter, pathLength, tangentAt } from '../geometry/path-length.ts'
import { add, along as alongBy, type Point, scale, subtract, unit } from '../geometry/point.ts'
import { refit } from '../geometry/refit.ts'
import { smoothPaths } from './seam-run.ts'
import { shortArc } from './short-arc.ts'

/** Where a point of the old line goes; `along` is mm from the start of the path. Must be smooth along the path. */
export type Warp = (at: Point, along: number) => Point

/** A line carried to another place, and where its places went. */
export interface WarpedPath {
  readonly path: Path
  /** Samples from the start of the old path to its end, and how far along the new path they lie; mm. */
  readonly old: readonly number[]
  readonly now: readonly number[]
}

/** Distance of samples along the old line, mm, and the fewest between two joints. */
const STEP = 1
const LEAST_STEPS = 8

/** Step of the one-sided differences that give the directions at the ends, mm. */
const DIFFERENCE = 1e-3

/**
 * The path with every point passed through `warp`, refitted within `tolerance` mm; corners of the old path stay
 * corners. End points are exact, end directions to 1e-6 rad. The map of positions increases wherever the warp does
 * not turn the line back on itself; that is the caller's to see to.
 */
export function warpPath(path: Path, warp: Warp, tolerance = CURVE_TOLERANCE): WarpedPath {
  const result: Cubic[] = []
  const old: number[] = [0]
  const now: number[] = [0]
  let start = 0
  let length = 0
  for (const smooth of smoothPaths(path)) {
    const samples = sampled(smooth, start)
    const points = samples.map(({ at, along }) => warp(at, along))
    const before = result[result.length - 1]
    if (before) points[0] = before.p3
    const end = start + pathLength(smooth)
    const fit = refit(points, {
      tolerance,
      startDirection: direction(warp, smooth[0] as Cubic, 0, start),
      endDirection: direction(warp, smooth[smooth.length - 1] as Cubic, 1, end),
    })
    fit.parameters.forEach((place, i) => {
      if (i === 0) return
      length += lengthBetween(fit.path, fit.parameters[i - 1] as PathParameter, place)
      old.push((samples[i] as Sample).along)
      now.push(length)
    })
    result.push(...fit.path)
    start = end
  }
  return { path: result, old, now }
}

interface Sample {
  readonly at: Point
  readonly along: number
}

function sampled(path: Path, start: number): Sample[] {
  const steps = Math.max(1, Math.ceil(LEAST_STEPS / path.length))
  const samples: Sample[] = [{ at: (path[0] as Cubic).p0, along: start }]
  let along = start
  for (const c of path) {
    const count = Math.max(steps, Math.ceil(arcLengthBetween(c, 0, 1) / STEP))
    for (let i = 1; i <= count; i++) {
      along += shortArc(c, (i - 1) / count, i / count)
      samples.push({ at: pointAt(c, i / count), along })
    }
  }
  return samples
}

/** The direction of the warped line at an end of a cubic, by a one-sided difference of second order. */
function direction(warp: Warp, c: Cubic, t: 0 | 1, along: number): Point {
  const at = t === 0 ? c.p0 : c.p3
  const way = t === 0 ? 1 : -1
  const tangent = tangentAt(c, t)
  // On the tangent instead of the curve: the difference is of the order of the step times the curvature.
  const value = (k: number) => {
    const step = way * k * DIFFERENCE
    return warp(alongBy(at, tangent, step), along + step)
  }
  const slope = subtract(add(scale(value(0), -3), scale(value(1), 4)), value(2))
  return unit(scale(slope, way))
}

/** Arc length between two places of a fitted path, a before b, mm; for sums over samples. */
function lengthBetween(path: Path, a: PathParameter, b: PathParameter): number {
  if (a.index === b.index) return shortArc(path[a.index] as Cubic, a.t, b.t)
  let sum = shortArc(path[a.index] as Cubic, a.t, 1) + shortArc(path[b.index] as Cubic, 0, b.t)
  for (let i = a.index + 1; i < b.index; i++) sum += shortArc(path[i] as Cubic, 0, 1)
  return sum
}
