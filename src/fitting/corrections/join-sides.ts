import * as z from 'zod'
import type { Problem } from '../../base/problem.ts'
import { failure, success } from '../../base/result.ts'
import { defineCorrection } from '../correction.ts'
import { joinSides as join } from '../join-sides.ts'

/** What can be apart left and right, by the names before. */
const PIECES = ['sleeve', 'bodice front', 'bodice back'] as const

/**
 * Cuts left and right as one again, a mirrored pair or on the fold, where one-sided corrections had taken them apart
 * and the other side has caught up since. It moves no line: sides that are not alike are refused.
 */
export const joinSides = defineCorrection({
  name: 'join sides',
  does: 'cuts left and right of a piece as a pair, or on the fold, again where they are the same',
  answers: ['left and right have become the same again'],
  settings: (read) => z.strictObject({ piece: read.name('piece', PIECES) }),
  defaults: [],
  compile: ({ side }, { piece }) =>
    side === 'both' ? success([(pattern) => join(pattern, piece)]) : failure(bothSides(piece)),
  word: ({ piece }) => ({
    what: `cut left and right of the ${piece} as one again`,
    where: 'the whole piece; no line moves',
  }),
})

function bothSides(piece: string): Problem {
  return {
    code: 'needs-both-sides',
    where: { piece, field: 'side' },
    actual: 'one side only',
    expected: 'side: both, or no side',
    hint: 'leave side: out; joining is for both sides at once',
  }
}
