import { keptWith } from '../base/kept-with.ts'
import type { Piece } from '../pattern/piece.ts'
import type { Check, Found } from './check.ts'

/**
 * The `run` of a check that looks at one piece at a time. What it found is kept with the piece: a correction that is tried
 * as a mend leaves most pieces as they are.
 */
/* @__NO_SIDE_EFFECTS__ */
export function ofPieces(look: (piece: Piece) => readonly Found[]): Check['run'] {
  const found = keptWith(look)
  return ({ pattern }) => pattern.pieces.flatMap(found)
}
