import type { Cubic } from '../geometry/cubic.ts'
import type { Path } from '../geometry/path.ts'
import type { StepWriter } from './paper.ts'

/** Straight, bent round the elbow, straight. Returns the point from which it runs straight to the wrist. */
export function bentSeam(
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
