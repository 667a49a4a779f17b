import type { Cubic } from '../geometry/cubic.ts'
import { lastCubic, type Path } from '../geometry/path.ts'
import { pathLength, tangentAt } from '../geometry/path-length.ts'
import type { Point } from '../geometry/point.ts'
import { bentSeam } from './bent-seam.ts'
import type { Paper } from './paper.ts'
import type { SleevePoints, SleeveSource } from './sleeve-steps.ts'

/** The points of an elbow dart. */
export interface DartPoints {
  readonly upper: string
  readonly lower: string
  readonly end: string
}

const SEAM = 'back underarm seam'

/** The back underarm seam, in parts between darts. Returns the point from which it runs straight to the wrist. */
export function backSeam(
  paper: Paper,
  from: SleeveSource,
  points: SleevePoints,
  darts: readonly DartPoints[],
  wrist: string,
): string {
  const parts = from.sleeve.arm.backSeam
  const length = parts.reduce((sum, part) => sum + pathLength(part), 0)
  const [first] = parts as [Path]
  const final = parts[parts.length - 1] as Path
  const [into] = darts
  const out = darts[darts.length - 1]
  const of = (part: string) => ({ id: `${SEAM}, ${part}`, seam: SEAM })
  let start = ''
  let end = ''
  if (!into || !out) {
    paper.step('Back underarm seam', (step) => {
      const elbow = step.place(points.elbow, (first[1] as Cubic).p3, 'back elbow point')
      end = bentSeam(step, first, { underarm: points.back, elbow, wrist }, SEAM)
      step.note(`The seam measures ${step.say.ruled(length)}, as much as the front one.`)
    })
    return end
  }
  paper.step('Back underarm seam at the darts', (step) => {
    start = step.place(points.elbow, (first[0] as Cubic).p3, 'where the seam begins to bend')
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
    end = step.place(points.elbow, lastCubic(final).p0, 'where the seam is straight again')
    step.curve([out.lower, end], final.slice(0, -1), way(final, 0), { along: [end, wrist] }, of('below the darts'))
    step.note('Fold the darts down: the seam runs on over them without a corner.')
  })
  paper.step('Back underarm seam', (step) => {
    step.straight(points.back, start, of('above'))
    step.straight(end, wrist, of('below'))
    step.note(
      `Rule ${points.back}–${start} and ${end}–${wrist}. With the darts folded the seam measures ${step.say.ruled(length)}, as much as the front one.`,
    )
  })
  return end
}

/** The direction at the start (0) or at the end (1) of a path. */
function way(path: Path, end: 0 | 1): { readonly toward: Point } {
  const at = end === 0 ? (path[0] as Cubic) : lastCubic(path)
  return { toward: tangentAt(at, end) }
}
