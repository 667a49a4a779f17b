import type { EdgeEnd } from '../pattern/junctions.ts'
import { baseName } from '../pattern/side-names.ts'
import type { CornerMade } from './operation.ts'

/** The line of which a seam is the front or the back half. */
const FAMILY = /^(?:front|back) (.+)$/

/**
 * By how much corrections meant the edges of a junction to peak, radians, the least of them; told of the piece before or after its
 * sides were split.
 */
export function meantPeak(corners: readonly CornerMade[], edges: readonly EdgeEnd[]): number {
  return Math.min(...edges.map((edge) => meantOf(corners, edge)))
}

function meantOf(corners: readonly CornerMade[], { piece, seam }: EdgeEnd): number {
  return corners
    .filter((made) => made.piece === piece.id || made.piece === baseName(piece.id))
    .filter((made) => made.seam === seam.id || FAMILY.exec(baseName(seam.id))?.[1] === made.seam)
    .reduce((sum, { angle }) => sum + angle, 0)
}
