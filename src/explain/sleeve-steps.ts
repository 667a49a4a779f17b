import { measureOf } from '../body/body.ts'
import { CAP } from '../drafting/defaults.ts'
import type { Sleeve } from '../drafting/sleeve.ts'
import type { Cubic } from '../geometry/cubic.ts'
import { endOf, type Path, reversePath } from '../geometry/path.ts'
import { pathLength, tangentAt } from '../geometry/path-length.ts'
import { point } from '../geometry/point.ts'
import { forearmSteps } from './forearm-steps.ts'
import { measureWords, plusEase, type Source } from './measure-words.ts'
import { openPaper, type Paper, type PaperOptions } from './paper.ts'
import { sleeveMarks } from './sleeve-marks.ts'
import type { Step } from './step.ts'

export interface SleeveSource extends Source {
  readonly sleeve: Sleeve
}

export interface SleevePoints {
  /** Where the grain meets the biceps line. */
  readonly center: string
  readonly crown: string
  readonly elbow: string
  readonly wrist: string
  readonly front: string
  readonly back: string
}

/** The sleeve in steps: frame, cap, forearm, marks. */
export function sleeveSteps(sleeve: Sleeve, source: Source, options: PaperOptions): readonly Step[] {
  const from: SleeveSource = { ...source, sleeve }
  const paper = openPaper(options)
  const points = frameSteps(paper, from)
  capSide(paper, from, points, 'front')
  capSide(paper, from, points, 'back')
  const arm = forearmSteps(paper, from, points)
  sleeveMarks(paper, from, { ...points, ...arm })
  return paper.steps
}

function frameSteps(paper: Paper, from: SleeveSource): SleevePoints {
  const { sleeve, half } = from
  const { cap, upperArm } = sleeve
  const toElbow = measureOf(half, 'shoulder to elbow')
  let points: SleevePoints = { center: '', crown: '', elbow: '', wrist: '', front: '', back: '' }
  const back = paper.forward === 'right' ? 'left' : 'right'
  paper.step('Grain and levels', (step) => {
    const { say } = step
    const center = step.start(
      point(0, 0),
      'the grain on the biceps line',
      `rule an upright line down the middle of the paper, the grain, and mark the point on it a third of the way down. Front is to the ${paper.forward}, back to the ${back}.`,
    )
    const ease = pathLength(cap.front) + pathLength(cap.back) - sleeve.frontArmscye - sleeve.backArmscye
    const crown = step.place(
      center,
      point(0, cap.height),
      'crown, where the shoulder notch is',
      `The cap height at which, on this width, the cap is ${say.given(ease)} longer than the armscye (${say.percent(ease / (sleeve.frontArmscye + sleeve.backArmscye))} of it). No measure says it: it is found by trying, until both halves of the cap have their length.`,
    )
    const elbow = step.place(
      crown,
      point(0, cap.height - toElbow),
      'elbow level',
      `${measureWords(from, 'shoulder to elbow', say)}.`,
    )
    const length = measureOf(half, 'outer arm length')
    const wrist = step.place(
      crown,
      point(0, cap.height - length),
      'wrist level',
      `${measureWords(from, 'outer arm length', say)}.`,
    )
    step.straight(crown, wrist, { id: 'grain' })
    const reach = cap.width / 2
    for (const y of [0, cap.height - toElbow]) step.guide(point(-reach, y), point(reach, y))
    step.note(
      `Rule level lines through ${center}, the biceps line, and through ${elbow}, the elbow line before the darts.`,
    )
    points = { ...points, center, crown, elbow, wrist }
  })
  paper.step('Width at the biceps line', (step) => {
    const { say } = step
    const girth =
      upperArm.from === 'flexed'
        ? `${measureWords(from, 'upper arm girth flexed', say)}${plusEase(upperArm.ease, 'upper arm flexed', say)}`
        : `${measureWords(from, 'upper arm girth', say)}${plusEase(upperArm.ease, 'upper arm', say)}`
    const shifted =
      Math.abs(cap.shift) < 0.5
        ? 'halved by the grain'
        : `and ${say.given(Math.abs(cap.shift))} ${cap.shift > 0 ? 'less' : 'more'} than half of it, because the grain lies ${cap.shift > 0 ? 'before' : 'behind'} the middle, so that each half of the cap fits its half of the armscye`
    const front = step.place(
      points.center,
      point(cap.width / 2 - cap.shift, 0),
      'front underarm point',
      `The width is ${say.given(cap.width)}: ${girth}; ${shifted}.`,
    )
    const rear = step.place(
      points.center,
      point(-cap.width / 2 - cap.shift, 0),
      'back underarm point',
      'The rest of the width.',
    )
    step.straight(rear, front, { id: 'biceps line' })
    step.note(`Rule ${rear}–${front}, the biceps line.`)
    points = { ...points, front, back: rear }
  })
  return points
}

/** One half of the cap, drawn from the underarm to the crown. */
function capSide(paper: Paper, from: SleeveSource, points: SleevePoints, side: 'front' | 'back'): void {
  const { cap, frontArmscye, backArmscye } = from.sleeve
  const front = side === 'front'
  const path: Path = front ? cap.front : reversePath(cap.back)
  const underarm = front ? points.front : points.back
  paper.step(`Cap, ${side}`, (step) => {
    const { say } = step
    const copied = path.slice(0, -1)
    const end = step.place(
      points.center,
      endOf(copied),
      `end of the copied ${side} armscye`,
      `From ${underarm} the first ${say.given(CAP.copied)} of the cap are the ${side} armscye's own lower curve, so that the underarm lies flat. You may trace it: with the side seam of the bodice on the underarm seam of the next steps, the curve ends here.`,
    )
    step.curve(
      [underarm, end, points.crown],
      path,
      { toward: tangentAt(path[0] as Cubic, 0) },
      { toward: point(front ? -1 : 1, 0) },
      { id: `${side} cap`, seam: `${side} cap` },
    )
    const length = pathLength(path)
    const armscye = front ? frontArmscye : backArmscye
    step.note(
      `Hollow below, round above, in one smooth line; the ${side} cap measures ${say.ruled(length)}.`,
      `The ${side} armscye of ${say.given(armscye)} + ${say.given(length - armscye)} ease, ${say.percent(front ? 1 - CAP.backShare : CAP.backShare)} of the whole.`,
    )
  })
}
