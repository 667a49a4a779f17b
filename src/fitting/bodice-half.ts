import type { BodySide } from '../base/side.ts'
import type { Path } from '../geometry/path.ts'
import { reversePath } from '../geometry/path.ts'
import { type Point, scale } from '../geometry/point.ts'
import type { Pattern } from '../pattern/pattern.ts'
import type { Piece, Seam } from '../pattern/piece.ts'
import { pieceOf, seamEnd, seamLength, seamOf, seamStart } from '../pattern/seam.ts'
import { baseName, namedSide } from '../pattern/side-names.ts'
import type { Half } from './position.ts'
import type { CorrectionSide } from './record.ts'
import { seamLines } from './seam-names.ts'
import { nextSeam } from './seam-run.ts'

/** One half of a bodice front or back: of a pair, of a piece on the fold, or of one that was opened. */
export interface BodiceHalf {
  readonly piece: Piece
  readonly half: Half
  readonly side: BodySide | 'both'
  /** Whether its seams run as drafted: waist, side seam up, armscye, shoulder, neckline, center down; else mirrored. */
  readonly asDrafted: boolean
}

/** The halves of the bodice for one side of the body or both; of the front, the back, or of both (front first). */
export function bodiceHalves(
  pattern: Pattern,
  side: CorrectionSide,
  which: readonly Half[] = ['front', 'back'],
): BodiceHalf[] {
  return which.flatMap((half) =>
    seamLines(pattern, `${half} armscye`, side).map((line): BodiceHalf => {
      const piece = pieceOf(pattern, line.piece)
      const armscye = line.seams[0] as string
      return { piece, half, side: line.side, asDrafted: baseName(nextSeam(piece, armscye).id) === 'shoulder' }
    }),
  )
}

/** Ids of the pieces that the bodice's halves are on. */
export function bodicePieces(pattern: Pattern, side: CorrectionSide, which?: readonly Half[]): string[] {
  return [...new Set(bodiceHalves(pattern, side, which).map(({ piece }) => piece.id))]
}

/** The id of a half's seam: `armscye`, or `armscye left` on a piece that was opened. */
export function seamIdOf({ piece, side }: BodiceHalf, name: string): string {
  if (piece.side !== 'whole') return name
  const found = piece.seams.find((seam) => baseName(seam.id) === name && namedSide(seam.id) === side)
  return found?.id ?? name
}

/** A half's seam by its name before any split; throws where there is none. */
export function halfSeam(half: BodiceHalf, name: string): Seam {
  return seamOf(half.piece, seamIdOf(half, name))
}

/** The center edge of a half; undefined where the piece was opened there. */
export function centerSeam(half: BodiceHalf): Seam | undefined {
  return half.piece.seams.find((seam) => seam.id === `center ${half.half}`)
}

/** The ends of a seam in the order of the draft, whichever way it runs: a side seam from the waist, an armscye from the underarm. */
export function draftedEnds(half: BodiceHalf, name: string): readonly [Point, Point] {
  const seam = halfSeam(half, name)
  return half.asDrafted ? [seamStart(seam), seamEnd(seam)] : [seamEnd(seam), seamStart(seam)]
}

/** A place counted in the order of the draft as a place along the seam, and back. */
export function asDraftedPlace(half: BodiceHalf, name: string, along: number): number {
  return half.asDrafted ? along : seamLength(halfSeam(half, name)) - along
}

/** The parts of a seam in the order and direction of the draft. */
export function draftedParts(half: BodiceHalf, name: string): readonly Path[] {
  const { parts } = halfSeam(half, name)
  return half.asDrafted ? parts : [...parts].reverse().map(reversePath)
}

/** The seam with parts that were given in the order and direction of the draft; untouched ones may be passed as they are. */
export function withDraftedParts(half: BodiceHalf, name: string, parts: readonly Path[]): Seam {
  const seam = halfSeam(half, name)
  if (half.asDrafted) return { ...seam, parts }
  return { ...seam, parts: [...parts].reverse().map(reversePath) }
}

/** The unit vector away from the center of the body. */
export function outward(half: BodiceHalf): Point {
  const [, underarm] = draftedEnds(half, 'side seam')
  const [waist] = draftedEnds(half, 'waist')
  return scale({ x: 1, y: 0 }, underarm.x >= waist.x ? 1 : -1)
}
