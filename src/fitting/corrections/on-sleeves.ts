import type { Problem } from '../../base/problem.ts'
import { failure, type Result } from '../../base/result.ts'
import { sleevesOf } from '../cap-line.ts'
import type { CorrectionContext } from '../correction.ts'
import { type PatternOperation, runOperations } from '../operation.ts'
import { splitsFor } from '../shift-line.ts'

/** The operations of a correction that does the same to every sleeve of its side. */
export function onSleeves(
  { worn, side }: CorrectionContext,
  operation: (piece: string) => PatternOperation,
): Result<readonly PatternOperation[]> {
  const pieces = sleevesOf(worn, side)
  if (pieces.length === 0) return failure(noSleeve())
  return {
    ok: true,
    value: [
      ...splitsFor(side, pieces),
      (pattern, since) => runOperations(pattern, since, sleevesOf(pattern, side).map(operation)),
    ],
  }
}

function noSleeve(): Problem {
  return {
    code: 'no-such-seam',
    where: {},
    actual: 'no sleeve on this pattern',
    expected: 'a sleeve',
    hint: 'record this on a pattern with a sleeve',
  }
}
