import type { Finding } from '../base/problem.ts'
import { area } from '../geometry/area.ts'
import { crossings, selfCrossings } from '../geometry/crossings.ts'
import { cutLine } from '../pattern/cut-line.ts'
import type { Piece } from '../pattern/piece.ts'
import { bridgedOutline } from './bridged-outline.ts'
import type { Check } from './check.ts'
import { ofPieces } from './of-pieces.ts'
import { outlineGaps } from './outline.ts'

/** The cutting line encloses the stitching line and crosses neither it nor itself. */
export const cutLineClear: Check = {
  name: 'cut-line',
  looksAt: 'cutting lines outside the stitching lines, crossing neither them nor themselves',
  run: ofPieces(clear),
}

function clear(piece: Piece): Finding[] {
  // An open outline has no cutting line; `outline` has reported it.
  if (outlineGaps(piece).length > 0) return []
  const outline = bridgedOutline(piece)
  const cut = cutLine(piece)
  const itself = selfCrossings(cut).crossings.some((c) => c.kind === 'cross')
  const stitching = crossings(cut, outline).crossings.some((c) => c.kind === 'cross')
  if (!itself && !stitching && area(cut) > area(outline)) return []
  return [
    {
      code: 'cut-line-crosses',
      severity: 'error',
      where: { piece: piece.id },
      actual: itself
        ? 'the cutting line crosses itself'
        : stitching
          ? 'the cutting line crosses the stitching line'
          : 'the cutting line does not enclose the stitching line',
      expected: 'a cutting line outside the stitching line all round',
      hint: 'cut with a smaller allowance here, or make the correction smaller',
    },
  ]
}
