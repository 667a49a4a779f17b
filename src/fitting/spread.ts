import type { Result } from '../base/result.ts'
import { success } from '../base/result.ts'
import { distance, dot, leftOf, type Point, scale, subtract, unit } from '../geometry/point.ts'
import { shift } from '../geometry/transform.ts'
import type { Pattern } from '../pattern/pattern.ts'
import { pieceOf, pointOnSeam, seamOf } from '../pattern/seam.ts'
import { moveRegions } from './move-regions.ts'
import { type OperationResult, unchanged } from './operation.ts'
import type { SeamPoint } from './outline-places.ts'

/** Over how many mm on each side of a cut a stitching line is drawn again: about 1 1/2 in, common practice. */
export const BLEND = 40

/** A cut right across a piece, and how far its sides part. */
export interface SpreadOptions {
  /** Id of the piece. */
  readonly piece: string
  /** The ends of the line. What lies anticlockwise on the outline from `from` to `to` moves; the rest stays. */
  readonly from: SeamPoint
  /** The other end of the line. */
  readonly to: SeamPoint
  /**
   * How far what lies beyond the line moves: mm square to the line, apart with a positive and over each other with a
   * negative number; or the vector itself.
   */
  readonly by: number | Point
  /** Over how many mm on each side seams are drawn again across the line; 0 bridges the gap straight. Default 40. */
  readonly blend?: number
}

/**
 * Cuts a piece along a straight line across it and moves everything beyond the line as it is. Apart, w mm of line give
 * w · d mm² of cloth (exactly with `blend` 0); over each other, as much is folded away. Darts that the line crosses
 * keep their mouths and their points, each on its own side, and get straight equal legs again. Seams that it crosses are
 * made whole (`closeCut`), all others are untouched or moved as they are. Zero returns the same pattern. Problems: a
 * crossed seam too short for what is taken out, a mark on cloth that is folded away. Throws on places off the outline,
 * and on an overlap without a blend.
 */
export function spread(pattern: Pattern, options: SpreadOptions): Result<OperationResult> {
  const piece = pieceOf(pattern, options.piece)
  const from = pointOnSeam(seamOf(piece, options.from.seam), options.from.along)
  const to = pointOnSeam(seamOf(piece, options.to.seam), options.to.along)
  // The arc that moves runs anticlockwise from `from` to `to`, so it lies right of the line that way.
  const away = scale(leftOf(unit(subtract(to, from))), -1)
  const by = typeof options.by === 'number' ? scale(away, options.by) : options.by
  if (by.x === 0 && by.y === 0) return success(unchanged(pattern))
  const blend = options.blend ?? BLEND
  const depth = dot(by, away)
  if (depth < 0 && blend === 0) throw new RangeError('an overlap needs a blend')
  const end = { blend }
  return moveRegions(pattern, {
    piece: piece.id,
    regions: [
      {
        from: options.from,
        to: options.to,
        inside: [],
        move: (share) => shift(scale(by, share)),
        fromEnd: end,
        toEnd: end,
      },
    ],
    gone: (at) => {
      const level = dot(subtract(at, from), away)
      const folded = depth < 0 && level > 1e-6 && level < -depth && distance(from, to) > 0
      return folded ? 'it was folded away where the piece was shortened' : undefined
    },
  })
}
