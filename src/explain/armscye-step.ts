import type { Cubic } from '../geometry/cubic.ts'
import { pathLength, tangentAt } from '../geometry/path-length.ts'
import { heading, turnBetween } from '../geometry/point.ts'
import type { BodicePoints, BodiceSource } from './bodice-steps.ts'
import type { Paper } from './paper.ts'
import type { ShoulderPoints } from './shoulder-steps.ts'

/** Less than this is square, radians. */
const SQUARE = 1e-6

/** The armscye from the underarm point to the shoulder point. */
export function armscyeStep(
  paper: Paper,
  from: BodiceSource,
  points: BodicePoints & ShoulderPoints & { readonly side: string },
): void {
  const { part, drawn } = from
  const { armscye, frame, hollow } = drawn
  const joints = armscye.slice(0, -1).map((c) => c.p3)
  paper.step('Armscye', (step) => {
    const { say } = step
    const knots = joints.map((at, k) =>
      k === 0
        ? step.place(
            points.foot,
            at,
            'hollow',
            `${say.given(hollow)} from ${points.foot} on the line that halves the corner.`,
          )
        : step.place(
            points.foot,
            at,
            `point on the ${part} width line`,
            'At half the height from underarm to shoulder point.',
          ),
    )
    const arriving = tangentAt(armscye[armscye.length - 1] as Cubic, 1)
    const turned = Math.abs(turnBetween(heading(Math.PI / 2 - frame.shoulder.tipSlope), arriving))
    step.curve(
      [points.underarm, ...knots, points.tip],
      armscye,
      { square: [points.underarm, points.side] },
      turned < SQUARE ? { square: [points.inner, points.tip] } : { toward: arriving },
      { id: 'armscye', seam: 'armscye' },
    )
    step.note(
      `One smooth line; it measures ${say.ruled(pathLength(armscye))}.`,
      turned < SQUARE
        ? 'Square to side seam and shoulder, so that it runs on without a corner when they are sewn.'
        : 'Square to the side seam. At the shoulder point back and front turn as much against each other, so that it does not hook there.',
    )
  })
}
