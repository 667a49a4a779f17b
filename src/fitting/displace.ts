import { type Cubic, curvatureAt, derivativeAt, pointAt, secondDerivativeAt } from '../geometry/cubic.ts'
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

function move(c: Cubic, t: number, at: number, request: DisplaceRequest, profile: Profile): MovedPlace | Folds {
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
  return { x: old.x + x, y: old.y + y, vx, vy }
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
