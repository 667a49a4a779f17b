import type { Path } from '../geometry/path.ts'
import type { Point } from '../geometry/point.ts'

/**
 * How a piece is cut. `pair`: drawn once, cut as two mirrored pieces. `left`, `right`: the wearer's, drawn face
 * up. `fold`: half a piece, cut on the fold. `whole`: one piece across the body.
 */
export type Side = 'pair' | 'left' | 'right' | 'fold' | 'whole'

/** One flat piece of a pattern; mm, y up, drawn face up. Its seams run anticlockwise and touch end to end. */
export interface Piece {
  /** `bodice front`, `bodice back` or `sleeve`, with ` left` or ` right` once the sides differ. */
  readonly id: string
  /** The name that is printed. */
  readonly name: string
  /** Which side of the body it is for, or how it covers both. */
  readonly side: Side
  /** How many are cut. */
  readonly cut: number
  /** Stitching lines all the way round, anticlockwise. */
  readonly seams: readonly Seam[]
  /** Darts that open on the seams. */
  readonly darts: readonly Dart[]
  /** Notches on the seams. */
  readonly notches: readonly Notch[]
  /** Lines drawn inside: grain and balance lines. */
  readonly lines: readonly Line[]
  /** Points that have a name. */
  readonly landmarks: readonly Landmark[]
}

/**
 * A stitching line. A seam with darts has one part between dart mouths, so its sewn length is the sum of its
 * parts; positions on a seam are mm of sewn length from its start, darts closed.
 */
export interface Seam {
  /** Unique on its piece, for example `front cap`. */
  readonly id: string
  /** One path, or one between each two dart mouths; mm. */
  readonly parts: readonly Path[]
  /** Seam allowance in mm; 0 on a fold. */
  readonly allowance: number
}

/** A dart: straight legs of equal length from the mouth on its seam to its point. Mouth in the seam's order. */
export interface Dart {
  /** Unique on its piece. */
  readonly id: string
  /** Id of the seam that it opens on. */
  readonly seam: string
  /** Where its legs meet the seam. */
  readonly mouth: readonly [Point, Point]
  /** Where its legs meet inside the piece. */
  readonly point: Point
}

/** A notch on a seam, `along` mm of sewn length from the seam's start. */
export interface Notch {
  /** Unique on its piece, for example `shoulder notch`. */
  readonly id: string
  /** Id of its seam. */
  readonly seam: string
  /** mm of sewn length from the seam's start, darts closed. */
  readonly along: number
  /** Number of marks side by side: 1 in front, 2 at the back. */
  readonly marks: number
  /** Distance to the next mark in mm along the seam; negative towards the seam's start. Only with marks > 1. */
  readonly step?: number
}

/** A line drawn inside a piece: grain, balance lines, ease stitching. */
export interface Line {
  /** Unique on its piece: `grain`, `cap line`, `biceps line`, `elbow line`. */
  readonly id: string
  /** The line, mm. */
  readonly path: Path
}

/** A named point of the draft that lies on a seam or inside the piece: shoulder point, bust point, … */
export type Landmark =
  | {
      /** Unique on its piece, for example `bust point`. */
      readonly id: string
      /** Id of the seam that it lies on. */
      readonly seam: string
      /** mm of sewn length from that seam's start. */
      readonly along: number
    }
  | {
      /** Unique on its piece, for example `bust point`. */
      readonly id: string
      /** The point, mm, where it lies on no seam. */
      readonly at: Point
    }
