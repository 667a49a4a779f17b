import type { Finding } from '../base/problem.ts'
import { failure, type Result, success } from '../base/result.ts'
import { cos, sin } from '../base/trig.ts'
import { type BodyHalf, measureOf } from '../body/body.ts'
import { pathLength } from '../geometry/path-length.ts'
import { distance } from '../geometry/point.ts'
import { type Arm, drawArm, underarmSeamUp } from './arm.ts'
import type { Bodice, BodiceHalf } from './bodice.ts'
import { type ArmscyeSide, type Cap, type CapGiven, solveCap } from './cap.ts'
import type { Choices } from './choices.ts'
import { chooseCap } from './choose-cap.ts'
import { CAP, ELBOW } from './defaults.ts'
import { type CapEaseAsked, capEaseOf, easeFor, type UpperArm, upperArm } from './ease.ts'

/** The stitching lines of the sleeve: x = 0 the grain through the crown, +x towards the front, y = 0 the biceps line. */
export interface Sleeve {
  readonly cap: Cap
  readonly arm: Arm
  readonly upperArm: UpperArm
  readonly capEase: CapEaseAsked
  /** Lengths of the armscye the cap was solved for, mm. */
  readonly frontArmscye: number
  readonly backArmscye: number
  readonly findings: readonly Finding[]
}

/** Lengths within this are the same, mm. */
const ROUNDING = 0.01

/** The shortest way from the biceps line to the elbow that a sleeve can be drawn with, mm. */
const SHORTEST_UPPER = 60

/**
 * Drafts the sleeve for one side of the body to the armscye of its bodice. Problems: a cap that cannot reach its
 * length on the biceps line, a cap lower than is accepted, biceps width, cap height and cap ease that contradict each
 * other, an elbow above the biceps line.
 */
export function sleeve(half: BodyHalf, choices: Choices, bodice: Bodice): Result<Sleeve> {
  const front = armscyeSide(bodice.front)
  const back = armscyeSide(bodice.back)
  const armscye = front.length + back.length
  const arm = upperArm(half, choices)
  const elbow = measureOf(half, 'elbow girth') + easeFor(choices, 'elbow')
  const wrist = measureOf(half, 'wrist girth') + easeFor(choices, 'wrist')
  const toElbow = measureOf(half, 'shoulder to elbow')
  const length = measureOf(half, 'outer arm length')
  const solve = (given: CapGiven) =>
    solveCap({
      front,
      back,
      given,
      underarmSeamUp: (height, width) => underarmSeamUp(width, elbow, Math.max(toElbow - height, SHORTEST_UPPER)),
    })
  const found = chooseCap({ choices, arm, armscye, solve })
  if (!found.ok) return found
  const cap = found.value
  if (toElbow - cap.height < SHORTEST_UPPER || length - toElbow < SHORTEST_UPPER) {
    return failure({
      code: 'elbow-out-of-place',
      where: { field: 'body.shoulder to elbow' },
      actual: `an elbow ${toElbow.toFixed(0)} mm below the shoulder on an arm of ${length.toFixed(0)} mm with a cap ${cap.height.toFixed(0)} mm high`,
      expected: `at least ${SHORTEST_UPPER} mm from the biceps line to the elbow and from the elbow to the wrist`,
      hint: 'measure shoulder to elbow from the shoulder point to the point of the bent elbow, and outer arm length on to the wrist',
    })
  }
  const drawn = drawArm({
    width: cap.width,
    elbow,
    wrist,
    upperLength: toElbow - cap.height,
    lowerLength: length - toElbow,
    middle: -cap.shift,
    intake: choices.elbowIntake ?? ELBOW.intake,
    darts: choices.elbowIntake === 0 ? 0 : (choices.elbowDarts ?? 2),
  })
  if (!drawn.ok) return drawn
  return success({
    cap,
    arm: drawn.value,
    upperArm: { ...arm, width: cap.width, ease: cap.width - arm.body },
    capEase: capEaseOf(choices, armscye, cap.ease),
    frontArmscye: front.length,
    backArmscye: back.length,
    findings: [
      ...lowCap(cap, armscye),
      ...handOpening(half, wrist, drawn.value, length - toElbow),
      ...shortDarts(drawn.value),
    ],
  })
}

function armscyeSide(half: BodiceHalf): ArmscyeSide {
  return { path: half.armscye, sideUp: half.side.upAtUnderarm, length: pathLength(half.armscye) }
}

function lowCap(cap: Cap, armscye: number): Finding[] {
  const ratio = cap.height / armscye
  if (ratio >= CAP.lowRatio) return []
  return [
    {
      code: 'cap-low',
      severity: 'warning',
      where: { piece: 'sleeve', seam: 'cap' },
      actual: `cap height ${(ratio * 100).toFixed(0)} % of the armscye`,
      expected: `${(CAP.lowRatio * 100).toFixed(0)} % or more for a fitted sleeve`,
      hint: 'the sleeve will fold under a hanging arm; a deeper armscye or less upper arm ease makes the cap taller',
    },
  ]
}

/** How long an opening in the back seam lets the hand through, where it does not pass the wrist. */
function handOpening(half: BodyHalf, wrist: number, arm: Arm, lowerLength: number): Finding[] {
  const hand = half['hand girth']
  if (!hand || hand.value <= wrist) return []
  // Along the seam, to where the sleeve is as wide as the hand.
  const { lean } = arm.forearm
  const needed = lean > 0 ? (hand.value - wrist) / (2 * sin(lean)) : Number.POSITIVE_INFINITY
  const passes = needed * cos(lean) <= lowerLength
  const mend = passes
    ? `leave the back underarm seam open for ${needed.toFixed(0)} mm from the wrist, or add wrist ease`
    : `open to the elbow the sleeve still does not let the hand through: add ${(hand.value - wrist).toFixed(0)} mm of wrist ease`
  return [
    {
      code: 'hand-does-not-pass',
      severity: passes ? 'note' : 'warning',
      where: { piece: 'sleeve', seam: 'wrist' },
      actual: `hand girth ${hand.value.toFixed(0)} mm${hand.estimated ? ' (estimated)' : ''}, wrist ${wrist.toFixed(0)} mm`,
      expected: 'a wrist that lets the hand through, or an opening',
      hint: mend,
    },
  ]
}

/** Elbow darts shorter than common practice has them, where the sleeve leaves no more room. */
function shortDarts({ darts }: Arm): Finding[] {
  const shortest = Math.min(...darts.map(({ mouth, point }) => distance(mouth[0], point)))
  if (shortest >= ELBOW.shortest - ROUNDING) return []
  return [
    {
      code: 'elbow-darts-short',
      severity: 'note',
      where: { piece: 'sleeve', seam: 'back underarm seam' },
      actual: `elbow darts ${shortest.toFixed(0)} mm long`,
      expected: `${ELBOW.shortest} mm to ${ELBOW.longest} mm`,
      hint: `the sleeve is too narrow for more; press them to nothing, or draw one dart or none`,
    },
  ]
}
