import { easeFor } from '../drafting/ease.ts'
import type { Cubic } from '../geometry/cubic.ts'
import { endOf, type Path, reversePath, startOf } from '../geometry/path.ts'
import { pathLength } from '../geometry/path-length.ts'
import { distance } from '../geometry/point.ts'
import { backSeam, type DartPoints } from './back-seam.ts'
import { bentSeam } from './bent-seam.ts'
import { measureWords, plusEase } from './measure-words.ts'
import type { Paper } from './paper.ts'
import type { SleevePoints, SleeveSource } from './sleeve-steps.ts'

export interface ForearmPoints {
  readonly frontElbow: string
}

interface WristPoints {
  readonly front: string
  readonly middle: string
  readonly back: string
}

/** Elbow darts, both underarm seams and the wrist. */
export function forearmSteps(paper: Paper, from: SleeveSource, points: SleevePoints): ForearmPoints {
  const { arm } = from.sleeve
  const down = reversePath(arm.frontSeam)
  let frontElbow = ''
  paper.step('Elbow', (step) => {
    const { say } = step
    const girth = `${measureWords(from, 'elbow girth', say)}${plusEase(easeFor(from.choices, 'elbow'), 'elbow', say)}`
    const [line] = arm.elbowLine as [Cubic]
    frontElbow = step.place(
      points.elbow,
      line.p0,
      'front elbow point',
      `The width at the elbow, ${girth}, halved about the middle of the biceps line.`,
    )
    const back = step.place(
      points.elbow,
      line.p3,
      'back end of the elbow line',
      arm.darts.length > 0
        ? `The same width; the forearm turns forward about ${frontElbow}, and the back seam opens there by the intake of the darts.`
        : 'The same width.',
    )
    step.straight(frontElbow, back, { id: 'elbow line' })
    step.note(`Rule ${frontElbow}–${back}, the elbow line.`)
  })
  const darts = elbowDarts(paper, from, points)
  const wrist = wristPoints(paper, from, points)
  const bend = frontSeam(paper, down, points, frontElbow, wrist.front)
  const last = backSeam(paper, from, points, darts, wrist.back)
  paper.step('Wrist', (step) => {
    const { say } = step
    step.curve(
      [wrist.back, wrist.middle, wrist.front],
      arm.wrist,
      { square: [last, wrist.back] },
      { square: [bend, wrist.front] },
      { id: 'wrist', seam: 'wrist' },
    )
    step.note(`It measures ${say.ruled(pathLength(arm.wrist))} and meets both seams squarely.`)
  })
  return { frontElbow }
}

function elbowDarts(paper: Paper, from: SleeveSource, points: SleevePoints): DartPoints[] {
  const { darts } = from.sleeve.arm
  if (darts.length === 0) return []
  const found: DartPoints[] = []
  paper.step(darts.length === 1 ? 'Elbow dart' : 'Two elbow darts', (step) => {
    const { say } = step
    const intake = darts.reduce((sum, { mouth }) => sum + distance(mouth[0], mouth[1]), 0)
    darts.forEach(({ id, mouth, point }, k) => {
      const which = darts.length === 1 ? '' : k === 0 ? 'upper dart, ' : 'lower dart, '
      const why =
        k > 0
          ? undefined
          : darts.length === 1
            ? `Intake ${say.given(intake)}: by so much the back seam is longer than the front one. The elbow line halves it.`
            : `Intake ${say.given(intake)} in all, half of it in each: by so much the back seam is longer than the front one. The darts lie above and below the elbow line.`
      const upper = step.place(points.elbow, mouth[0], `${which}upper leg`, why)
      const lower = step.place(points.elbow, mouth[1], `${which}lower leg`)
      const end = step.place(
        points.elbow,
        point,
        `${which}point`,
        k === 0 ? 'Aimed at the middle of the elbow line.' : undefined,
      )
      step.note(
        `Rule the legs ${upper}–${end} and ${lower}–${end}; each measures ${say.ruled(distance(mouth[0], point))}.`,
      )
      step.straight(upper, end, { id: `${id} upper leg`, dart: id })
      step.straight(end, lower, { id: `${id} lower leg`, dart: id })
      found.push({ upper, lower, end })
    })
  })
  return found
}

function wristPoints(paper: Paper, from: SleeveSource, points: SleevePoints): WristPoints {
  const { arm } = from.sleeve
  let found: WristPoints = { front: '', middle: '', back: '' }
  paper.step('Wrist points', (step) => {
    const { say } = step
    const girth = `${measureWords(from, 'wrist girth', say)}${plusEase(easeFor(from.choices, 'wrist'), 'wrist', say)}`
    const turned = arm.darts.length > 0 ? ' The elbow darts have brought it forward.' : ''
    const front = step.place(
      points.wrist,
      endOf(arm.wrist),
      'wrist at the front seam',
      `The width, measured along the curve of a later step, is ${girth}.${turned}`,
    )
    const middle = step.place(points.wrist, endOf(arm.forearmLine), 'middle of the wrist')
    const back = step.place(points.wrist, startOf(arm.wrist), 'wrist at the back seam')
    found = { front, middle, back }
  })
  return found
}

/** The front underarm seam. Returns the point from which it runs straight to the wrist. */
function frontSeam(paper: Paper, path: Path, points: SleevePoints, elbow: string, wrist: string): string {
  let straightFrom = elbow
  paper.step('Front underarm seam', (step) => {
    straightFrom = bentSeam(step, path, { underarm: points.front, elbow, wrist }, 'front underarm seam')
    step.note(`The seam measures ${step.say.ruled(pathLength(path))}.`)
  })
  return straightFrom
}
