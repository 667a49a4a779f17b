import type { Result } from '../base/result.ts'
import type { Pattern } from '../pattern/pattern.ts'
import { type BodiceHalf, bodiceHalves, bodicePieces } from './bodice-half.ts'
import { type OperationResult, type PatternOperation, runOperations } from './operation.ts'
import type { Half } from './position.ts'
import type { PositionMap } from './position-map.ts'
import type { CorrectionSide } from './record.ts'
import { splitsFor } from './shift-line.ts'

/** What is done to one half of the bodice as it now is; `since` leads from the mock-up as worn to now. */
export type HalfOperation = (pattern: Pattern, half: BodiceHalf, since: PositionMap) => Result<OperationResult>

/**
 * The operations that do the same to every half of the bodice on one side of the body or on both: pieces are split
 * first when it is for one side.
 */
export function eachHalf(
  worn: Pattern,
  side: CorrectionSide,
  which: readonly Half[],
  operation: HalfOperation,
): PatternOperation[] {
  return [
    ...splitsFor(side, bodicePieces(worn, side, which)),
    (pattern, since) => {
      const count = bodiceHalves(pattern, side, which).length
      return runOperations(
        pattern,
        since,
        Array.from(
          { length: count },
          (_, i): PatternOperation =>
            (now, sinceWorn) => {
              // A half is looked up again each time: the one before may have changed the same piece.
              const half = bodiceHalves(now, side, which)[i] as BodiceHalf
              return operation(now, half, sinceWorn)
            },
        ),
      )
    },
  ]
}
