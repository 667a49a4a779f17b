import { type Cubic, curvatureAt } from '../geometry/cubic.ts'
import { CURVE_TOLERANCE } from '../geometry/defaults.ts'
import type { Path } from '../geometry/path.ts'
import { locate, type PathParameter, tangentAt } from '../geometry/path-length.ts'
import type { Point } from '../geometry/point.ts'
import { drawMoved, type MovedLine } from './draw-moved.ts'
import type { Profile } from './profile.ts'
import type { Folds, MovedPlace } from './sample-moved.ts'

/** Nodes nearer than this to an end are the end, mm. */
const APART = 1e-4

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

/**
 * The path moved along its outward normals by the profile (the path runs anticlockwise round its piece), refitted
 * within `tolerance` mm from node to node, so that the amounts at the nodes are exact. Its directions at the ends
 * are those of the moved line. Says where the line would fold over itself instead of returning one that does.
 */
export function displace(request: DisplaceRequest, profile: Profile, tolerance = CURVE_TOLERANCE): Displaced | Folds {
  const { path, start, length } = request
  const end = start + length
  const inside = profile.nodes.map((node) => node.at).filter((at) => at > start + APART && at < end - APART)
  const cuts = [start, ...inside, end]
  const places: PathParameter[] = cuts.map((at, k) => {
    if (k === 0) return { index: 0, t: 0 }
    return k === cuts.length - 1 ? { index: path.length - 1, t: 1 } : locate(path, at - start)
  })
  const fades = request.startExtra || request.endExtra ? request.fade : Number.POSITIVE_INFINITY
  const line: MovedLine = { path: [], old: [start], now: [0] }
  for (let k = 1; k < cuts.length; k++) {
    const folds = drawMoved(line, {
      path,
      from: places[k - 1] as PathParameter,
      to: places[k] as PathParameter,
      start: cuts[k - 1] as number,
      end: cuts[k] as number,
      fades,
      tolerance,
      move: (cubic, t, at) => move(cubic, t, at, request, profile),
    })
    if (folds) return folds
  }
  return line
}

/** Where a place of a cubic moves to; without objects between, for it is asked for many times over. */
function move(c: Cubic, t: number, at: number, request: DisplaceRequest, profile: Profile): MovedPlace | Folds {
  const { p0, p1, p2, p3 } = c
  const u = 1 - t
  let dx = 3 * (u * u * (p1.x - p0.x) + 2 * u * t * (p2.x - p1.x) + t * t * (p3.x - p2.x))
  let dy = 3 * (u * u * (p1.y - p0.y) + 2 * u * t * (p2.y - p1.y) + t * t * (p3.y - p2.y))
  const pace = Math.sqrt(dx * dx + dy * dy)
  let curvature: number
  // Next to an end a handle may lie on it: the direction is the limit there, and the curvature that a little inside.
  if (t < BESIDE || t > 1 - BESIDE || pace < STANDSTILL) {
    const tangent = tangentAt(c, t)
    dx = tangent.x
    dy = tangent.y
    curvature = curvatureAt(c, Math.min(1 - BESIDE, Math.max(BESIDE, t)))
  } else {
    const ddx = 6 * (u * (p2.x - 2 * p1.x + p0.x) + t * (p3.x - 2 * p2.x + p1.x))
    const ddy = 6 * (u * (p2.y - 2 * p1.y + p0.y) + t * (p3.y - 2 * p2.y + p1.y))
    curvature = (dx * ddy - dy * ddx) / (pace * pace * pace)
    dx /= pace
    dy /= pace
  }
  const amount = profile.amount(at)
  const slope = profile.slope(at)
  const speed = 1 + curvature * amount
  // The outward normal lies clockwise of the tangent.
  let x = dy * amount
  let y = -dx * amount
  let vx = dx * speed + dy * slope
  let vy = dy * speed - dx * slope
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
  if (!(vx * dx + vy * dy >= LEAST_SPEED)) return { folds: { at, amount, radius: Math.abs(1 / curvature) } }
  const a = u * u * u
  const b = 3 * u * u * t
  const d = 3 * u * t * t
  const e = t * t * t
  x += a * p0.x + b * p1.x + d * p2.x + e * p3.x
  y += a * p0.y + b * p1.y + d * p2.y + e * p3.y
  return { x, y, vx, vy }
}

/** 1 at 0 falling to 0 at 1, flat at both. */
function fade(u: number): { value: number; slope: number } {
  if (u >= 1) return { value: 0, slope: 0 }
  return { value: 1 - u * u * (3 - 2 * u), slope: -6 * u * (1 - u) }
}
