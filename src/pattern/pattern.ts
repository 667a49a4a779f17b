import type { Piece } from './piece.ts'

/** Part of a seam as it is sewn. `from` and `to` in mm along the seam from its start; absent: the whole seam. */
export interface JoinPart {
  readonly piece: string
  readonly seam: string
  /** True where the sewing order runs against the seam. */
  readonly reversed: boolean
  readonly from?: number
  readonly to?: number
}

/** Declared ease of a join: length of a minus length of b, mm. */
export interface EaseRange {
  readonly min: number
  readonly target: number
  readonly max: number
}

/**
 * Two lines that are sewn together, each a list of seam parts in sewing order: underarm to shoulder on the
 * armscye, top to bottom elsewhere. `a` is the sleeve, the back underarm seam, the back shoulder, the back
 * side seam. A join of a pair holds on each side of the body after mirroring.
 */
export interface Join {
  readonly id: string
  readonly a: readonly JoinPart[]
  readonly b: readonly JoinPart[]
  readonly ease: EaseRange
}

/** A pattern: readonly data; every operation returns a new one and shares the pieces it did not touch. */
export interface Pattern {
  readonly pieces: readonly Piece[]
  readonly joins: readonly Join[]
}
