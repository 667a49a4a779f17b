import { BUST_DART } from '../drafting/defaults.ts'
import { type Path, startOf } from '../geometry/path.ts'
import { pathLength } from '../geometry/path-length.ts'
import { distance } from '../geometry/point.ts'
import type { BodicePoints, BodiceSource } from './bodice-steps.ts'
import { measureWords } from './measure-words.ts'
import type { Paper } from './paper.ts'

/** The bust point, on a front; where its dart ends, if there is one. */
export interface BustPoints {
  readonly bust?: string
  readonly dart?: string
}

/** Marks the bust point of a front. */
export function bustDartPoint(paper: Paper, from: BodiceSource, points: BodicePoints): BustPoints {
  if (from.part === 'back') return {}
  const { bust } = from.bodice.frame
  const { dart } = from.drawn.side
  let found: BustPoints = {}
  paper.step('Bust point', (step) => {
    const { say } = step
    const height =
      bust.from === 'measured'
        ? `${measureWords(from, 'front waist length', say)} less ${measureWords(from, 'neck to bust point', say)}, above the waist under the bust point with its dart folded`
        : `${measureWords(from, 'neck to bust point', say)} from the side neck point`
    const name = step.place(
      points.waist,
      bust.point,
      'bust point',
      `Half of ${measureWords(from, 'bust point width', say)}; ${height}.`,
    )
    found = dart
      ? {
          bust: name,
          dart: step.place(
            name,
            dart.point,
            'point of the bust dart',
            `${say.given(BUST_DART.shortOf)} short of the bust point.`,
          ),
        }
      : { bust: name }
  })
  return found
}

export interface SidePoints {
  readonly waist: string
  /** The point from which the side seam runs straight to the waist, and to the underarm. */
  readonly lower: string
  readonly upper: string
}

/** The side seam, with the bust dart where there is one. */
export function sideSeamStep(paper: Paper, from: BodiceSource, points: BodicePoints, bust: BustPoints): SidePoints {
  const { side, frame } = from.drawn
  const [first] = side.parts as [Path]
  const waist = startOf(first)
  let names: SidePoints = { waist: '', lower: '', upper: '' }
  const { dart } = side
  paper.step(dart ? 'Side seam and bust dart' : 'Side seam', (step) => {
    const { say } = step
    const of = { id: 'side seam', seam: 'side seam' }
    const length = side.parts.reduce((sum, part) => sum + pathLength(part), 0)
    const taken = frame.underarm.x - waist.x
    const at = step.place(
      points.waist,
      waist,
      'waist at the side seam',
      Math.abs(taken) < 0.5
        ? 'Straight below the underarm point.'
        : `The side seam ${taken > 0 ? 'takes in' : 'lets out'} ${say.given(Math.abs(taken))} from the underarm to the waist.`,
    )
    if (dart && bust.dart) {
      const [lower, upper] = dart.mouth
      const above = step.place(points.underarm, upper, 'upper leg of the bust dart')
      const below = step.place(
        points.underarm,
        lower,
        'lower leg of the bust dart',
        `Intake ${say.given(distance(lower, upper))}: folded, the front side seam is as long as the back one.`,
      )
      step.straight(at, below, of)
      step.straight(below, bust.dart, { id: `${dart.id} lower leg`, dart: dart.id })
      step.straight(bust.dart, above, { id: `${dart.id} upper leg`, dart: dart.id })
      step.straight(above, points.underarm, of)
      step.note(
        `Rule the legs ${above}–${bust.dart} and ${below}–${bust.dart}; each measures ${say.ruled(distance(lower, dart.point))}.`,
      )
      step.note(
        `Rule ${points.underarm}–${above} and ${below}–${at}, the side seam; it measures ${say.ruled(length)} without the dart.`,
      )
      names = { waist: at, lower: below, upper: above }
    } else {
      step.straight(at, points.underarm, of)
      step.note(`Rule ${points.underarm}–${at}, the side seam; it measures ${say.ruled(length)}.`)
      names = { waist: at, lower: points.underarm, upper: at }
    }
  })
  return names
}
