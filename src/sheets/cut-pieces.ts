import type { Pattern } from '../pattern/pattern.ts'
import type { Piece } from '../pattern/piece.ts'
import { isNamed } from '../pattern/side-names.ts'
import { splitPattern } from '../pattern/split-pattern.ts'

/** The pieces wanted by id, in the order of a sheet; `sleeve` also means `sleeve left` and `sleeve right`. Throws on an id that is not there. */
export function wantedPieces(pattern: Pattern, ids: readonly string[] | undefined): Piece[] {
  for (const id of ids ?? []) {
    if (!pattern.pieces.some((piece) => isNamed(piece.id, id))) {
      throw new RangeError(`no piece "${id}"; there are ${pattern.pieces.map((p) => p.id).join(', ')}`)
    }
  }
  const pieces = pattern.pieces.filter((piece) => !ids || ids.some((id) => isNamed(piece.id, id)))
  if (pieces.length === 0) throw new RangeError('a sheet needs at least one piece')
  return pieces.toSorted((a, b) => rank(a) - rank(b))
}

/** Bodice back, bodice front, sleeve, then whatever else there is; otherwise as in the pattern. */
export function rank(piece: Piece): number {
  const place = ['bodice back', 'bodice front', 'sleeve'].findIndex((name) => piece.id.startsWith(name))
  return place < 0 ? 3 : place
}

/** The pattern with every pair as a left and a right piece, true mirror images of each other; all else as it was. */
export function mirrorPairs(pattern: Pattern): Pattern {
  const pairs = pattern.pieces.filter((piece) => piece.side === 'pair')
  return pairs.reduce((split, piece) => splitPattern(split, piece.id), pattern)
}

/** The pattern as the cloth is cut: pairs apart, and what lies on the fold opened into one whole piece. */
export function everyPieceWhole(pattern: Pattern): Pattern {
  const folds = pattern.pieces.filter((piece) => piece.side === 'fold')
  return folds.reduce((split, piece) => splitPattern(split, piece.id), mirrorPairs(pattern))
}
