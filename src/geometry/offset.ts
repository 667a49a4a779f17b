import { arcLength } from './arc-length.ts'
import { area } from './area.ts'
import { selfCrossings } from './crossings.ts'
import { type Cubic, splitCubic } from './cubic.ts'
import { CURVE_TOLERANCE } from './defaults.ts'
import { alongOf, nearestParameter } from './nearest.ts'
import { mitreCorner } from './offset-corner.ts'
import { offsetCubic } from './offset-cubic.ts'
import { isClosed, type Path, reversePath } from './path.ts'
import { tangentAt } from './path-length.ts'
import type { Point } from './point.ts'
import { smoothParts } from './smooth-parts.ts'
import { trimClosed, trimOpen } from './trim-loops.ts'

export interface OffsetOptions {
  /** Largest error of the distance anywhere on smooth parts, mm. */
  readonly tolerance?: number
  /** The longest mitre at a corner as a multiple of the distance; longer ones are cut off at the distance itself. */
  readonly mitreLimit?: number
}

/** Distances of one path: the same all along, or given at each fraction of its length from 0 to 1. */
export type OffsetDistance = number | ((fraction: number) => number)

/** A mitre longer than this many times the distance is cut off square at the distance: corners of 60° and less. */
export const MITRE_LIMIT = 2

/**
 * The line at `distance` mm from a path, to the right of travel where positive: outside an anticlockwise outline.
 * Every point of smooth parts is within `tolerance` (default CURVE_TOLERANCE) of its distance, checked against the
 * path as it is built; there are no gaps; ends lie exactly at point + distance · normal. Outer corners are
 * mitred; loops at inner corners and in hollows narrower than the distance are cut away where the line comes back
 * to itself, with all that lies behind a hollow's mouth; a loop that keeps its distance all along stays (the inside of a
 * nearly closed path), and so does an end that itself lies in a hollow. A tapered distance (a function of the fraction of
 * length, continuous) is measured along the normals. A closed path gives a closed one: the outermost, should it fall
 * apart. Cost: 2–30 µs for a smooth cubic. Throws on a path without length.
 */
export function offset(path: Path, distance: OffsetDistance, options: OffsetOptions = {}): Path {
  const tolerance = options.tolerance ?? CURVE_TOLERANCE
  if (!(tolerance > 0)) throw new RangeError('tolerance must be above zero')
  if (distance === 0) return path
  const closed = isClosed(path)
  if (closed && area(path) < 0) return reversePath(offset(reversePath(path), turned(distance), options))
  const raw = rawOffset(path, distance, tolerance, options.mitreLimit ?? MITRE_LIMIT, closed)
  if (closed) return trimClosed(raw)
  const found = selfCrossings(raw)
  if (found.crossings.length === 0 && found.overlaps.length === 0) return raw
  const size =
    typeof distance === 'number' ? Math.abs(distance) : Math.max(Math.abs(distance(0)), Math.abs(distance(1)))
  // A path with loops of its own has loops in its offset, which come near to it where it crosses itself.
  const share = selfCrossings(path).crossings.length > 0 ? 0.5 : 1
  return trimOpen(raw, found, farEnough(path, distance, tolerance), { small: size / 2, share })
}

/** A part of a path without corners inside: it covers the fractions `from` to `to` of the path's length. */
interface Part {
  readonly source: Cubic
  readonly from: number
  readonly to: number
}

/** The offset of a path before its loops are cut away. */
function rawOffset(path: Path, distance: OffsetDistance, tolerance: number, limit: number, closed: boolean): Path {
  const tapered = typeof distance === 'function'
  const at = (fraction: number) => (tapered ? distance(fraction) : distance)
  const parts = partsOf(path, tapered, closed)
  const chainOf = ({ source, from, to }: Part) =>
    offsetCubic(source, tapered ? { at: distance, from, to } : distance, tolerance)
  const corner = (a: Part, b: Part, before: readonly Cubic[], after: readonly Cubic[]) =>
    mitreCorner(
      {
        before,
        after,
        corner: a.source.p3,
        cornerAfter: b.source.p0,
        directionBefore: tangentAt(a.source, 1),
        directionAfter: tangentAt(b.source, 0),
        distanceBefore: at(a.to),
        distanceAfter: at(b.from),
      },
      limit,
    )
  const done: Cubic[] = []
  let last = parts[0] as Part
  let chain: readonly Cubic[] = chainOf(last)
  for (let k = 1; k < parts.length; k++) {
    const part = parts[k] as Part
    const made = corner(last, part, chain, chainOf(part))
    done.push(...made.before, ...made.between)
    chain = made.after
    last = part
  }
  if (!closed) return [...done, ...chain]
  const made = corner(last, parts[0] as Part, chain, done)
  return closeChain([...made.after, ...made.before, ...made.between])
}

/** The parts with length; at least two of a closed path, so that its last corner has two sides. */
function partsOf(path: Path, tapered: boolean, closed: boolean): Part[] {
  const sources = path.flatMap(smoothParts)
  const [only] = sources
  if (!only) throw new RangeError('a path without length has no offset')
  if (closed && sources.length === 1) sources.splice(0, 1, ...splitCubic(only, 0.5))
  if (!tapered) return sources.map((source) => ({ source, from: 0, to: 0 }))
  const lengths = sources.map((source) => arcLength(source))
  const whole = lengths.reduce((a, b) => a + b, 0)
  let run = 0
  return sources.map((source, k) => {
    const from = run / whole
    run += lengths[k] as number
    return { source, from, to: k === sources.length - 1 ? 1 : run / whole }
  })
}

function closeChain(chain: Cubic[]): Cubic[] {
  const start: Point = (chain[0] as Cubic).p0
  const last = chain[chain.length - 1] as Cubic
  return last.p3 === start ? chain : [...chain.slice(0, -1), { ...last, p3: start }]
}

/** Whether a point keeps its distance from the whole path: what lies nearer belongs to a loop. */
function farEnough(path: Path, distance: OffsetDistance, tolerance: number): (p: Point) => boolean {
  if (typeof distance === 'number') {
    const least = Math.abs(distance) - 2 * tolerance
    return (p) => nearestParameter(path, p).distance >= least
  }
  const whole = path.reduce((sum, c) => sum + arcLength(c), 0)
  return (p) => {
    const near = nearestParameter(path, p)
    return near.distance >= Math.abs(distance(Math.min(1, alongOf(path, near) / whole))) - 2 * tolerance
  }
}

function turned(distance: OffsetDistance): OffsetDistance {
  return typeof distance === 'number' ? -distance : (fraction) => -distance(1 - fraction)
}
