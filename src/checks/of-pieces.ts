import type { Piece } from '../pattern/piece.ts'
import type { Check, Found } from './check.ts'

/**
 * The `run` of a check that looks at one piece at a time. What it found is kept with the piece: a correction that is tried
 * as a mend leaves most pieces as they are, and a piece never changes.
 */
/* @__NO_SIDE_EFFECTS__ */
export function ofPieces(look: (piece: Piece) => readonly Found[]): Check['run'] {
  const known = new WeakMap<Piece, readonly Found[]>()
  return ({ pattern }) =>
    pattern.pieces.flatMap((piece) => {
      const found = known.get(piece) ?? look(piece)
      known.set(piece, found)
      return found
    })
}
