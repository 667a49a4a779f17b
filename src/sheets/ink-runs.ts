import type { Box } from '../geometry/bounds.ts'
import type { Segment } from './ink.ts'

/** So many pieces of ink that follow each other are looked at as one first: they lie near each other. */
const RUN = 16

/** Pieces of ink that follow each other. */
export interface InkRun {
  readonly segments: readonly Segment[]
  /** The upright box round them, pens included. */
  readonly box: Box
  /** Half the weight of the widest pen, mm. */
  readonly half: number
}

/** The ink in runs, in its order: what is true of the box round a run need not be asked of every piece. */
export function inkRuns(ink: readonly Segment[]): InkRun[] {
  const runs: InkRun[] = []
  for (let k = 0; k < ink.length; k += RUN) runs.push(runOf(ink.slice(k, k + RUN)))
  return runs
}

function runOf(segments: readonly Segment[]): InkRun {
  let left = Number.POSITIVE_INFINITY
  let right = Number.NEGATIVE_INFINITY
  let bottom = Number.POSITIVE_INFINITY
  let top = Number.NEGATIVE_INFINITY
  let widest = 0
  for (const { a, b, half } of segments) {
    left = Math.min(left, a.x - half, b.x - half)
    right = Math.max(right, a.x + half, b.x + half)
    bottom = Math.min(bottom, a.y - half, b.y - half)
    top = Math.max(top, a.y + half, b.y + half)
    widest = Math.max(widest, half)
  }
  return { segments, box: { left, bottom, right, top }, half: widest }
}
