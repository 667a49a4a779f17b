import { measureOf } from '../body/body.ts'
import { NECK, SHOULDER } from '../drafting/defaults.ts'
import type { Path } from '../geometry/path.ts'
import { pathLength, tangentAt } from '../geometry/path-length.ts'
import { distance, point } from '../geometry/point.ts'
import type { Dart } from '../pattern/piece.ts'
import type { BodicePoints, BodiceSource } from './bodice-steps.ts'
import { measureWords, withEase } from './measure-words.ts'
import type { Paper } from './paper.ts'

/** The side neck point and the neckline. Returns the name of the point. */
export function neckStep(paper: Paper, from: BodiceSource, points: BodicePoints): string {
  const { part, bodice, drawn } = from
  const { neck } = drawn.frame
  const { width } = bodice.frame.neckline
  let name = ''
  paper.step('Neckline', (step) => {
    const { say } = step
    const girth = withEase(from, 'neck base girth', 'neckline', say)
    const shape =
      part === 'back'
        ? `Back neck width ${say.given(width)}, rise ${say.percent(NECK.backRise)} of it (common practice), so that the whole neckline measures ${girth}.`
        : `${say.percent(NECK.frontWidth)} of the back neck width of ${say.given(width)} across, ${say.percent(NECK.frontDepth)} of it above ${points.neckEnd} (common practice), so that the whole neckline measures ${girth}.`
    name = step.place(points.neckEnd, neck, 'side neck point', `${shape}${balanceWords(from, say.given)}`)
    const path = drawn.neckline
    step.curve(
      [name, points.neckEnd],
      path,
      { toward: tangentAt(path[0] as Path[number], 0) },
      { toward: point(-1, 0) },
      { id: 'neckline', seam: 'neckline' },
    )
    step.note(`It measures ${say.ruled(pathLength(path))}, and runs square into the center.`)
  })
  return name
}

function balanceWords({ part, bodice }: BodiceSource, given: (mm: number) => string): string {
  const { balance } = bodice.frame.bust
  if (part === 'back' || Math.abs(balance) < 0.5) return ''
  return ` The front side neck point stands ${given(Math.abs(balance))} ${balance > 0 ? 'higher' : 'lower'} above the waist than the back one.`
}

export interface ShoulderPoints {
  readonly tip: string
  /** The point from which the shoulder runs straight to its tip. */
  readonly inner: string
}

/** The shoulder seam, with its dart where there is one. */
export function shoulderStep(paper: Paper, from: BodiceSource, neck: string): ShoulderPoints {
  const { part, drawn, half, choices } = from
  const { shoulder, slope } = drawn.frame
  let tip = ''
  let inner = neck
  paper.step('Shoulder', (step) => {
    const { say } = step
    const of = { id: 'shoulder', seam: 'shoulder' }
    const dart = shoulder.dart
    const eased =
      part === 'back' && !choices.shoulderDart ? ` + ${say.given(SHOULDER.backEase)}, eased in when it is sewn` : ''
    const why = `The ${measureWords(from, 'shoulder length', say)}${eased}. It falls by ${say.angle(slope)}: ${measureWords(from, 'shoulder slope', say)}, ${part === 'back' ? 'less in the back' : 'more in the front'}, because the seam lies forward of the ridge.`
    if (dart) inner = drawShoulderDart(dart)
    tip = step.place(neck, shoulder.tip, 'shoulder point', dart ? `${why} The dart opens it.` : why)
    step.straight(tip, inner, of)
    const length = measureOf(half, 'shoulder length') + (eased ? SHOULDER.backEase : 0)
    step.note(
      dart
        ? `Rule ${inner}–${tip}, the shoulder; with the dart folded it measures ${say.ruled(length)}.`
        : `Rule ${neck}–${tip}, the shoulder; it measures ${say.ruled(length)}.`,
    )

    function drawShoulderDart({ id, mouth, point: at }: Dart): string {
      const [outer, near] = mouth
      const first = step.place(neck, near, 'shoulder dart, leg next to the neck')
      const second = step.place(
        neck,
        outer,
        'shoulder dart, leg next to the armscye',
        `Intake ${say.given(distance(near, outer))}.`,
      )
      const end = step.place(neck, at, 'point of the shoulder dart')
      step.note(
        `Rule ${neck}–${first}, and the legs ${first}–${end} and ${second}–${end}; each measures ${say.ruled(distance(near, at))}.`,
      )
      step.straight(first, neck, of)
      step.straight(first, end, { id: `${id} leg to the neck`, dart: id })
      step.straight(end, second, { id: `${id} leg to the armscye`, dart: id })
      return second
    }
  })
  return { tip, inner }
}
