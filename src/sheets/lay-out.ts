import type { Path } from '../geometry/path.ts'
import { cutLine } from '../pattern/cut-line.ts'
import type { Pattern } from '../pattern/pattern.ts'
import type { Piece, Side } from '../pattern/piece.ts'
import { type Arrangement, arrangements } from './arrange.ts'
import { capEase } from './cap-ease.ts'
import { wantedPieces } from './cut-pieces.ts'
import { drawPiece } from './draw-piece.ts'
import { boxOfInk, inkOf, type Segment } from './ink.ts'
import { labelPiece } from './label-piece.ts'
import type { PieceDrawing, Scene, SheetInfo } from './scene.ts'
import { sheetFoot } from './sheet-foot.ts'

export interface LayOutOptions extends SheetInfo {
  /** Ids of the pieces wanted; `sleeve` also means `sleeve left` and `sleeve right`. All when absent. */
  readonly pieces?: readonly string[]
}

/** White border of a sheet, mm. */
const BORDER = 15

/**
 * The pattern on one sheet: pieces in rows, and at the foot the measured squares, a rule and what each line
 * means. Throws when a wanted piece is not there or none is: the caller asks for pieces by their ids.
 */
export function layOut(pattern: Pattern, options: LayOutOptions): Scene {
  const drawings = drawPieces(pattern, options)
  const best = leastPaper(arrangements(drawings))
  const foot = sheetFoot(options, drawings, best.width)
  const width = Math.ceil(Math.max(best.width, foot.width) + 2 * BORDER)
  const height = Math.ceil(best.height + foot.height + 2 * BORDER)
  const pieces = best.placed.map(({ drawing, at }) => ({
    drawing,
    at: { x: at.x + BORDER, y: at.y + BORDER + foot.height },
  }))
  return { info: infoOf(options), width, height, pieces, sheet: foot.marks(BORDER, BORDER) }
}

/** Drawings of the wanted pieces, each in its own frame. */
function drawPieces(pattern: Pattern, options: LayOutOptions): PieceDrawing[] {
  return wantedPieces(pattern, options.pieces).map((piece) => drawingOf(pattern, piece, cutLine(piece), options))
}

const WORDS: Readonly<Record<Side, string>> = {
  pair: 'a mirrored pair',
  left: 'the left one',
  right: 'the right one',
  fold: 'on the fold',
  whole: 'in one piece',
}

function drawingOf(pattern: Pattern, piece: Piece, cut: Path, info: SheetInfo): PieceDrawing {
  const lines = drawPiece(piece, cut)
  const title = piece.name.charAt(0).toUpperCase() + piece.name.slice(1)
  const description = `${title}: ${WORDS[piece.side]}, cut ${piece.cut}`
  const ease = capEase(pattern, piece.id)
  const labelled = (walls: readonly Segment[]): PieceDrawing => {
    const marks = [...lines, ...labelPiece(piece, lines, ease, info, walls)]
    return { id: piece.id, title, description, marks, box: boxOfInk(inkOf(marks)), labelled }
  }
  return labelled([])
}

/** The least area; a further row must save a tenth of it, because one row is easier to look over. */
function leastPaper(all: readonly Arrangement[]): Arrangement {
  const cost = (a: Arrangement, rows: number) => a.width * a.height * (1 + rows / 10)
  const costs = all.map((a) => cost(a, new Set(a.placed.map((p) => p.drawing.box.bottom + p.at.y)).size))
  return all[costs.indexOf(Math.min(...costs))] as Arrangement
}

function infoOf(options: LayOutOptions): SheetInfo {
  const { pieces: _pieces, ...info } = options
  return info
}
