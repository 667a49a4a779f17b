import type { BodySide } from '../base/side.ts'
import { closeFold } from './close-fold.ts'
import { fromOtherEnd, mirrorPiece } from './mirror-piece.ts'
import type { Join, JoinPart, Pattern } from './pattern.ts'
import type { Piece } from './piece.ts'
import { pieceOf, seamLength, seamOf } from './seam.ts'
import { baseName, drawnSide, isNamed, namedSide, otherSide } from './side-names.ts'

/** The one piece that a left and a right piece, or the halves of a whole one, would be: by each of its sides. */
export interface Halves {
  /** As the drawn side has it, and as the other side has it, seen in the mirror. */
  readonly drawn: Piece
  readonly other: Piece
}

/** Places along a seam that differ by less are the same, mm: what halves may differ by and still be alike. */
const SAME_PLACE = 0.02

/**
 * Both sides of a piece as the one piece they could be drawn as, in the frame of the drawn side: a pair from
 * `sleeve left` and `sleeve right`, a piece on the fold from a whole one. Undefined where there is nothing to join:
 * no such pieces, or a pair or a fold already.
 */
export function halvesOf(pattern: Pattern, id: string): Halves | undefined {
  const whole = pattern.pieces.find((p) => p.id === id)
  if (whole?.side === 'whole') {
    const drawn = drawnSide(whole)
    return { drawn: closeFold(whole, drawn), other: closeFold(sidesChanged(mirrorPiece(whole)), drawn) }
  }
  const [left, right] = (['left', 'right'] as const).map((side) => pattern.pieces.find((p) => p.id === `${id} ${side}`))
  if (!left || !right) return undefined
  const paired = (piece: Piece): Piece => ({ ...piece, id, name: baseName(piece.name), side: 'pair', cut: 2 })
  const isLeft = drawnSide({ ...left, id }) === 'left'
  return isLeft
    ? { drawn: paired(left), other: paired(mirrorPiece(right)) }
    : { drawn: paired(right), other: paired(mirrorPiece(left)) }
}

/** A whole piece with left and right named the other way round: what a mirrored one shows. */
function sidesChanged(piece: Piece): Piece {
  const name = (id: string) => {
    const side = namedSide(id)
    return side === undefined ? id : `${baseName(id)} ${otherSide(side)}`
  }
  const renamed = <T extends { readonly id: string }>(items: readonly T[]): T[] =>
    items.map((item) => ({ ...item, id: name(item.id), ...('seam' in item ? { seam: name(String(item.seam)) } : {}) }))
  return {
    ...piece,
    seams: renamed(piece.seams),
    darts: renamed(piece.darts),
    notches: renamed(piece.notches),
    lines: renamed(piece.lines),
    landmarks: renamed(piece.landmarks),
  }
}

/**
 * The pattern with left and right of one piece joined again, drawn as its drawn side is: undoes `splitPattern`. Joins
 * that sew the same on both sides become one. Whether the sides are alike is the caller's to know (`halvesOf`). A
 * pattern where there is nothing to join stays the same object.
 */
export function joinPattern(pattern: Pattern, id: string): Pattern {
  const halves = halvesOf(pattern, id)
  if (!halves) return pattern
  const isOld = (piece: Piece) => isNamed(piece.id, id)
  const first = pattern.pieces.findIndex(isOld)
  const pieces = pattern.pieces.flatMap((piece, i) => (i === first ? [halves.drawn] : isOld(piece) ? [] : [piece]))
  const drawn = drawnSide(halves.drawn)
  const joins = pattern.joins.map((join) => joinedJoin(pattern, join, id, drawn))
  return { ...pattern, pieces, joins: merged(joins) }
}

function joinedJoin(pattern: Pattern, join: Join, id: string, drawn: BodySide): Join {
  if (![...join.a, ...join.b].some((part) => sideOfPart(part, id) !== undefined)) return join
  const part = (p: JoinPart) => joinedPart(pattern, p, id, drawn)
  return { ...join, a: join.a.map(part), b: join.b.map(part) }
}

function sideOfPart(part: JoinPart, id: string): BodySide | undefined {
  if (part.piece === id) return namedSide(part.seam)
  return baseName(part.piece) === id ? namedSide(part.piece) : undefined
}

function joinedPart(pattern: Pattern, part: JoinPart, id: string, drawn: BodySide): JoinPart {
  const side = sideOfPart(part, id)
  if (side === undefined) return part
  const moved = { ...part, piece: id, seam: part.piece === id ? baseName(part.seam) : part.seam }
  if (side === drawn) return moved
  const { from, to, ...rest } = moved
  const length = seamLength(seamOf(pieceOf(pattern, part.piece), part.seam))
  return {
    ...rest,
    reversed: !part.reversed,
    ...(to === undefined ? {} : { from: fromOtherEnd(length, to) }),
    ...(from === undefined ? {} : { to: fromOtherEnd(length, from) }),
  }
}

/** Joins of left and right that name the same seams now become one under the plain name, where the first stood. */
function merged(joins: readonly Join[]): Join[] {
  return joins.flatMap((join) => {
    const side = namedSide(join.id)
    if (side === undefined) return [join]
    const twin = joins.find((other) => other.id === `${baseName(join.id)} ${otherSide(side)}`)
    if (!twin || !sewsAlike(join, twin)) return [join]
    return joins.indexOf(join) < joins.indexOf(twin) ? [{ ...join, id: baseName(join.id) }] : []
  })
}

function sewsAlike(one: Join, other: Join): boolean {
  const near = (a: number | undefined, b: number | undefined) =>
    a === undefined || b === undefined ? a === b : Math.abs(a - b) <= SAME_PLACE
  const parts = (a: readonly JoinPart[], b: readonly JoinPart[]) =>
    a.length === b.length &&
    a.every((p, i) => {
      const q = b[i]
      return (
        q?.piece === p.piece &&
        q.seam === p.seam &&
        q.reversed === p.reversed &&
        near(p.from, q.from) &&
        near(p.to, q.to)
      )
    })
  return (
    parts(one.a, other.a) &&
    parts(one.b, other.b) &&
    one.ease.min === other.ease.min &&
    near(one.ease.target, other.ease.target) &&
    near(one.ease.max, other.ease.max)
  )
}
