import type { Finding } from '../base/problem.ts'
import type { Piece, Seam } from '../pattern/piece.ts'
import type { Check } from './check.ts'

/** Every seam has an allowance to be cut with; only a fold has none. */
export const allowances: Check = {
  name: 'allowances',
  looksAt: 'an allowance on every seam, none on a fold',
  run: ({ pattern }) => pattern.pieces.flatMap((piece) => piece.seams.flatMap((seam) => allowanceOf(piece, seam))),
}

function allowanceOf(piece: Piece, seam: Seam): Finding[] {
  const fold = piece.side === 'fold' && /^center (front|back)$/.test(seam.id)
  if (fold ? seam.allowance === 0 : seam.allowance > 0 && Number.isFinite(seam.allowance)) return []
  return [
    {
      code: fold ? 'allowance-on-fold' : 'allowance-missing',
      severity: 'error',
      where: { piece: piece.id, seam: seam.id },
      actual: `an allowance of ${seam.allowance} mm on the ${seam.id}`,
      expected: fold ? 'no allowance: the cloth is folded there' : 'an allowance of more than nothing',
      hint: fold ? 'lay the piece on the fold without allowance' : 'state an allowance for this seam under mock-up',
    },
  ]
}
