import type { Problem } from '../base/problem.ts'
import { failure, type Result, success } from '../base/result.ts'
import { CURVE_TOLERANCE } from '../geometry/defaults.ts'
import { type Halves, halvesOf, joinPattern } from '../pattern/join-pattern.ts'
import { fromOtherEnd } from '../pattern/mirror-piece.ts'
import type { Pattern } from '../pattern/pattern.ts'
import type { Piece } from '../pattern/piece.ts'
import { seamLength } from '../pattern/seam.ts'
import { baseName, drawnSide, namedSide } from '../pattern/side-names.ts'
import { comparePiece, type PieceParts } from './compare-piece.ts'
import { farthestMove } from './farthest-move.ts'
import { type OperationResult, unchanged } from './operation.ts'
import type { PositionMap } from './position-map.ts'

/**
 * Sides that differ by no more than this anywhere are alike, mm: a line that a correction moved is drawn within
 * CURVE_TOLERANCE of the true one on each side, and not always at the same places.
 */
const ALIKE = 2 * CURVE_TOLERANCE

/**
 * `joinPattern` as an operation: `sleeve left` and `sleeve right` become a pair again, the halves of a whole piece a
 * piece on the fold, drawn as the drawn side is; every old place of either side becomes the one place. A piece that
 * is a pair or on the fold already stays as it is. Problem: no such piece, or sides that are not exact mirror images
 * within 0.02 mm, naming what differs most.
 */
export function joinSides(pattern: Pattern, id: string): Result<OperationResult> {
  const halves = halvesOf(pattern, id)
  if (!halves) {
    return pattern.pieces.some((piece) => piece.id === id) ? success(unchanged(pattern)) : failure(nothingToJoin(id))
  }
  const differs = differenceOf(halves)
  if (differs) return failure(sidesDiffer(id, differs))
  return success({ pattern: joinPattern(pattern, id), map: joinMap(pattern, id, halves.drawn), effects: [] })
}

/** What keeps the two sides from being one piece, in words; undefined where they are alike. */
function differenceOf({ drawn, other }: Halves): string | undefined {
  const apart = drawn.seams.flatMap((seam) => {
    const twin = other.seams.find((s) => s.id === seam.id)
    return twin ? [{ seam: seam.id, by: farthestMove(twin.parts, seam.parts).distance }] : []
  })
  const most = apart.reduce((a, b) => (b.by > a.by ? b : a), { seam: '', by: 0 })
  if (most.by > ALIKE) return `the ${most.seam} differs by ${most.by.toFixed(most.by < 0.1 ? 2 : 1)} mm`
  const cut = drawn.seams.find((seam) => {
    const twin = other.seams.find((s) => s.id === seam.id)
    return !twin || Math.abs(twin.allowance - seam.allowance) > 1e-9
  })
  if (cut) return `the ${cut.id} is not cut alike`
  // The grain is marked once on a whole piece, on the drawn half.
  const ungrained = (piece: Piece) => ({ ...piece, lines: piece.lines.filter((line) => line.id !== 'grain') })
  const { changed, added, removed } = comparePiece(ungrained(other), ungrained(drawn), undefined, ALIKE)
  const names = [changed, added, removed].flatMap((parts) =>
    (['darts', 'notches', 'lines', 'landmarks'] as const satisfies readonly (keyof PieceParts)[]).flatMap(
      (k) => parts[k],
    ),
  )
  return names.length === 0 ? undefined : `another ${names.join(', ')}`
}

function joinMap(pattern: Pattern, id: string, joined: Piece): PositionMap {
  const drawn = drawnSide(joined)
  const lengths = new Map(
    pattern.pieces.flatMap((piece) => piece.seams.map((s) => [`${piece.id}/${s.id}`, seamLength(s)] as const)),
  )
  const sideOf = (piece: string, name: string) =>
    piece === id ? namedSide(name) : baseName(piece) === id ? namedSide(piece) : undefined
  return {
    seam: (position) => {
      const side = sideOf(position.piece, position.seam)
      if (side === undefined) return [position]
      const length = lengths.get(`${position.piece}/${position.seam}`)
      const seam = position.piece === id ? baseName(position.seam) : position.seam
      const along = side === drawn || length === undefined ? position.along : fromOtherEnd(length, position.along)
      return [{ piece: id, seam, along }]
    },
    point: ({ piece, at }) => {
      const own = piece === id || baseName(piece) === id
      if (!own) return [{ piece, at }]
      // On a whole piece the half tells the side: the drawn one lies towards +x.
      const mirrored = piece === id ? at.x < 0 : namedSide(piece) !== drawn
      return [{ piece: id, at: mirrored ? { x: 0 - at.x, y: at.y } : at }]
    },
  }
}

function nothingToJoin(id: string): Problem {
  return {
    code: 'no-such-piece',
    where: { piece: id, field: 'piece' },
    actual: `no left and right of "${id}" on this pattern`,
    expected: 'a piece that was taken apart left and right',
    hint: 'name sleeve, bodice front or bodice back',
  }
}

function sidesDiffer(id: string, difference: string): Problem {
  return {
    code: 'sides-differ',
    where: { piece: id, field: 'piece' },
    actual: `left and right of the ${id} are not the same: ${difference}`,
    expected: `exact mirror images, within ${ALIKE} mm`,
    hint: 'make the same corrections on both sides, or void the one-sided ones; else leave left and right apart',
  }
}
