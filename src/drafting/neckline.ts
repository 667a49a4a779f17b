import { cubic } from '../geometry/cubic.ts'
import { hobbySpline } from '../geometry/hobby.ts'
import type { Path } from '../geometry/path.ts'
import { pathLength } from '../geometry/path-length.ts'
import { along, between, heading, type Point, point } from '../geometry/point.ts'
import { NECK } from './defaults.ts'

export interface Neckline {
  /** Back neck width: center to side neck point, mm. */
  readonly width: number
  /** Back neckline, side neck point to nape; the nape is the origin. */
  readonly back: Path
  /** Front neckline, side neck point to front neck pit; its side neck point is at height 0 over the center line. */
  readonly front: Path
}

/** Slopes of one half of the body, radians below horizontal. */
export interface ShoulderSlopes {
  readonly back: number
  readonly front: number
}

/**
 * The back neck width for which the stitched neckline measures `girth` mm exactly, over both halves of the body. One
 * shape family that scales with the width, so the width follows by proportion.
 */
export function neckWidth(girth: number, left: ShoulderSlopes, right: ShoulderSlopes): number {
  // 1e-10 on a neckline of unit width leaves 1e-8 mm on a real one.
  const length = ({ back, front }: Neckline) =>
    pathLength(back, { accuracy: 1e-10 }) + pathLength(front, { accuracy: 1e-10 })
  return girth / (length(neckline(1, left)) + length(neckline(1, right)))
}

/** The neckline of that back neck width. Square into both center lines; across the sewn shoulder the angles total 180°. */
export function neckline(width: number, slopes: ShoulderSlopes): Neckline {
  const backNeck = point(width, NECK.backRise * width)
  const frontNeck = point(NECK.frontWidth * width, 0)
  const pit = point(0, -NECK.frontDepth * width)
  return {
    width,
    back: backCurve(backNeck, leaving(slopes.back, NECK.turn)),
    front: hobbySpline([
      { at: frontNeck, direction: leaving(slopes.front, -NECK.turn) },
      { at: pit, direction: point(-1, 0) },
    ]),
  }
}

/** The parabola with the two end directions: a shallow curve that, unlike a spline, never dips below the nape. */
function backCurve(neck: Point, direction: Point): Path {
  const corner = along(neck, direction, -neck.y / direction.y)
  return [cubic(neck, between(neck, corner, 2 / 3), between(point(0, 0), corner, 2 / 3), point(0, 0))]
}

/** The direction that leaves the shoulder at the side neck point at an inside angle of 90° + turn. */
function leaving(slope: number, turn: number): Point {
  return heading(-slope - Math.PI / 2 - turn)
}
