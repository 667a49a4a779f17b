import type { Finding } from '../base/problem.ts'
import type { LengthUnit } from '../base/units.ts'
import type { Piece } from '../pattern/piece.ts'
import { seamLength } from '../pattern/seam.ts'
import type { Check } from './check.ts'
import { sayLength } from './words.ts'

/** Underarm seams that differ by no more sew as equal, mm; more must be declared as ease. */
const EQUAL = 0.5

/** Both underarm seams of a sleeve are equal with the elbow darts closed, or their difference is declared as ease. */
export const underarmSeams: Check = {
  name: 'underarm-seams',
  looksAt: 'front and back underarm seam of each sleeve equal, darts closed',
  run: ({ pattern, units }) => {
    const declared = (piece: Piece) =>
      pattern.joins.find((join) =>
        [...join.a, ...join.b].some((p) => p.piece === piece.id && /underarm seam/.test(p.seam)),
      )
    return pattern.pieces.flatMap((piece) => {
      const front = piece.seams.find((s) => s.id.startsWith('front underarm seam'))
      const back = piece.seams.find((s) => s.id.startsWith('back underarm seam'))
      if (!front || !back) return []
      const join = declared(piece)
      if (!join) return [unsewn(piece)]
      const difference = seamLength(back) - seamLength(front)
      // Outside the declared range the walk has said so already.
      const walked = join.ease.target !== 0 || difference < join.ease.min || difference > join.ease.max
      return Math.abs(difference) <= EQUAL || walked ? [] : [unequal(piece, difference, units)]
    })
  },
}

function unsewn(piece: Piece): Finding {
  return {
    code: 'underarm-seam-not-sewn',
    severity: 'error',
    where: { piece: piece.id },
    actual: 'no join sews the underarm seams of the sleeve',
    expected: 'one join of back and front underarm seam',
    hint: 'declare the join of the underarm seams',
  }
}

function unequal(piece: Piece, difference: number, units: LengthUnit): Finding {
  const [longer, shorter] = difference > 0 ? ['back', 'front'] : ['front', 'back']
  return {
    code: 'underarm-seams-unequal',
    severity: 'error',
    where: { piece: piece.id, seam: `${longer} underarm seam` },
    actual: `the ${longer} underarm seam is ${sayLength(Math.abs(difference), units)} longer, darts closed`,
    expected: `equal to ${EQUAL} mm`,
    hint: `shorten the ${longer} underarm seam, lengthen the ${shorter} one, or let the elbow darts take the difference`,
  }
}
