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
  readonly name: string
  readonly side: Side
  /** How many are cut. */
  readonly cut: number
  readonly seams: readonly Seam[]
  readonly darts: readonly Dart[]
  readonly notches: readonly Notch[]
  readonly lines: readonly Line[]
  readonly landmarks: readonly Landmark[]
}

/**
 * A stitching line. A seam with darts has one part between dart mouths, so its sewn length is the sum of its
 * parts; positions on a seam are mm of sewn length from its start, darts closed.
 */
export interface Seam {
  readonly id: string
  readonly parts: readonly Path[]
  /** Seam allowance in mm; 0 on a fold. */
  readonly allowance: number
}

/** A dart: straight legs of equal length from the mouth on its seam to its point. Mouth in the seam's order. */
export interface Dart {
  readonly id: string
  readonly seam: string
  readonly mouth: readonly [Point, Point]
  readonly point: Point
}

/** A notch on a seam, `along` mm of sewn length from the seam's start. */
export interface Notch {
  readonly id: string
  readonly seam: string
  readonly along: number
  /** Number of marks side by side: 1 in front, 2 at the back. */
  readonly marks: number
  /** Distance to the next mark in mm along the seam; negative towards the seam's start. Only with marks > 1. */
  readonly step?: number
}

/** A line drawn inside a piece: grain, balance lines, ease stitching. */
export interface Line {
  readonly id: string
  readonly path: Path
}

/** A named point of the draft that lies on a seam or inside the piece: shoulder point, bust point, … */
export type Landmark =
  | { readonly id: string; readonly seam: string; readonly along: number }
  | { readonly id: string; readonly at: Point }
