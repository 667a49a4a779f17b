import { pointAt } from '../geometry/cubic.ts'
import type { Path } from '../geometry/path.ts'
import { distance, type Point } from '../geometry/point.ts'
import { shortArc } from './short-arc.ts'
import type { Warp } from './warp-path.ts'

/** Chords to a cubic, a multiple of two: a stitching line turns little on so short a way. */
const CHORDS = 64

/**
 * How long a path would be with every point passed through a warp, as a function of the warp: sums of chords and of half
 * as many, extrapolated, mm, good to 1e-5 for stitching lines. For solving for a length, at a hundredth of a refit.
 */
export function warpedLength(path: Path): (warp: Warp) => number {
  let along = 0
  const cubics = path.map((c) =>
    Array.from({ length: CHORDS + 1 }, (_, i): { at: Point; along: number } => {
      if (i > 0) along += shortArc(c, (i - 1) / CHORDS, i / CHORDS)
      return { at: pointAt(c, i / CHORDS), along }
    }),
  )
  return (warp) =>
    cubics.reduce((sum, samples) => {
      const points = samples.map((sample) => warp(sample.at, sample.along))
      const fine = chords(points, 1)
      return sum + fine + (fine - chords(points, 2)) / 3
    }, 0)
}

function chords(points: readonly Point[], step: number): number {
  let sum = 0
  for (let i = step; i < points.length; i += step) sum += distance(points[i - step] as Point, points[i] as Point)
  return sum
}
