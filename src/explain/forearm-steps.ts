import { easeFor } from '../drafting/ease.ts'
import type { Cubic } from '../geometry/cubic.ts'
import { endOf, lastCubic, type Path, reversePath, startOf } from '../geometry/path.ts'
import { pathLength, tangentAt } from '../geometry/path-length.ts'
import { distance, type Point } from '../geometry/point.ts'
import { measureWords, plusEase } from './measure-words.ts'
import type { Paper, StepWriter } from './paper.ts'
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

interface DartPoints {
  readonly upper: string
  readonly lower: string
  readonly end: string
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
    straightFrom = bent(step, path, { underarm: points.front, elbow, wrist }, 'front underarm seam')
    step.note(`The seam measures ${step.say.ruled(pathLength(path))}.`)
  })
  return straightFrom
}

/** Straight, eased round the elbow, straight. */
function bent(
  step: StepWriter,
  path: Path,
  points: { readonly underarm: string; readonly elbow: string; readonly wrist: string },
  seam: string,
): string {
  const { underarm, elbow, wrist } = points
  const [above, below] = [path[0] as Cubic, path[path.length - 1] as Cubic]
  const of = (part: string) => ({ id: `${seam}, ${part}`, seam })
  const start = step.toward(elbow, underarm, above.p3, 'where the bend begins')
  const end = step.toward(elbow, wrist, below.p0, 'where the bend ends')
  step.straight(underarm, start, of('above'))
  step.curve([start, elbow, end], path.slice(1, -1), { along: [underarm, start] }, { along: [end, wrist] }, of('elbow'))
  step.straight(end, wrist, of('below'))
  step.note(`Rule ${underarm}–${start} and ${end}–${wrist}.`)
  return end
}

/** The back underarm seam, in parts between darts. Returns the point from which it runs straight to the wrist. */
function backSeam(
  paper: Paper,
  from: SleeveSource,
  points: SleevePoints,
  darts: readonly DartPoints[],
  wrist: string,
): string {
  const parts = from.sleeve.arm.backSeam
  const seam = 'back underarm seam'
  let last = ''
  paper.step('Back underarm seam', (step) => {
    const { say } = step
    const [first] = parts as [Path]
    const final = parts[parts.length - 1] as Path
    const [into] = darts
    const out = darts[darts.length - 1]
    if (!into || !out) {
      const elbow = step.place(points.elbow, (first[1] as Cubic).p3, 'back elbow point')
      last = bent(step, first, { underarm: points.back, elbow, wrist }, seam)
    } else {
      const of = (part: string) => ({ id: `${seam}, ${part}`, seam })
      const start = step.place(points.elbow, (first[0] as Cubic).p3, 'where the seam begins to curve')
      step.straight(points.back, start, of('above'))
      step.curve(
        [start, into.upper],
        first.slice(1),
        { along: [points.back, start] },
        way(first, 1),
        of('above the darts'),
      )
      parts.slice(1, -1).forEach((strip, k) => {
        const [a, b] = [darts[k], darts[k + 1]] as [DartPoints, DartPoints]
        step.curve([a.lower, b.upper], strip, way(strip, 0), way(strip, 1), of(`between the darts ${k + 1}`))
      })
      last = step.place(points.wrist, lastCubic(final).p0, 'where the seam is straight again')
      step.curve([out.lower, last], final.slice(0, -1), way(final, 0), { along: [last, wrist] }, of('below the darts'))
      step.straight(last, wrist, of('below'))
      step.note(`Rule ${points.back}–${start} and ${last}–${wrist}.`)
    }
    const length = parts.reduce((sum, part) => sum + pathLength(part), 0)
    step.note(
      `${darts.length > 0 ? 'With the darts folded the' : 'The'} seam measures ${say.ruled(length)}, as much as the front one.`,
      ...(darts.length > 0
        ? ['At the legs the seam has such directions that it runs on smoothly when the darts are folded down.']
        : []),
    )
  })
  return last
}

/** The direction at the start (0) or at the end (1) of a path. */
function way(path: Path, end: 0 | 1): { readonly toward: Point } {
  const at = end === 0 ? (path[0] as Cubic) : lastCubic(path)
  return { toward: tangentAt(at, end) }
}
