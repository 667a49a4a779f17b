import type { BodySide } from '../base/side.ts'
import type { Piece } from './piece.ts'

/** The id without ` left` or ` right` at its end. */
export function baseName(id: string): string {
  if (id.endsWith(' left')) return id.slice(0, -' left'.length)
  return id.endsWith(' right') ? id.slice(0, -' right'.length) : id
}

/** Whether an id is the one asked for, or one of the sides of it: `sleeve` also means `sleeve left` and `sleeve right`. */
export function isNamed(id: string, name: string): boolean {
  return id === name || id === `${name} left` || id === `${name} right`
}

/** The side that an id names at its end. */
export function namedSide(id: string): BodySide | undefined {
  const match = / (left|right)$/.exec(id)
  return match ? (match[1] as BodySide) : undefined
}

/** The side of the body that a seam of a piece lies on; `both` on a pair and on the fold, and across the center. */
export function sideOfSeam(piece: Piece, seam: string): BodySide | 'both' {
  if (piece.side === 'left' || piece.side === 'right') return piece.side
  return namedSide(seam) ?? 'both'
}

export function otherSide(side: BodySide): BodySide {
  return side === 'left' ? 'right' : 'left'
}

/**
 * Which side of the wearer a pair or half piece shows as drawn, face up: a front drawn with its side towards +x is
 * the left front; a back so drawn is the right back, and a sleeve with its front towards +x the right sleeve.
 */
export function drawnSide(piece: Piece): BodySide {
  return /\bfront\b/.test(piece.id) ? 'left' : 'right'
}
