import type { BodySide } from '../base/side.ts'
import type { Join, Pattern } from '../pattern/pattern.ts'
import type { Piece } from '../pattern/piece.ts'
import { pieceOf } from '../pattern/seam.ts'
import { namedSide } from '../pattern/side-names.ts'
import { splitPattern } from '../pattern/split-pattern.ts'

/**
 * One pattern from the drafts of a left and a right body half. Pieces that came out the same stay pairs and folds;
 * the others are split, their left from the left draft and their right from the right one; a piece on the fold opens into one
 * whole piece with a half from each. Both drafts have the same pieces, seams and joins.
 */
export function bothSides(left: Pattern, right: Pattern): Pattern {
  const differing = right.pieces.filter((piece) => !isSame(piece, pieceOf(left, piece.id))).map((piece) => piece.id)
  const splitLeft = differing.reduce(splitPattern, left)
  const splitRight = differing.reduce(splitPattern, right)
  return {
    pieces: splitRight.pieces.map((piece) => {
      if (piece.side === 'left') return pieceOf(splitLeft, piece.id)
      return piece.side === 'whole' ? halves(pieceOf(splitLeft, piece.id), piece) : piece
    }),
    joins: splitRight.joins.map((join) => (namedSide(join.id) === 'left' ? joinOf(splitLeft, join.id) : join)),
  }
}

/** Drafts are pure data made by the same steps, so the same piece has the same text. */
function isSame(a: Piece, b: Piece): boolean {
  return JSON.stringify(a) === JSON.stringify(b)
}

/** A whole piece of the left half of one and the right half of the other; what is on the center is the same in both. */
function halves(left: Piece, right: Piece): Piece {
  const take = <T extends { readonly id: string }>(key: (piece: Piece) => readonly T[]): T[] =>
    key(right).map((item, index) => (side(item) === 'left' ? (key(left)[index] as T) : item))
  return {
    ...right,
    seams: take((piece) => piece.seams),
    darts: take((piece) => piece.darts),
    notches: take((piece) => piece.notches),
    lines: take((piece) => piece.lines),
    landmarks: take((piece) => piece.landmarks),
  }
}

function side({ id }: { readonly id: string }): BodySide | undefined {
  return namedSide(id)
}

function joinOf(pattern: Pattern, id: string): Join {
  const join = pattern.joins.find((j) => j.id === id)
  if (!join) throw new RangeError(`no join "${id}"`)
  return join
}
