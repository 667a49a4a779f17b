import type { Point } from '../geometry/point.ts'
import type { Pattern } from '../pattern/pattern.ts'
import type { Piece, Seam } from '../pattern/piece.ts'
import { seamEnd, seamLength, seamOf } from '../pattern/seam.ts'
import { baseName } from '../pattern/side-names.ts'
import type { CorrectionSide } from './record.ts'
import { seamLines } from './seam-names.ts'

/** One half of a cap, from underarm to crown. */
export interface CapHalf {
  readonly name: 'front' | 'back'
  readonly seam: Seam
  readonly length: number
  /** Whether the seam runs up to the crown; the other half runs down from it. */
  readonly runsUp: boolean
}

/** The cap of one sleeve: the half that runs up to the crown, then the half that runs down, in the piece's own order. */
export interface CapLine {
  readonly piece: Piece
  readonly halves: readonly [CapHalf, CapHalf]
  readonly crown: Point
}

/** The cap of a sleeve piece; throws when the piece has none. */
export function capLine(piece: Piece): CapLine {
  const seams = piece.seams.filter((seam) => /^(front|back) cap$/.test(baseName(seam.id)))
  const [up, down] = seams
  if (!up || !down || seams.length !== 2) throw new RangeError(`${piece.id} has no cap of two halves`)
  return { piece, halves: [half(up, true), half(down, false)], crown: seamEnd(seamOf(piece, up.id)) }
}

function half(seam: Seam, runsUp: boolean): CapHalf {
  return { name: /^front/.test(seam.id) ? 'front' : 'back', seam, length: seamLength(seam), runsUp }
}

/** The sleeves of a pattern for one side of the body or both, by piece id. */
export function sleevesOf(pattern: Pattern, side: CorrectionSide): string[] {
  return seamLines(pattern, 'cap', side)
    .filter((line) => line.seams.length === 2)
    .map((line) => line.piece)
}

/** A place on a half as mm from its underarm, and back. */
export function fromUnderarm(half: CapHalf, along: number): number {
  return half.runsUp ? along : half.length - along
}
