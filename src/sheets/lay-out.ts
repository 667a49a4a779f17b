import type { Pattern } from '../pattern/pattern.ts'
import { leastPaper } from './arrange.ts'
import { type DrawingOptions, pieceDrawings } from './piece-drawings.ts'
import type { PieceDrawing, Scene, SheetInfo } from './scene.ts'
import { sheetFoot } from './sheet-foot.ts'

/** What the labels say, and which pieces are drawn how. */
export type LayOutOptions = DrawingOptions

/** White border of a sheet, mm. */
const BORDER = 15

/**
 * The pattern on one sheet: pieces in rows, and at the foot the measured squares, a rule and what each line
 * means. Throws when a wanted piece is not there or none is: the caller asks for pieces by their ids.
 */
export function layOut(pattern: Pattern, options: LayOutOptions): Scene {
  return onOneSheet(pieceDrawings(pattern, options), infoOf(options))
}

/** Drawings in rows on one sheet, with its foot. */
export function onOneSheet(drawings: readonly PieceDrawing[], info: SheetInfo): Scene {
  const best = leastPaper(drawings)
  const foot = sheetFoot(info, drawings, best.width)
  const width = Math.ceil(Math.max(best.width, foot.width) + 2 * BORDER)
  const height = Math.ceil(best.height + foot.height + 2 * BORDER)
  const pieces = best.placed.map(({ drawing, at }) => ({
    drawing,
    at: { x: at.x + BORDER, y: at.y + BORDER + foot.height },
  }))
  return { info, width, height, pieces, sheet: foot.marks(BORDER, BORDER) }
}

/** What the labels say, without what was asked of the drawing. */
export function infoOf(options: LayOutOptions): SheetInfo {
  const { pieces: _pieces, mirrorPairs: _mirrorPairs, previous: _previous, ...info } = options
  return info
}
