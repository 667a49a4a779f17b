import type { Path } from '../geometry/path.ts'
import { cutLine } from '../pattern/cut-line.ts'
import type { Pattern } from '../pattern/pattern.ts'
import type { Piece, Side } from '../pattern/piece.ts'
import { type Arrangement, arrangements } from './arrange.ts'
import { capEase } from './cap-ease.ts'
import { drawPiece } from './draw-piece.ts'
import { boxOfInk, inkOf } from './ink.ts'
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
  return onOneSheet(drawPieces(pattern, options), infoOf(options))
}

/** Drawings in rows on one sheet, with its foot. */
export function onOneSheet(drawings: readonly PieceDrawing[], info: SheetInfo): Scene {
  const best = leastPaper(arrangements(drawings))
  const foot = sheetFoot(info, drawings, best.width)
  const width = Math.ceil(Math.max(best.width, foot.width) + 2 * BORDER)
  const height = Math.ceil(best.height + foot.height + 2 * BORDER)
  const pieces = best.placed.map(({ drawing, at }) => ({
    drawing,
    at: { x: at.x + BORDER, y: at.y + BORDER + foot.height },
  }))
  return { info, width, height, pieces, sheet: foot.marks(BORDER, BORDER) }
}

/** Drawings of the wanted pieces, each in its own frame. */
function drawPieces(pattern: Pattern, options: LayOutOptions): PieceDrawing[] {
  return wanted(pattern, options.pieces).map((piece) => drawingOf(pattern, piece, cutLine(piece), options))
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
  const marks = [...lines, ...labelPiece(piece, lines, capEase(pattern, piece.id), info)]
  return {
    id: piece.id,
    title,
    description: `${title}: ${WORDS[piece.side]}, cut ${piece.cut}`,
    marks,
    box: boxOfInk(inkOf(marks)),
  }
}

function wanted(pattern: Pattern, ids: readonly string[] | undefined): Piece[] {
  for (const id of ids ?? []) {
    if (!pattern.pieces.some((piece) => isWanted(piece, id))) {
      throw new RangeError(`no piece "${id}"; there are ${pattern.pieces.map((p) => p.id).join(', ')}`)
    }
  }
  const pieces = pattern.pieces.filter((piece) => !ids || ids.some((id) => isWanted(piece, id)))
  if (pieces.length === 0) throw new RangeError('a sheet needs at least one piece')
  return pieces.toSorted((a, b) => rank(a.id) - rank(b.id))
}

function isWanted(piece: Piece, id: string): boolean {
  return piece.id === id || piece.id === `${id} left` || piece.id === `${id} right`
}

/** Bodice back, bodice front, sleeve, then whatever else there is; otherwise as in the pattern. */
export function rank(id: string): number {
  const place = ['bodice back', 'bodice front', 'sleeve'].findIndex((name) => id.startsWith(name))
  return place < 0 ? 3 : place
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
