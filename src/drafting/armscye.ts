import { type Cubic, pointAt } from '../geometry/cubic.ts'
import { hobbySpline } from '../geometry/hobby.ts'
import { curvatureChanges, curvatureSigns } from '../geometry/inflections.ts'
import type { Path } from '../geometry/path.ts'
import { tangentAt } from '../geometry/path-length.ts'
import {
  along,
  angleOf,
  between,
  distance,
  heading,
  type Point,
  point,
  subtract,
  turnBetween,
  unit,
} from '../geometry/point.ts'

export interface ArmscyePoints {
  readonly underarm: Point
  /** Direction in which the armscye leaves the underarm, towards the center. */
  readonly leaving: Point
  /** Where the armscye crosses the back or front width line. */
  readonly width: Point
  readonly shoulder: Point
  /** Direction in which the armscye arrives at the shoulder point. */
  readonly arriving: Point
  /** Wanted distance of the hollow from the corner of width line and underarm line, on the 45° line, mm. */
  readonly hollow: number
}

/** Share of the chord: a circle's arc has a third or more. */
const SHORTEST_HANDLE = 0.22

export interface Armscye {
  /** From the underarm to the shoulder point. */
  readonly path: Path
  /** The hollow that was drawn, mm from the corner; the wanted one where the curve stays fair with it. */
  readonly hollow: number
  /** Whether it turns one way all along from the underarm to the width point. */
  readonly fair: boolean
}

/**
 * The armscye: a fair curve through underarm, hollow, width point and shoulder point. Between underarm and width
 * point it turns one way all along, above that it bends back at most once. The cutter's hollow is deeper than
 * the natural curve through the other three points, and a shoulder point far outside bends the curve back at the
 * width line; so, just as far as fairness needs (to a thousandth of the way): first the direction at the width
 * point turns to one with which both sides of it are fair, then the hollow moves towards the natural curve. Where that
 * would still leave a corner, because the shoulder point lies inside the width line, see `toNarrowShoulder`.
 */
export function armscye(points: ArmscyePoints): Armscye {
  const free = draw(points, points.hollow)
  if (isFair(free)) return { path: free, hollow: points.hollow, fair: true }
  const drawnDirection = tangentAt(free[1] as Cubic, 1)
  const turned = (share: number) =>
    draw(points, points.hollow, unit(between(drawnDirection, fairDirection(points, points.hollow), share)))
  if (isFair(turned(1))) {
    return { path: turned(leastFair((share) => isFair(turned(share)))), hollow: points.hollow, fair: true }
  }
  const natural = naturalHollow(points)
  const hollow = (share: number) => points.hollow + (natural - points.hollow) * share
  const moved = (share: number) => draw(points, hollow(share), fairDirection(points, hollow(share)))
  if (!isFair(moved(1))) return toNarrowShoulder(points, natural)
  const share = leastFair((share) => isFair(moved(share)))
  return { path: moved(share), hollow: hollow(share), fair: true }
}

/**
 * A curve square to the shoulder reaches a shoulder point inside the width line only by bending out again at its end.
 * With the natural hollow the lower part turns one way, and its direction at the width point is as near as that allows
 * to the one of the spline through all knots; the upper part then bends in and out again gently.
 */
function toNarrowShoulder(points: ArmscyePoints, hollow: number): Armscye {
  const start = { at: points.underarm, direction: points.leaving }
  const middle = { at: hollowPoint(points, hollow) }
  const end = { at: points.shoulder, direction: points.arriving }
  const together = hobbySpline([start, middle, { at: points.width }, end], { bounded: true })
  const alone = hobbySpline([start, middle, { at: points.width }], { bounded: true })
  const [from, to] = [together, alone].map((path) => tangentAt(path[1] as Cubic, 1)) as [Point, Point]
  const lower = (turned: number) => {
    const width = { at: points.width, direction: unit(between(from, to, turned)) }
    return hobbySpline([start, middle, width], { bounded: true })
  }
  const fair = (turned: number) => turnsOneWay(lower(turned)) && hasHandles(lower(turned))
  const path = lower(fair(0) ? 0 : leastFair(fair))
  const width = { at: points.width, direction: tangentAt(path[1] as Cubic, 1) }
  // Handles held within their triangle would shrink to a corner at the shoulder point: they have the published length.
  return { path: [...path, ...hobbySpline([width, end])], hollow, fair: turnsOneWay(path) }
}

/**
 * A direction at the width point that leaves no reason to bend back: between the chords that meet there where the
 * curve goes on turning clockwise to the shoulder, and as far beyond the upper chord as the arrival is before it
 * where it turns back.
 */
function fairDirection(points: ArmscyePoints, hollow: number): Point {
  const below = subtract(points.width, hollowPoint(points, hollow))
  const above = subtract(points.shoulder, points.width)
  const arrival = turnBetween(above, points.arriving)
  return heading(angleOf(above) + (arrival > 0 ? -arrival : turnBetween(above, below) / 2))
}

/** The smallest share that is fair, given that 1 is (or is the best there is), to a thousandth. */
function leastFair(fair: (share: number) => boolean): number {
  let low = 0
  let high = 1
  for (let i = 0; i < 10; i++) {
    const middle = (low + high) / 2
    if (fair(middle)) high = middle
    else low = middle
  }
  return high
}

function corner(points: ArmscyePoints): Point {
  return point(points.width.x, points.underarm.y)
}

function draw(points: ArmscyePoints, hollow: number, atWidth?: Point): Path {
  return hobbySpline(
    [
      { at: points.underarm, direction: points.leaving },
      { at: hollowPoint(points, hollow) },
      { at: points.width, ...(atWidth ? { direction: atWidth } : {}) },
      { at: points.shoulder, direction: points.arriving },
    ],
    { bounded: true },
  )
}

function hollowPoint(points: ArmscyePoints, hollow: number): Point {
  return along(corner(points), point(Math.SQRT1_2, Math.SQRT1_2), hollow)
}

/** Where the curve through underarm, width point and shoulder point alone crosses the 45° line, mm from the corner. */
function naturalHollow(points: ArmscyePoints): number {
  const [lower] = hobbySpline([
    { at: points.underarm, direction: points.leaving },
    { at: points.width },
    { at: points.shoulder, direction: points.arriving },
  ]) as [Cubic]
  const at = corner(points)
  let low = 0
  let high = 1
  for (let i = 0; i < 60; i++) {
    const t = (low + high) / 2
    const p = pointAt(lower, t)
    if (p.x - at.x > p.y - at.y) low = t
    else high = t
  }
  const p = pointAt(lower, (low + high) / 2)
  return Math.SQRT1_2 * (p.x - at.x + (p.y - at.y))
}

/** Clockwise all along from the underarm to the width point, bending back at most once above it, nowhere as in a corner. */
function isFair(path: Path): boolean {
  return turnsOneWay(path.slice(0, 2)) && curvatureChanges(path) <= 1 && hasHandles(path)
}

function turnsOneWay(lower: Path): boolean {
  return curvatureSigns(lower).every((sign) => sign < 0)
}

/** A handle much shorter than its chord would be a corner. */
function hasHandles(path: Path): boolean {
  return path.every((c) => {
    const least = SHORTEST_HANDLE * distance(c.p0, c.p3)
    return distance(c.p0, c.p1) > least && distance(c.p2, c.p3) > least
  })
}

/** The width point: on the width line, part of the way up from the underarm level to the shoulder point. */
export function widthPoint(x: number, underarm: Point, shoulder: Point, share: number): Point {
  return point(x, between(underarm, shoulder, share).y)
}
