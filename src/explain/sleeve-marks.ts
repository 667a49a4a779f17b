import { CAP, NOTCH } from '../drafting/defaults.ts'
import { backNotchAt, frontNotchAt } from '../drafting/notches.ts'
import { levelCrossings } from '../geometry/level-crossings.ts'
import { reversePath, startOf } from '../geometry/path.ts'
import { pointAlong } from '../geometry/path-length.ts'
import { type Point, point } from '../geometry/point.ts'
import type { ForearmPoints } from './forearm-steps.ts'
import type { Paper } from './paper.ts'
import type { SleevePoints, SleeveSource } from './sleeve-steps.ts'

/** Notches by walking, and the lines that a fitting refers to. */
export function sleeveMarks(paper: Paper, from: SleeveSource, points: SleevePoints & ForearmPoints): void {
  const { cap, arm, frontArmscye, backArmscye } = from.sleeve
  paper.step('Notches and lines', (step) => {
    const { say } = step
    const front = frontNotchAt(frontArmscye)
    const back = backNotchAt(backArmscye)
    const backCap = reversePath(cap.back)
    step.notch(
      { id: 'front notch', seam: 'front cap', from: points.front, along: step.ruled(front), marks: 1 },
      [pointAlong(cap.front, front)],
      `Front notch: ${say.ruled(front)} along the cap from ${points.front}.`,
    )
    step.notch(
      {
        id: 'back notch',
        seam: 'back cap',
        from: points.back,
        along: step.ruled(back),
        marks: 2,
        step: step.ruled(NOTCH.pairStep),
      },
      [pointAlong(backCap, back), pointAlong(backCap, back + NOTCH.pairStep)],
      `Back notches: ${say.ruled(back)} along the cap from ${points.back}, and ${say.ruled(NOTCH.pairStep)} farther.`,
    )
    step.note(
      'They lie as far from the underarm as the notches of the armscye: no ease lies below them, all of it lies between them over the shoulder.',
    )
    step.notch(
      { id: 'shoulder notch', seam: 'front cap', from: points.crown, along: 0, marks: 1 },
      [point(0, cap.height)],
      `Shoulder notch at ${points.crown}; elbow notch in the front seam at ${points.frontElbow}.`,
    )
    step.notch(
      { id: 'elbow notch', seam: 'front underarm seam', from: points.frontElbow, along: 0, marks: 1 },
      [startOf(arm.elbowLine)],
      `Cap line: level through the point on the grain ${say.ruled(CAP.capLine * cap.height)} above ${points.center}, from curve to curve, two thirds of the cap height.`,
    )
    const level = levelCrossings([...cap.front, ...cap.back], CAP.capLine * cap.height)
    if (level.length > 1) step.guide(level[0] as Point, level[level.length - 1] as Point)
    step.note(
      'Write the names of the lines on them: grain, biceps line, cap line, elbow line. Add the seam allowances outside all lines, then cut.',
    )
  })
}
