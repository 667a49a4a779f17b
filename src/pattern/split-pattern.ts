import type { BodySide } from '../base/side.ts'
import { fromOtherEnd, mirrorPiece } from './mirror-piece.ts'
import { openFold } from './open-fold.ts'
import type { Join, JoinPart, Pattern } from './pattern.ts'
import type { Piece } from './piece.ts'
import { pieceOf, seamLength, seamOf } from './seam.ts'
import { drawnSide, namedSide, otherSide } from './side-names.ts'

/**
 * The pattern with one piece's left and right apart: a pair becomes a left and a right piece, exact mirror images;
 * a piece on the fold is opened into one whole piece whose seams carry ` left` and ` right`. Joins that sew the
 * piece become one for each side. A pattern whose piece is left, right or whole already stays the same object. Throws
 * when there is no such piece.
 */
export function splitPattern(pattern: Pattern, id: string): Pattern {
  const piece = pieceOf(pattern, id)
  if (piece.side !== 'pair' && piece.side !== 'fold') return pattern
  const drawn = drawnSide(piece)
  const split = piece.side === 'pair' ? splitPair(piece, drawn) : [openFold(piece, drawn)]
  const place = (side: BodySide) => sidePlace(piece, drawn, side)
  return {
    ...pattern,
    pieces: pattern.pieces.flatMap((p) => (p === piece ? split : [p])),
    joins: pattern.joins.flatMap((join) => splitJoin(join, id, place)),
  }
}

function splitPair(piece: Piece, drawn: BodySide): Piece[] {
  const named = (p: Piece, side: BodySide): Piece => ({
    ...p,
    id: `${p.id} ${side}`,
    name: `${p.name} ${side}`,
    side,
    cut: 1,
  })
  const both = [named(piece, drawn), named(mirrorPiece(piece), otherSide(drawn))]
  return drawn === 'left' ? both : both.reverse()
}

/** Where a seam of the old piece is on one side of the body, and how positions along it are counted there. */
export interface SidePlace {
  readonly piece: string
  readonly seam: (seam: string) => string
  /** True on the mirrored half, where seams run the other way. */
  readonly mirrored: boolean
  readonly along: (seam: string, along: number) => number
}

export function sidePlace(piece: Piece, drawn: BodySide, side: BodySide): SidePlace {
  const mirrored = side !== drawn
  const along = (seam: string, at: number) => (mirrored ? fromOtherEnd(seamLength(seamOf(piece, seam)), at) : at)
  if (piece.side === 'pair') return { piece: `${piece.id} ${side}`, seam: (seam) => seam, mirrored, along }
  return { piece: piece.id, seam: (seam) => `${seam} ${side}`, mirrored, along }
}

function splitJoin(join: Join, id: string, place: (side: BodySide) => SidePlace): Join[] {
  const sews = [...join.a, ...join.b].some((part) => part.piece === id)
  if (!sews) return [join]
  const already = namedSide(join.id)
  const sides: readonly BodySide[] = already ? [already] : ['left', 'right']
  return sides.map((side) => ({
    ...join,
    id: already ? join.id : `${join.id} ${side}`,
    a: join.a.map((part) => splitPart(part, id, place(side))),
    b: join.b.map((part) => splitPart(part, id, place(side))),
  }))
}

function splitPart(part: JoinPart, id: string, place: SidePlace): JoinPart {
  if (part.piece !== id) return part
  const moved = { ...part, piece: place.piece, seam: place.seam(part.seam) }
  if (!place.mirrored) return moved
  // What was the end of the part is its start on the seam that runs the other way.
  const { from, to, ...rest } = moved
  return {
    ...rest,
    reversed: !part.reversed,
    ...(to === undefined ? {} : { from: place.along(part.seam, to) }),
    ...(from === undefined ? {} : { to: place.along(part.seam, from) }),
  }
}
