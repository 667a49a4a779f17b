import { NOTCH } from '../drafting/defaults.ts'
import { backNotchAt, frontNotchAt } from '../drafting/notches.ts'
import { pathLength, pointAlong } from '../geometry/path-length.ts'
import type { BodicePoints, BodiceSource } from './bodice-steps.ts'
import type { Paper } from './paper.ts'

/** Notches, and the lines that a fitting refers to. */
export function bodiceMarks(paper: Paper, from: BodiceSource, points: BodicePoints & { readonly side: string }): void {
  const { part, drawn, bodice } = from
  const back = part === 'back'
  const length = pathLength(drawn.armscye)
  const along = back ? backNotchAt(length) : frontNotchAt(length)
  const below = bodice.front.side.parts[0]
  const sideAlong = below ? pathLength(below) / 2 : 0
  paper.step('Notches, grain and allowances', (step) => {
    const { say } = step
    const marks = back ? 2 : 1
    const places = Array.from({ length: marks }, (_, k) => pointAlong(drawn.armscye, along + k * NOTCH.pairStep))
    step.notch(
      {
        id: `${part} notch`,
        seam: 'armscye',
        from: points.underarm,
        along: step.ruled(along),
        marks,
        ...(back ? { step: step.ruled(NOTCH.pairStep) } : {}),
      },
      places,
      back
        ? `Back notches: two across the armscye, ${say.ruled(along)} along the curve from ${points.underarm}, and ${say.ruled(NOTCH.pairStep)} farther.`
        : `Front notch: across the armscye, ${say.ruled(along)} along the curve from ${points.underarm}.`,
    )
    step.notch(
      { id: 'side notch', seam: 'side seam', from: points.side, along: step.ruled(sideAlong), marks: 1 },
      [pointAlong(drawn.side.parts.flat(), sideAlong)],
      `Side notch: ${say.ruled(sideAlong)} up the side seam from ${points.side}.`,
    )
    step.note(
      `The grain runs parallel to the center ${part}. Write the names of the lines on them: underarm line, ${part} width line, waist line.`,
    )
    step.note('Add the seam allowances outside all lines, then cut.')
  })
}
