import type { Problem } from '../base/problem.ts'
import { failure, type Result, success } from '../base/result.ts'
import { cos, sin } from '../base/trig.ts'
import { line } from '../geometry/cubic.ts'
import { hobbySpline } from '../geometry/hobby.ts'
import { endOf, lastCubic, type Path, reversePath } from '../geometry/path.ts'
import { pathLength, tangentAt } from '../geometry/path-length.ts'
import { along, between, distance, leftOf, type Point, point, rotateAbout, subtract, unit } from '../geometry/point.ts'
import type { Dart } from '../pattern/piece.ts'
import { ELBOW } from './defaults.ts'
import { doesNotSettle } from './does-not-settle.ts'
import { type ElbowDarts, elbowDarts } from './elbow-darts.ts'
import { type Forearm, forearm } from './forearm.ts'

export interface ArmPlan {
  /** Widths at the biceps line, the elbow line and the wrist, mm. */
  readonly width: number
  readonly elbow: number
  readonly wrist: number
  /** From the biceps line down to the elbow line, and from there to the wrist, mm. */
  readonly upperLength: number
  readonly lowerLength: number
  /** x of the middle of the biceps line. */
  readonly middle: number
  /** Total intake of the elbow darts, mm, and how many share it; without darts the sleeve hangs straight. */
  readonly intake: number
  readonly darts: 0 | 1 | 2
}

export interface Arm {
  /** From the back end to the front end. */
  readonly wrist: Path
  /** From the wrist to the underarm. */
  readonly frontSeam: Path
  /** Length of the front seam from the wrist to the elbow point, mm. */
  readonly frontElbowAlong: number
  /** From the underarm to the wrist, one part between darts. */
  readonly backSeam: readonly Path[]
  readonly darts: readonly Dart[]
  readonly elbowLine: Path
  /** From the elbow's center to the middle of the wrist. */
  readonly forearmLine: Path
  readonly forearm: Forearm
}

/** Unit direction of the front underarm seam, upwards at the underarm: straight from the elbow point. */
export function underarmSeamUp(width: number, elbow: number, upperLength: number): Point {
  return unit(point((width - elbow) / 2, upperLength))
}

/** A round leaves a thousandth of the wrist's error. */
const ROUNDS = 8

/** The wrist is met to this, mm. */
const ACCURACY = 1e-7

/**
 * The sleeve below the biceps line: seams alike about the middle, the forearm turned forward by the elbow darts,
 * the wrist square to both seams. Front and back seam sew equal (to 1e-6 mm): what bending the front seam and
 * truing the dart mouths change of their lengths is shared between the two ends of the wrist. Problems: a forearm that
 * would have to lean by 45°, elbow darts without room, a wrist that does not settle.
 */
export function drawArm(plan: ArmPlan): Result<Arm> {
  // The shared difference tilts the wrist a hair and so changes its length: asked again, it is right at once.
  let wrist = plan.wrist
  for (let round = 0; round < ROUNDS; round++) {
    const arm = drawWith(plan, wrist)
    if (!arm.ok) return arm
    const error = pathLength(arm.value.wrist) - plan.wrist
    if (Math.abs(error) < ACCURACY) return arm
    wrist -= error
  }
  return failure(doesNotSettle('sleeve', 'wrist', 'body.wrist girth', `the wrist of ${plan.wrist.toFixed(0)} mm`))
}

function drawWith(plan: ArmPlan, wrist: number): Result<Arm> {
  const cone = forearm(plan.elbow, wrist, plan.lowerLength)
  if (!cone) return failure(wristOutOfReach(plan))
  const at = (x: number, y: number) => point(plan.middle + x, y)
  const elbowLevel = -plan.upperLength
  const wristLevel = elbowLevel - plan.lowerLength - cone.drop
  const frontElbow = at(plan.elbow / 2, elbowLevel)
  const backElbow = at(-plan.elbow / 2, elbowLevel)
  const up = underarmSeamUp(plan.width, plan.elbow, plan.upperLength)
  const backAbove = point(up.x, -up.y)
  const backBelow = unit(point(sin(cone.lean), -cos(cone.lean)))
  const drawn =
    plan.darts === 0
      ? success(undefined)
      : elbowDarts({
          frontElbow,
          backElbow,
          above: backAbove,
          below: backBelow,
          intake: plan.intake,
          count: plan.darts,
        })
  if (!drawn.ok) return drawn
  const elbow = drawn.value
  const turned = (p: Point) => rotateAbout(p, frontElbow, elbow?.turn ?? 0)

  const frontWrist = turned(at(cone.halfChord, wristLevel))
  const backWrist = turned(at(-cone.halfChord, wristLevel))
  const front = bentSeam(at(plan.width / 2, 0), frontElbow, frontWrist)
  const backUnderarm = at(-plan.width / 2, 0)
  const back = elbow
    ? dartedSeam(backUnderarm, backAbove, elbow, backWrist)
    : [bentSeam(backUnderarm, backElbow, backWrist)]
  const difference = pathLength(front) - back.reduce((sum, part) => sum + pathLength(part), 0)
  const evenFront = lengthened(front, -difference / 2)
  const evenBack = [...back.slice(0, -1), lengthened(back[back.length - 1] as Path, difference / 2)]
  const elbowEnd = elbow?.backElbow ?? backElbow
  const middle = turned(at(0, elbowLevel - plan.lowerLength))
  return success({
    wrist: wristCurve(evenBack[evenBack.length - 1] as Path, middle, evenFront),
    frontSeam: reversePath(evenFront),
    frontElbowAlong: pathLength(evenFront.slice(2)),
    backSeam: evenBack,
    darts: elbow?.darts ?? [],
    elbowLine: [line(frontElbow, elbowEnd)],
    forearmLine: [line(between(frontElbow, elbowEnd, 0.5), middle)],
    forearm: cone,
  })
}

function wristOutOfReach({ elbow, wrist, lowerLength }: ArmPlan): Problem {
  return {
    code: 'wrist-out-of-reach',
    where: { field: 'body.wrist girth', piece: 'sleeve', seam: 'wrist' },
    actual: `from ${elbow.toFixed(0)} mm at the elbow to ${wrist.toFixed(0)} mm at the wrist over a forearm of ${lowerLength.toFixed(0)} mm`,
    expected: 'seams that lean by less than 45 deg',
    hint: 'measure elbow girth, wrist girth, shoulder to elbow and outer arm length again, and look at their units',
  }
}

/** Underarm to wrist: straight, bent about the elbow point, straight. */
function bentSeam(underarm: Point, elbow: Point, wrist: Point): Path {
  const above = unit(subtract(elbow, underarm))
  const below = unit(subtract(wrist, elbow))
  const start = along(elbow, above, -bendLength(underarm, elbow))
  const end = along(elbow, below, bendLength(elbow, wrist))
  const bend = hobbySpline([{ at: start, direction: above }, { at: elbow }, { at: end, direction: below }])
  return [line(underarm, start), ...bend, line(end, wrist)]
}

/** Underarm to wrist, one part between darts: straight, trued to the mouths of the elbow darts, straight. */
function dartedSeam(underarm: Point, down: Point, elbow: ElbowDarts, wrist: Point): Path[] {
  const into = (elbow.darts[0] as Dart).mouth[0]
  const out = (elbow.darts[elbow.darts.length - 1] as Dart).mouth[1]
  const run = unit(subtract(wrist, out))
  const start = along(underarm, down, distance(underarm, into) - bendLength(underarm, into))
  const end = along(wrist, run, bendLength(out, wrist) - distance(out, wrist))
  return [
    [
      line(underarm, start),
      ...hobbySpline([
        { at: start, direction: down },
        { at: into, direction: elbow.arriving },
      ]),
    ],
    ...elbow.strips,
    [
      ...hobbySpline([
        { at: out, direction: elbow.leaving },
        { at: end, direction: run },
      ]),
      line(end, wrist),
    ],
  ]
}

function bendLength(a: Point, b: Point): number {
  return Math.min(ELBOW.bend, ELBOW.bendShare * distance(a, b))
}

/** The path with its last, straight cubic made longer by `by` mm. */
function lengthened(path: Path, by: number): Path {
  const last = lastCubic(path)
  return [...path.slice(0, -1), line(last.p0, along(last.p3, tangentAt(last, 1), by))]
}

/** Through the forearm's middle, square to both seams. */
function wristCurve(back: Path, middle: Point, front: Path): Path {
  return hobbySpline([
    { at: endOf(back), direction: leftOf(tangentAt(lastCubic(back), 1)) },
    { at: middle },
    { at: endOf(front), direction: leftOf(tangentAt(lastCubic(front), 1)) },
  ])
}
