import { cutLine } from '../pattern/cut-line.ts'
import type { Pattern } from '../pattern/pattern.ts'
import type { Piece, Side } from '../pattern/piece.ts'
import { capEase } from './cap-ease.ts'
import { mirrorPairs, wantedPieces } from './cut-pieces.ts'
import { drawPiece } from './draw-piece.ts'
import type { TextSizes } from './house-style.ts'
import { boxOfInk, keptInkOf, type Segment } from './ink.ts'
import { labelPiece } from './label-piece.ts'
import { previousMarks } from './previous-version.ts'
import type { Mark, PieceDrawing, SheetInfo } from './scene.ts'

/** What the labels say, and which pieces are drawn how. */
export interface DrawingOptions extends SheetInfo {
  /** Ids of the pieces wanted; `sleeve` also means `sleeve left` and `sleeve right`. All when absent. */
  readonly pieces?: readonly string[]
  /** Draws a pair as its left and its right piece, each under its own name, in place of one. */
  readonly mirrorPairs?: boolean
  /** The pattern as it was in the version that `under` names: its stitching lines, darts and notches lie under it. */
  readonly previous?: Pattern
}

/** How everything is drawn, where that is not as on paper. */
export interface DrawingStyle {
  readonly sizes: TextSizes
  readonly mark: (mark: Mark) => Mark
}

/** Drawings of the wanted pieces, each in its own frame. Throws when a wanted piece is not there or none is. */
export function pieceDrawings(pattern: Pattern, options: DrawingOptions, style?: DrawingStyle): PieceDrawing[] {
  const shown = options.mirrorPairs ? mirrorPairs(pattern) : pattern
  return wantedPieces(shown, options.pieces).map((piece) => drawingOf(shown, piece, options, style))
}

const WORDS: Readonly<Record<Side, string>> = {
  pair: 'a mirrored pair',
  left: 'the left one',
  right: 'the right one',
  fold: 'on the fold',
  whole: 'in one piece',
}

function drawingOf(pattern: Pattern, piece: Piece, options: DrawingOptions, style?: DrawingStyle): PieceDrawing {
  const { under, previous } = options
  const now = drawPiece(piece, cutLine(piece))
  const below = under !== undefined && previous ? previousMarks(previous, piece, under, now) : []
  const drawn = [...below, ...now]
  const lines = style ? drawn.map(style.mark) : drawn
  const title = piece.name.charAt(0).toUpperCase() + piece.name.slice(1)
  const description = `${title}: ${WORDS[piece.side]}, cut ${piece.cut}`
  const ease = capEase(pattern, piece.id)
  const labelled = (walls: readonly Segment[]): PieceDrawing => {
    const labels = labelPiece(piece, lines, ease, options, { walls, ...(style ? { sizes: style.sizes } : {}) })
    const marks = [...lines, ...labels]
    return { id: piece.id, title, description, marks, box: boxOfInk(keptInkOf(marks)), labelled }
  }
  return labelled([])
}
