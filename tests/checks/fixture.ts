import type { CheckContext } from '../../src/checks/check.ts'
import { runChecks } from '../../src/checks/checks.ts'
import { presentMeasures } from '../../src/checks/present-measures.ts'
import type { Draft } from '../../src/drafting/draft.ts'
import { draftPattern } from '../../src/drafting/draft-pattern.ts'
import { splitSides } from '../../src/fitting/split-sides.ts'
import type { Join, Pattern } from '../../src/pattern/pattern.ts'
import type { Piece, Seam } from '../../src/pattern/piece.ts'
import { SIZE_12 } from '../drafting/bodies.ts'

function drafted(): Draft {
  const result = draftPattern(SIZE_12)
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  return result.value
}

/** A draft that every check finds in order. */
export const DRAFT = drafted()

/** The same with every left and right apart. */
export const SPLIT = ['sleeve', 'bodice front', 'bodice back'].reduce(
  (p, id) => splitSides(p, id).pattern,
  DRAFT.pattern,
)

export function contextOf(pattern: Pattern): CheckContext {
  return { pattern, measures: presentMeasures(DRAFT.measures, pattern), units: 'mm' }
}

/** The codes found on a pattern, each once. */
export function codesOn(pattern: Pattern): string[] {
  return [...new Set(runChecks(contextOf(pattern)).map((finding) => finding.code))]
}

export function withPiece(pattern: Pattern, id: string, change: (piece: Piece) => Piece): Pattern {
  return { ...pattern, pieces: pattern.pieces.map((piece) => (piece.id === id ? change(piece) : piece)) }
}

export function withSeam(pattern: Pattern, pieceId: string, seamId: string, change: (seam: Seam) => Seam): Pattern {
  return withPiece(pattern, pieceId, (piece) => ({
    ...piece,
    seams: piece.seams.map((seam) => (seam.id === seamId ? change(seam) : seam)),
  }))
}

export function withJoin(pattern: Pattern, id: string, change: (join: Join) => Join): Pattern {
  return { ...pattern, joins: pattern.joins.map((join) => (join.id === id ? change(join) : join)) }
}

export function pieceNamed(pattern: Pattern, id: string): Piece {
  const piece = pattern.pieces.find((p) => p.id === id)
  if (!piece) throw new Error(`no piece ${id}`)
  return piece
}
