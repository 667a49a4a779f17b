import type { MeetingKind } from './crossings.ts'
import { type Cubic, pointAt } from './cubic.ts'
import { nearestOnCubic } from './nearest.ts'
import type { Path } from './path.ts'
import { type PathParameter, tangentAt } from './path-length.ts'
import { cross, type Point, scale, turnBetween } from './point.ts'

// Directions nearer than this may cross or touch: the curves themselves decide, a little further on.
const PARALLEL = 1e-5

/** Whether two paths that meet at the given places change sides there. */
export function meetingKind(
  a: Path,
  onA: PathParameter,
  closedA: boolean,
  b: Path,
  onB: PathParameter,
  closedB: boolean,
): MeetingKind {
  const armsA = arms(a, onA, closedA)
  const armsB = arms(b, onB, closedB)
  if (!armsA.back || !armsA.ahead || !armsB.back || !armsB.ahead) return 'end'
  const before = side(armsA.back, armsB.back, armsB.ahead)
  const after = side(armsA.ahead, armsB.back, armsB.ahead)
  return before * after < 0 ? 'cross' : 'touch'
}

/** One side of a path at a place on it: the direction that leads away, and points along it. */
interface Arm {
  readonly direction: Point
  readonly at: Point
  readonly c: Cubic
  /** Parameter of the place, and towards which end the arm runs. */
  readonly t: number
  readonly ahead: boolean
}

/** Both sides of a path at a place on it; none beyond an end. */
interface Arms {
  readonly back: Arm | undefined
  readonly ahead: Arm | undefined
}

function arms(path: Path, { index, t }: PathParameter, closed: boolean): Arms {
  const c = path[index] as Cubic
  const at = pointAt(c, t)
  const before = t > 0 ? c : (path[index - 1] ?? (closed ? path[path.length - 1] : undefined))
  const after = t < 1 ? c : (path[index + 1] ?? (closed ? path[0] : undefined))
  const backT = t > 0 ? t : 1
  const aheadT = t < 1 ? t : 0
  return {
    back: before && { direction: scale(tangentAt(before, backT), -1), at, c: before, t: backT, ahead: false },
    ahead: after && { direction: tangentAt(after, aheadT), at, c: after, t: aheadT, ahead: true },
  }
}

/** 1 where the arm runs off to the left of the line that comes in along `back` and leaves along `ahead`, −1 to the right, 0 on it. */
function side(arm: Arm, back: Arm, ahead: Arm): number {
  const toArm = turn(ahead.direction, arm.direction)
  const toBack = turn(ahead.direction, back.direction)
  const nearAhead = Math.min(toArm, 2 * Math.PI - toArm)
  const nearBack = Math.abs(toArm - toBack)
  if (nearAhead < PARALLEL) return sideOf(arm, ahead)
  if (nearBack < PARALLEL) return -sideOf(arm, back)
  return toArm < toBack ? 1 : -1
}

/** Anticlockwise turn in [0, 2π). */
function turn(from: Point, to: Point): number {
  const angle = turnBetween(from, to)
  return angle < 0 ? angle + 2 * Math.PI : angle
}

/** Two arms that leave in the same direction: on which side of `line`, seen along it, `arm` comes to lie. */
function sideOf(arm: Arm, line: Arm): number {
  const room = arm.ahead ? 1 - arm.t : arm.t
  for (const share of [0.01, 0.1]) {
    const p = pointAt(arm.c, arm.ahead ? arm.t + room * share : arm.t - room * share)
    const foot = nearestOnCubic(line.c, p)
    const direction = tangentAt(line.c, foot.t)
    const off = cross(direction, { x: p.x - foot.at.x, y: p.y - foot.at.y }) * (line.ahead ? 1 : -1)
    if (Math.abs(off) > 1e-7) return Math.sign(off)
  }
  return 0
}
