import type { Finding } from '../base/problem.ts'
import { dartJunctions, type EdgeEnd, type Junction } from '../pattern/junctions.ts'
import type { Check } from './check.ts'
import { sayAngle } from './words.ts'

/** The largest corner that a pressed dart hides: 5°. */
const SMOOTH = (5 * Math.PI) / 180

/** With a dart folded and stitched, its seam runs on across it without a corner. */
export const dartMouths: Check = {
  name: 'dart-mouths',
  looksAt: 'seams run on without a corner across closed darts',
  mild: true,
  // A mouth that is no gap of its seam is dart-legs' to report.
  run: ({ pattern }) => dartJunctions(pattern).flatMap(folded),
}

function folded({ across, edges, corner }: Junction): Finding[] {
  if (Math.abs(corner) <= SMOOTH) return []
  const { piece, seam } = edges[0] as EdgeEnd
  return [
    {
      code: 'corner-across-dart',
      severity: 'warning',
      where: { piece: piece.id, seam: seam.id },
      actual: `${seam.id} ${corner > 0 ? 'dips' : 'peaks'} by ${sayAngle(Math.abs(corner))} across the closed ${across}`,
      expected: `a smooth seam, within ${sayAngle(SMOOTH)}`,
      hint: 'fold the dart closed and true its mouth',
    },
  ]
}
