import type { Path } from '../geometry/path.ts'
import type { Point } from '../geometry/point.ts'

/** A number of the words as it is said, and what it is: mm, degrees or a share. */
export interface SaidNumber {
  /** As it is printed. */
  readonly says: string
  /** In that unit; radians are told in degrees. */
  readonly value: number
  /** Millimetres, degrees, or a share of one. */
  readonly unit: 'mm' | 'deg' | 'share'
}

/** How a point is found with ruler and set square; mm as rounded for the reader, on the paper: right and up positive. */
export type Placing =
  | {
      /** The first point of a paper. */
      readonly how: 'start'
    }
  | {
      /** Level across from a point, then square up. */
      readonly how: 'square'
      /** The point measured from. */
      readonly from: string
      /** To the right; negative to the left. */
      readonly across: number
      /** Up; negative down. */
      readonly up: number
    }
  | {
      /** On the straight line to another point. */
      readonly how: 'toward'
      /** The point measured from. */
      readonly from: string
      /** The point that the line runs to. */
      readonly toward: string
      /** How far. */
      readonly by: number
    }

export interface StepPoint {
  readonly name: string
  /** What it is called in the trade: `nape`, `shoulder point`. */
  readonly what: string
  readonly placing: Placing
  /** Where the draft has it, on the paper. */
  readonly at: Point
}

/** In which direction a curve leaves or arrives, always forward along it. */
export type Direction =
  | {
      /** Square to the line through these points, onward. */
      readonly square: readonly [string, string]
    }
  | {
      /** From the first of these points to the second. */
      readonly along: readonly [string, string]
    }
  | {
      /** So far to the right, mm. */
      readonly across: number
      /** For so far up, mm. */
      readonly up: number
    }

/** A chord in equal parts, and how far the curve lies square from each mark between them; left of the chord positive. */
export interface Chord {
  /** The point that it starts at. */
  readonly from: string
  /** The point that it ends at. */
  readonly to: string
  /** Number of equal parts: two, four or eight. */
  readonly parts: number
  /** One for each mark, in order, mm. */
  readonly offsets: readonly number[]
}

/** How a line runs. */
export type Run =
  | {
      /** Along a ruler. */
      readonly kind: 'straight'
      /** The point that it starts at. */
      readonly from: string
      /** The point that it ends at. */
      readonly to: string
    }
  | {
      /** One smooth line. */
      readonly kind: 'curve'
      /** Its direction at its start. */
      readonly leaving: Direction
      /** Its direction at its end. */
      readonly arriving: Direction
      /** One after another from knot to knot. */
      readonly chords: readonly Chord[]
    }

/** A line to draw. */
export interface DrawnLine {
  readonly id: string
  /** The seam or the dart of the pattern that it is, or is a part of; absent of lines that only help. */
  readonly seam?: string
  readonly dart?: string
  readonly run: Run
  /** The line as drafted, on the paper. */
  readonly path: Path
}

/** A notch, measured along the drawn seam from a point. */
export interface StepNotch {
  readonly id: string
  readonly seam: string
  readonly from: string
  /** Along the seam, away from the point; mm as rounded for the reader. */
  readonly along: number
  readonly marks: number
  /** To the next mark, farther from the point. */
  readonly step?: number
  readonly at: readonly Point[]
}

/** A sentence of a step, and its reason. */
export interface StepLine {
  /** What to do. */
  readonly text: string
  /** The measure and the ease it came from, or the reason. */
  readonly why?: string
}

/** One step of the draft: what to do, why, and what is then on the paper. */
export interface Step {
  readonly number: number
  readonly title: string
  readonly lines: readonly StepLine[]
  /** Every number of the words. */
  readonly numbers: readonly SaidNumber[]
  readonly points: readonly StepPoint[]
  /** Points of earlier steps that this one measures from. */
  readonly uses: readonly string[]
  readonly drawn: readonly DrawnLine[]
  readonly notches: readonly StepNotch[]
  /** Lines that only help, as drafted, on the paper: levels and width lines. */
  readonly guides: readonly Path[]
}

/** The steps of one paper: a piece, or half of one that differs left and right. */
export interface Section {
  /** Id of the piece in the pattern; `checks` for the walk at the end. */
  readonly piece: string
  readonly title: string
  /** ` left` or ` right`, where the seams of the piece carry the side. */
  readonly suffix: string
  readonly steps: readonly Step[]
}
