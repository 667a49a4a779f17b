import { curvatureChanges } from '../geometry/inflections.ts'
import type { CapHalf, CapLine } from './cap-line.ts'

/** Curvature that bulges by less than this counts as none, mm; joints that turn by less than this, radians, as smooth. */
const FAIR = { straight: 0.02, corner: Math.PI / 720 } as const

/** The half of a cap that changes between hollow and round more than once, where it did not before; undefined: none. */
export function bentBack(before: CapLine, after: CapLine): CapHalf | undefined {
  return after.halves.find((half, i) => changesOf(half) > 1 && changesOf(before.halves[i] as CapHalf) <= 1)
}

function changesOf(half: CapHalf): number {
  return curvatureChanges(half.seam.parts.flat(), FAIR)
}
