import { capital } from '../base/capital.ts'
import type { LengthUnit } from '../base/units.ts'
import type { DrawnHalf } from '../drafting/draw-half.ts'
import type { Path } from '../geometry/path.ts'
import { pathLength } from '../geometry/path-length.ts'
import { distance } from '../geometry/point.ts'
import { openSpeaker, rulerStep, type Speaker } from './said.ts'
import type { Step, StepLine } from './step.ts'

/** What is walked and measured at the end, by hand. */
export function checkSteps({ bodice, sleeve }: DrawnHalf, units: LengthUnit): readonly Step[] {
  const sum = (parts: readonly Path[]) => parts.reduce((total, part) => total + pathLength(part), 0)
  const { cap, arm, frontArmscye, backArmscye } = sleeve
  const [frontCap, backCap] = [pathLength(cap.front), pathLength(cap.back)]
  const steps: Step[] = []
  const check = (title: string, write: (say: Speaker) => readonly StepLine[]) => {
    const say = openSpeaker(units)
    const lines = write(say)
    steps.push({
      number: steps.length + 1,
      title,
      lines,
      numbers: say.said,
      points: [],
      uses: [],
      drawn: [],
      guides: [],
      notches: [],
    })
  }
  check('Walk the cap against the armscye', (say) => {
    const half = (side: string, length: number, armscye: number): StepLine => ({
      text: `${capital(side)}: cap ${say.ruled(length)}, armscye ${say.ruled(armscye)}, ease ${say.ruled(length - armscye)}.`,
    })
    const [whole, all] = [frontCap + backCap, frontArmscye + backArmscye]
    return [
      half('front', frontCap, frontArmscye),
      half('back', backCap, backArmscye),
      {
        text: `Together the cap is ${say.ruled(whole - all)} longer than the armscye, ${say.percent((whole - all) / all)} of it. Up to the notches both run together without ease.`,
        why: 'Walk with a tape on edge, or turn one paper along the other pin by pin. Each number is rounded by itself.',
      },
    ]
  })
  check('Seams that are sewn together', (say) => {
    const back = bodice.back
    const front = bodice.front
    const [shoulderBack, shoulderFront] = [sum(back.shoulder), sum(front.shoulder)]
    const [sideBack, sideFront] = [sum(back.side.parts), sum(front.side.parts)]
    const more = (difference: number, which: string) =>
      Math.abs(difference) < rulerStep(units) / 2 ? 'equal' : `${which} ${say.ruled(Math.abs(difference))} eased in`
    return [
      {
        text: `Underarm seams of the sleeve: front ${say.ruled(pathLength(arm.frontSeam))}, back ${say.ruled(sum(arm.backSeam))}${arm.darts.length > 0 ? ' with the darts folded' : ''}: equal.`,
      },
      {
        text: `Side seams: back ${say.ruled(sideBack)}, front ${say.ruled(sideFront)}${front.side.dart ? ' with the bust dart folded' : ''}: ${more(sideFront - sideBack, sideFront > sideBack ? 'the front is' : 'the back is')}.`,
      },
      {
        text: `Shoulders: back ${say.ruled(shoulderBack)}, front ${say.ruled(shoulderFront)}: ${more(shoulderBack - shoulderFront, 'the back is')}.`,
      },
    ]
  })
  check('Darts and girths', (say) => {
    const intake = arm.darts.reduce((total, { mouth }) => total + distance(mouth[0], mouth[1]), 0)
    return [
      ...(arm.darts.length > 0
        ? [
            {
              text: `Elbow ${arm.darts.length === 1 ? 'dart' : 'darts'}: intake ${say.ruled(intake)} in all. Fold each dart down: the seam runs on smoothly over it.`,
            },
          ]
        : []),
      {
        text: `Waist of this half, darts folded: back ${say.ruled(bodice.back.waist.length)}, front ${say.ruled(bodice.front.waist.length)}.`,
      },
      {
        text: `Neckline of this half: back ${say.ruled(pathLength(bodice.back.neckline))}, front ${say.ruled(pathLength(bodice.front.neckline))}.`,
      },
      {
        text: 'Lay the pieces together at the shoulder and at the side: neckline, armscye and waist run on without a corner.',
      },
    ]
  })
  return steps
}
