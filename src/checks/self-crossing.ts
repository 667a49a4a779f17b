import type { Finding } from '../base/problem.ts'
import { selfCrossings } from '../geometry/crossings.ts'
import { bridgedOutline } from './bridged-outline.ts'
import type { Check } from './check.ts'
import { ofPieces } from './of-pieces.ts'

/** No stitching line crosses or touches itself or another of its piece, dart mouths bridged. */
export const selfCrossing: Check = {
  name: 'self-crossing',
  looksAt: 'outlines that cross themselves',
  run: ofPieces((piece) =>
    selfCrossings(bridgedOutline(piece)).crossings.map(
      ({ at }): Finding => ({
        code: 'outline-crosses-itself',
        severity: 'error',
        where: { piece: piece.id },
        actual: `the outline crosses itself at x ${at.x.toFixed(1)}, y ${at.y.toFixed(1)} mm`,
        expected: 'an outline that does not cross itself',
        hint: 'a correction is larger than the place allows: make it smaller, or taper it over a longer stretch',
      }),
    ),
  ),
}
