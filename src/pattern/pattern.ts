import type { Piece } from './piece.ts'

/** Part of a seam as it is sewn. `from` and `to` in mm along the seam from its start; absent: the whole seam. */
export interface JoinPart {
  /** Id of the piece. */
  readonly piece: string
  /** Id of the seam on it. */
  readonly seam: string
  /** True where the sewing order runs against the seam. */
  readonly reversed: boolean
  /** Where the part begins, mm along the seam; its start when absent. */
  readonly from?: number
  /** Where the part ends, mm along the seam; its end when absent. */
  readonly to?: number
}

/** Declared ease of a join: length of a minus length of b, mm. */
export interface EaseRange {
  /** Below it the join cannot be sewn. */
  readonly min: number
  /** What was asked for. */
  readonly target: number
  /** More than the cloth takes. */
  readonly max: number
}

/**
 * Two lines that are sewn together, each a list of seam parts in sewing order: underarm to shoulder on the
 * armscye, top to bottom elsewhere. `a` is the sleeve, the back underarm seam, the back shoulder, the back
 * side seam. A join of a pair holds on each side of the body after mirroring.
 */
export interface Join {
  /** Unique in its pattern, for example `front cap`. */
  readonly id: string
  /** The parts on the first side, in sewing order. */
  readonly a: readonly JoinPart[]
  /** The parts on the second side, in sewing order. */
  readonly b: readonly JoinPart[]
  /** By how much `a` may be longer than `b`. */
  readonly ease: EaseRange
}

/** A pattern: readonly data; every operation returns a new one and shares the pieces it did not touch. */
export interface Pattern {
  /** Each with an id of its own. */
  readonly pieces: readonly Piece[]
  /** What is sewn to what. */
  readonly joins: readonly Join[]
}
