import type { Problem } from '../base/problem.ts'
import { failure, type Result, success } from '../base/result.ts'
import type { Pattern } from '../pattern/pattern.ts'
import type { Landmark, Notch, Piece } from '../pattern/piece.ts'
import { pieceOf, seamLength, seamOf } from '../pattern/seam.ts'
import { type OperationResult, unchanged } from './operation.ts'
import { IDENTITY } from './position-map.ts'

/** Notches and landmarks to be put elsewhere. */
export interface ReMarkOptions {
  /** Id of the piece. */
  readonly piece: string
  /** New places of notches and of landmarks on seams, by their ids; `seam` where it is another than before. */
  readonly marks: readonly {
    /** Id of the notch or the landmark. */
    readonly id: string
    /** Id of its new seam; the same as before when absent. */
    readonly seam?: string
    /** mm of sewn length from the start of that seam. */
    readonly along: number
  }[]
}

type SeamMark = Extract<Landmark, { readonly seam: string }>

/**
 * Moves notches and balance marks along their seams, mm of sewn length; the stitching lines and all places of the cloth
 * stay. A landmark of the same name on the same seam goes with its notch. The same pattern where nothing moves. Problems:
 * a place off the seam. Throws when there is no such mark.
 */
export function reMark(pattern: Pattern, options: ReMarkOptions): Result<OperationResult> {
  const piece = pieceOf(pattern, options.piece)
  for (const { id } of options.marks) {
    const known = piece.notches.some((n) => n.id === id) || piece.landmarks.some((l) => l.id === id && 'seam' in l)
    if (!known) throw new RangeError(`no mark "${id}" on a seam of ${piece.id}`)
  }
  const problems: Problem[] = []
  const moved = <T extends Notch | SeamMark>(mark: T): T => {
    const wanted = options.marks.find((m) => m.id === mark.id)
    if (!wanted) return mark
    const seam = wanted.seam ?? mark.seam
    const length = seamLength(seamOf(piece, seam))
    const marks = 'marks' in mark ? (mark.marks - 1) * (mark.step ?? 0) : 0
    const ends = [wanted.along, wanted.along + marks]
    if (ends.some((at) => at < -1e-6 || at > length + 1e-6))
      problems.push(offSeam(piece, mark.id, seam, wanted.along, length))
    const along = Math.min(Math.max(wanted.along, 0), length)
    return along === mark.along && seam === mark.seam ? mark : { ...mark, seam, along }
  }
  const notches = piece.notches.map(moved)
  const landmarks = piece.landmarks.map((mark) => ('seam' in mark ? moved(mark) : mark))
  if (problems.length > 0) return failure(...problems)
  if (notches.every((n, i) => n === piece.notches[i]) && landmarks.every((l, i) => l === piece.landmarks[i]))
    return success(unchanged(pattern))
  const now: Piece = { ...piece, notches, landmarks }
  const pieces = pattern.pieces.map((p) => (p === piece ? now : p))
  return success({ pattern: { ...pattern, pieces }, map: IDENTITY, effects: [] })
}

function offSeam(piece: Piece, mark: string, seam: string, along: number, length: number): Problem {
  return {
    code: 'mark-off-seam',
    where: { piece: piece.id, seam },
    actual: `the ${mark} would lie ${along.toFixed(1)} mm along the ${seam}`,
    expected: `a place within its ${length.toFixed(1)} mm`,
    hint: 'move it by less',
  }
}
