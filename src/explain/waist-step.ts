import { WAIST } from '../drafting/defaults.ts'
import { distance, point } from '../geometry/point.ts'
import type { BodicePoints, BodiceSource } from './bodice-steps.ts'
import { withEase } from './measure-words.ts'
import type { DirectionPlan, Paper } from './paper.ts'
import type { SidePoints } from './side-seam-step.ts'

/** The waist with its darts. */
export function waistStep(paper: Paper, from: BodiceSource, points: BodicePoints, side: SidePoints): void {
  const { part, drawn } = from
  const { waist } = drawn
  const inside = waist.darts.length === 0
  const darts: { readonly left: string; readonly right: string; readonly end: string }[] = []
  if (!inside) {
    paper.step(waist.darts.length === 1 ? 'Waist dart' : 'Waist darts', (step) => {
      const { say } = step
      waist.darts.forEach((dart, k) => {
        const [near, far] = dart.mouth
        const place =
          part === 'front'
            ? `Under the bust point, ${say.given(WAIST.shortOf)} short of it`
            : `Halfway from the center to the back width line, ${say.given(WAIST.shortOf)} below the underarm level`
        const more = waist.darts.length === 1 ? '' : '; two darts share the intake, side by side about this place'
        const end = step.place(
          points.waist,
          dart.point,
          `point of the ${dart.id}`,
          k === 0 ? `${place}${more}.` : undefined,
        )
        const left = step.place(
          points.waist,
          near,
          `${dart.id}, leg next to the center`,
          k === 0
            ? `Intake ${say.given(distance(near, far))}, the dart's share of what the waist is smaller than the bust. The legs end below the waist level, so that the folded dart leaves a smooth waist.`
            : undefined,
        )
        const right = step.place(points.waist, far, `${dart.id}, leg next to the side`)
        step.straight(left, end, { id: `${dart.id} leg to the center`, dart: dart.id })
        step.straight(end, right, { id: `${dart.id} leg to the side`, dart: dart.id })
        step.note(
          `Rule the legs ${left}–${end} and ${right}–${end}; each measures ${say.ruled(distance(near, dart.point))}.`,
        )
        darts.push({ left, right, end })
      })
    })
  }
  paper.step('Waist', (step) => {
    const { say } = step
    let start = points.waist
    let leaving: DirectionPlan = { toward: point(1, 0) }
    waist.parts.forEach((path, k) => {
      const dart = darts[k]
      const to = dart?.left ?? side.waist
      const arriving: DirectionPlan = dart ? { square: [dart.end, dart.left] } : { square: [side.waist, side.lower] }
      step.curve([start, to], path, leaving, arriving, { id: `waist ${k + 1}`, seam: 'waist' })
      if (dart) {
        start = dart.right
        leaving = { square: [dart.end, dart.right] }
      }
    })
    step.note(
      `Without the darts the waist measures ${say.ruled(waist.length)}.`,
      `This ${part} half's share of half of ${withEase(from, 'waist girth', 'waist', say)}.`,
    )
  })
}
