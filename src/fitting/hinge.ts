import type { Result } from '../base/result.ts'
import { success } from '../base/result.ts'
import { turn } from '../geometry/transform.ts'
import type { Pattern } from '../pattern/pattern.ts'
import { pieceOf, pointOnSeam, seamOf } from '../pattern/seam.ts'
import { moveRegions } from './move-regions.ts'
import { type OperationResult, unchanged } from './operation.ts'
import type { SeamPoint } from './outline-places.ts'
import { BLEND } from './spread.ts'

/** A cut that opens or closes like a door. */
export interface HingeOptions {
  /** Id of the piece. */
  readonly piece: string
  /** Where the cut begins. */
  readonly edge: SeamPoint
  /** Where it ends: the point of the far edge that it hangs by. */
  readonly hinge: SeamPoint
  /** Radians: opens a wedge with its point at the hinge; negative folds one away. */
  readonly angle: number
  /** Which side turns: what follows the edge anticlockwise on the outline up to the hinge, or what comes before it. */
  readonly moves: 'after' | 'before'
  /** Over how many mm on each side the edge is drawn again across the wedge; 0 bridges it straight. Default 40. */
  readonly blend?: number
}

/**
 * Cuts a piece from an edge to a point of the far edge and turns one side about that point by an angle. The edge is
 * longer by the wedge, or shorter; the far edge keeps its length exactly and has a corner of the angle at the hinge.
 * Darts keep equal legs. Zero returns the same pattern. Problems: as `spread`. Throws as `spread`.
 */
export function hinge(pattern: Pattern, options: HingeOptions): Result<OperationResult> {
  if (options.angle === 0) return success(unchanged(pattern))
  const piece = pieceOf(pattern, options.piece)
  const center = pointOnSeam(seamOf(piece, options.hinge.seam), options.hinge.along)
  const blend = options.blend ?? BLEND
  if (options.angle < 0 && blend === 0) throw new RangeError('a wedge that is folded away needs a blend')
  const after = options.moves === 'after'
  // Seen from the hinge the outline runs anticlockwise: what comes after the edge opens that way.
  const angle = after ? options.angle : -options.angle
  const end = { blend }
  return moveRegions(pattern, {
    piece: piece.id,
    regions: [
      {
        from: after ? options.edge : options.hinge,
        to: after ? options.hinge : options.edge,
        inside: [],
        move: (share) => turn(center, angle * share),
        fromEnd: end,
        toEnd: end,
      },
    ],
  })
}
