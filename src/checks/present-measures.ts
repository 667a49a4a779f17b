import { BODY_SIDES, type BodySide } from '../base/side.ts'
import { MEASURES, type MeasureName } from '../body/measure.ts'
import type { MeasureRow } from '../drafting/draft.ts'
import { remeasure } from '../drafting/remeasure.ts'
import { mirrorPiece } from '../pattern/mirror-piece.ts'
import type { Pattern } from '../pattern/pattern.ts'
import type { Piece } from '../pattern/piece.ts'
import { baseName, drawnSide, namedSide } from '../pattern/side-names.ts'

/** Sides that measure alike to this are told as one, mm or radians: no tape and no protractor sees it. */
const ALIKE = 1e-3

/**
 * The rows of the draft with `drafted` measured again on the pattern as it stands, darts closed; a row for each
 * side where the sides of a sided measure have come to differ. A measure without sides keeps one row: a girth is the
 * sum of its two halves, a length down the body the mean of the two. A measure that the pattern no longer shows is
 * left out.
 */
export function presentMeasures(rows: readonly MeasureRow[], pattern: Pattern): MeasureRow[] {
  const { left, right } = { left: measured(pattern, 'left'), right: measured(pattern, 'right') }
  const bySide = { left, right }
  return rows.flatMap((row): MeasureRow[] => {
    const sides = row.side === 'both' ? BODY_SIDES : [row.side]
    const found = sides.flatMap((side) => {
      const drafted = bySide[side][row.name]
      return drafted === undefined || Number.isNaN(drafted) ? [] : [{ ...row, side, drafted }]
    })
    const [one, other] = found
    if (row.side !== 'both' || !one || !other) return found
    // Each side measures a girth as twice its own half, so the sum of two uneven halves is the mean of the two.
    if (!MEASURES[row.name].sided) return [{ ...row, drafted: (one.drafted + other.drafted) / 2 }]
    return Math.abs(one.drafted - other.drafted) <= ALIKE ? [{ ...one, side: 'both' }] : found
  })
}

function measured(pattern: Pattern, side: BodySide): Readonly<Partial<Record<MeasureName, number>>> {
  const back = pieceFor(pattern, 'bodice back', side)
  const front = pieceFor(pattern, 'bodice front', side)
  const sleeve = pieceFor(pattern, 'sleeve', side)
  return back && front && sleeve ? remeasure({ back, front, sleeve }) : {}
}

/** One side's piece as the draft drew it: half a bodice with its side towards +x, the sleeve with its front there. */
function pieceFor(pattern: Pattern, id: string, side: BodySide): Piece | undefined {
  const piece = pattern.pieces.find((p) => p.id === id || p.id === `${id} ${side}`)
  if (!piece) return undefined
  const half = piece.side === 'whole' ? halfOf(piece, side) : piece
  const mirrored = piece.side !== 'pair' && piece.side !== 'fold' && side !== drawnSide(piece)
  return mirrored ? mirrorPiece(half) : half
}

/** One half of a piece that was opened along its fold, seams and marks under their own names, the center an edge again. */
function halfOf(piece: Piece, side: BodySide): Piece {
  const here = <T extends { readonly id: string }>(items: readonly T[]): T[] =>
    items.filter((item) => (namedSide(item.id) ?? side) === side).map((item) => ({ ...item, id: baseName(item.id) }))
  const onSeam = <T extends { readonly id: string; readonly seam: string }>(items: readonly T[]): T[] =>
    here(items).map((item) => ({ ...item, seam: baseName(item.seam) }))
  const center = piece.lines.filter((line) => /^center (front|back)$/.test(line.id))
  return {
    ...piece,
    seams: [...here(piece.seams), ...center.map((line) => ({ id: line.id, parts: [line.path], allowance: 0 }))],
    darts: onSeam(piece.darts),
    notches: onSeam(piece.notches),
    lines: here(piece.lines),
    landmarks: here(piece.landmarks).map((item) => ('at' in item ? item : { ...item, seam: baseName(item.seam) })),
  }
}
