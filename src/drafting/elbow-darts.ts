import type { Problem } from '../base/problem.ts'
import { failure, type Result, success } from '../base/result.ts'
import { asin } from '../base/trig.ts'
import { hobbySpline } from '../geometry/hobby.ts'
import type { Path } from '../geometry/path.ts'
import {
  along,
  angleOf,
  between,
  distance,
  heading,
  type Point,
  rightOf,
  rotateAbout,
  subtract,
  turnBetween,
  unit,
} from '../geometry/point.ts'
import type { Dart } from '../pattern/piece.ts'
import { ELBOW } from './defaults.ts'

export interface ElbowPlan {
  /** Elbow points of the front and back seam before the forearm is turned. */
  readonly frontElbow: Point
  readonly backElbow: Point
  /** Unit directions of the back seam, downwards, above and below the elbow, before the turn. */
  readonly above: Point
  readonly below: Point
  /** Total intake, mm. */
  readonly intake: number
  readonly count: 1 | 2
}

export interface ElbowDarts {
  /** By how much the forearm turns forward about the front elbow point, radians anticlockwise. */
  readonly turn: number
  /** From the upper arm down. */
  readonly darts: readonly Dart[]
  /** The seam between two darts. */
  readonly strips: readonly Path[]
  /** Where the elbow line meets the back seam: between the darts, or in the middle of the one mouth. */
  readonly backElbow: Point
  /** Directions of the seam, downwards, where it arrives at the first dart and where it leaves the last. */
  readonly arriving: Point
  readonly leaving: Point
}

/**
 * One elbow dart or two equal ones. The forearm turns forward about the front elbow point; the wedge that opens at
 * the back seam is the total intake. Two darts straddle the elbow line, one lies on it; all aim at the elbow's center.
 * The seam's directions at the mouths are such that each folded dart leaves a smooth seam.
 */
export function elbowDarts(plan: ElbowPlan): Result<ElbowDarts> {
  const width = distance(plan.frontElbow, plan.backElbow)
  // The darts end short of the middle; a mouth much wider than its dart is long is no dart.
  if (width / 2 - ELBOW.shortOf < Math.max(ELBOW.least, plan.intake / plan.count)) return failure(noRoom(plan, width))
  return success(plan.count === 1 ? oneDart(plan) : twoDarts(plan))
}

function noRoom({ intake, count }: ElbowPlan, width: number): Problem {
  const longest = Math.max(width / 2 - ELBOW.shortOf, 0)
  return {
    code: 'no-room-for-elbow-darts',
    where: { field: 'body.elbow girth', piece: 'sleeve', seam: 'back underarm seam' },
    actual: `a sleeve ${width.toFixed(0)} mm wide at the elbow has room for darts ${longest.toFixed(0)} mm long; they take in ${(intake / count).toFixed(0)} mm each`,
    expected: `darts at least ${ELBOW.least} mm long and as long as they are wide, ${ELBOW.shortOf} mm short of the middle`,
    hint: 'measure the elbow girth again, or draw no elbow dart',
  }
}

function oneDart({ frontElbow, backElbow, above, below, intake }: ElbowPlan): ElbowDarts {
  const turn = wedge(backElbow, frontElbow, intake)
  const elbow = rotateAbout(backElbow, frontElbow, turn / 2)
  const dart = aimedDart(
    'elbow dart',
    backElbow,
    rotateAbout(backElbow, frontElbow, turn),
    between(frontElbow, elbow, 0.5),
  )
  const after = rotateAbout(below, { x: 0, y: 0 }, turn)
  const kink = (foldAngle(dart) - turnBetween(above, after)) / 2
  return {
    turn,
    darts: [dart],
    strips: [],
    backElbow: elbow,
    arriving: heading(angleOf(above) - kink),
    leaving: heading(angleOf(after) + kink),
  }
}

function twoDarts({ frontElbow, backElbow, above, below, intake }: ElbowPlan): ElbowDarts {
  const each = intake / 2
  const half = (Math.max(ELBOW.apart, each + ELBOW.between) - each) / 2
  const upper = along(backElbow, above, -half)
  const lower = along(backElbow, below, half)
  const upperTurn = wedge(upper, frontElbow, each)
  const turn = upperTurn + wedge(lower, frontElbow, each)
  const turned = (p: Point, angle: number) => rotateAbout(p, frontElbow, angle)
  const elbow = turned(backElbow, upperTurn)
  const center = between(frontElbow, elbow, 0.5)
  const first = aimedDart('elbow dart upper', upper, turned(upper, upperTurn), center)
  const second = aimedDart('elbow dart lower', turned(lower, upperTurn), turned(lower, turn), center)
  const run = unit(subtract(second.mouth[0], first.mouth[1]))
  const after = rotateAbout(below, { x: 0, y: 0 }, turn)
  const firstKink = (foldAngle(first) - turnBetween(above, run)) / 2
  const secondKink = (foldAngle(second) - turnBetween(run, after)) / 2
  const strip = hobbySpline([
    { at: first.mouth[1], direction: heading(angleOf(run) + firstKink) },
    { at: second.mouth[0], direction: heading(angleOf(run) - secondKink) },
  ])
  return {
    turn,
    darts: [first, second],
    strips: [strip],
    backElbow: elbow,
    arriving: heading(angleOf(above) - firstKink),
    leaving: heading(angleOf(after) + secondKink),
  }
}

/** The turn about the pivot that opens a wedge of `intake` mm at the point. */
function wedge(at: Point, pivot: Point, intake: number): number {
  return 2 * asin(intake / 2 / distance(at, pivot))
}

/**
 * A dart between two points of the back seam, aimed at the center. The mouth turns about its middle until it is
 * square to the aim: a third of a millimetre makes the legs equal.
 */
function aimedDart(id: string, from: Point, to: Point, center: Point): Dart {
  const middle = between(from, to, 0.5)
  const half = distance(from, to) / 2
  const room = distance(middle, center)
  const leg = Math.min(Math.max(room - ELBOW.usualShort, ELBOW.shortest), ELBOW.longest, room - ELBOW.shortOf)
  const aim = unit(subtract(center, middle))
  // The aim points forward, so down the seam is to its right.
  const down = rightOf(aim)
  return {
    id,
    seam: 'back underarm seam',
    mouth: [along(middle, down, -half), along(middle, down, half)],
    point: along(middle, aim, Math.sqrt(leg * leg - half * half)),
  }
}

/** The angle at the dart's point, by which the seam's direction must differ at the two mouth points. */
function foldAngle(dart: Dart): number {
  return turnBetween(subtract(dart.mouth[0], dart.point), subtract(dart.mouth[1], dart.point))
}
