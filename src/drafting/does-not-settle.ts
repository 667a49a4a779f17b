import type { Problem } from '../base/problem.ts'

/** A length that is found in rounds and was not found: no body of the survey, a slip of the pen or a mistake of ours. */
export function doesNotSettle(piece: string, seam: string, field: string, what: string): Problem {
  return {
    code: 'draft-does-not-settle',
    where: { field, piece, seam },
    actual: `${what} could not be drawn to its length`,
    expected: 'measures of one body',
    hint: 'look at the units, and measure again what the place names',
  }
}
