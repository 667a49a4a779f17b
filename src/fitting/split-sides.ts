import type { BodySide } from '../base/side.ts'
import { SAME_POINT } from '../geometry/defaults.ts'
import type { Point } from '../geometry/point.ts'
import type { Pattern } from '../pattern/pattern.ts'
import type { Piece } from '../pattern/piece.ts'
import { pieceOf } from '../pattern/seam.ts'
import { drawnSide } from '../pattern/side-names.ts'
import { type SidePlace, sidePlace, splitPattern } from '../pattern/split-pattern.ts'
import { type OperationResult, unchanged } from './operation.ts'
import type { Moved, PositionMap } from './position-map.ts'

/**
 * `splitPattern` as an operation: every old place on the piece becomes two, one on each side of the body. A piece
 * that is left, right or whole already stays as it is. Throws when there is no such piece.
 */
export function splitSides(pattern: Pattern, id: string): OperationResult {
  const split = splitPattern(pattern, id)
  if (split === pattern) return unchanged(pattern)
  const piece = pieceOf(pattern, id)
  const drawn = drawnSide(piece)
  return { pattern: split, map: splitMap(piece, (side) => sidePlace(piece, drawn, side)), effects: [] }
}

function splitMap(piece: Piece, place: (side: BodySide) => SidePlace): PositionMap {
  const sides = ['left', 'right'] as const
  const folds = new Set(
    piece.side === 'fold' ? piece.seams.filter((seam) => seam.allowance === 0).map((s) => s.id) : [],
  )
  return {
    seam: (position) => {
      if (position.piece !== piece.id) return [position]
      if (folds.has(position.seam)) return [{ gone: `the ${position.seam} is no edge any more: the piece was opened` }]
      return sides.map((side) => {
        const p = place(side)
        return { piece: p.piece, seam: p.seam(position.seam), along: p.along(position.seam, position.along) }
      })
    },
    point: (position) => {
      if (position.piece !== piece.id) return [position]
      const moved = sides.map((side): Moved<{ piece: string; at: Point }> => {
        const p = place(side)
        return { piece: p.piece, at: p.mirrored ? { x: 0 - position.at.x, y: position.at.y } : position.at }
      })
      // A point on the fold stays one point.
      return piece.side === 'fold' && Math.abs(position.at.x) <= SAME_POINT ? moved.slice(0, 1) : moved
    },
  }
}
