import { SAME_POINT } from '../geometry/defaults.ts'
import { distance, type Point } from '../geometry/point.ts'
import { cutLine } from '../pattern/cut-line.ts'
import type { Pattern } from '../pattern/pattern.ts'
import type { Piece } from '../pattern/piece.ts'
import { baseName } from '../pattern/side-names.ts'
import { splitPattern } from '../pattern/split-pattern.ts'
import { drawPiece } from './draw-piece.ts'
import { PREVIOUS_PEN } from './house-style.ts'
import type { Mark, MarkKind, StrokeMark } from './scene.ts'

/** What is compared from one fitting to the next; cutting lines would only be cut by mistake. */
const COMPARED: readonly MarkKind[] = ['stitching line', 'dart', 'notch']

/**
 * Stitching lines, darts and notches of a piece as they were, thin and dashed, in the frame of the piece as it is: both
 * versions come from one draft. Where the sides have come apart since, the old piece is taken apart as well. What has
 * not moved (`now`, the marks of the piece as it is) is not drawn twice. Nothing for a piece that was not there.
 */
export function previousMarks(previous: Pattern, piece: Piece, version: string, now: readonly Mark[]): StrokeMark[] {
  const then = pieceThen(previous, piece)
  if (!then) return []
  return drawPiece(then, cutLine(then)).flatMap((mark) => {
    if (mark.type !== 'stroke' || !COMPARED.includes(mark.kind)) return []
    if (now.some((other) => isSame(mark, other))) return []
    // Of a notch only the tick on the stitching line: there was another cut edge.
    const paths = mark.kind === 'notch' ? mark.paths.slice(0, 1) : mark.paths
    return [{ ...mark, ...PREVIOUS_PEN, paths, version }]
  })
}

function isSame(mark: StrokeMark, other: Mark): boolean {
  if (other.type !== 'stroke' || other.kind !== mark.kind || other.id !== mark.id) return false
  const [a, b] = [pointsOf(mark), pointsOf(other)]
  return a.length === b.length && a.every((p, k) => distance(p, b[k] as Point) <= SAME_POINT)
}

function pointsOf(mark: StrokeMark): Point[] {
  return mark.paths.flat().flatMap((c) => [c.p0, c.p1, c.p2, c.p3])
}

function pieceThen(previous: Pattern, { id, side }: Piece): Piece | undefined {
  const found = (pattern: Pattern) => pattern.pieces.find((piece) => piece.id === id && piece.side === side)
  const base = baseName(id)
  const together = previous.pieces.some((piece) => piece.id === base)
  return found(previous) ?? (together ? found(splitPattern(previous, base)) : undefined)
}
