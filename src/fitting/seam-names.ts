import type { BodySide } from '../base/side.ts'
import type { Pattern } from '../pattern/pattern.ts'
import type { Piece } from '../pattern/piece.ts'
import { baseName, sideOfSeam } from '../pattern/side-names.ts'
import type { CorrectionSide } from './record.ts'

/** Seams of one piece, by their names before a split. */
interface SeamGroup {
  readonly piece: string
  readonly seams: readonly string[]
}

const front = (seam: string): SeamGroup => ({ piece: 'bodice front', seams: [seam] })
const back = (seam: string): SeamGroup => ({ piece: 'bodice back', seams: [seam] })
const sleeve = (...seams: string[]): SeamGroup => ({ piece: 'sleeve', seams })

/** What a draper calls a stitching line, and the seams that it means. */
export const SEAM_NAMES = {
  cap: [sleeve('front cap', 'back cap')],
  'front cap': [sleeve('front cap')],
  'back cap': [sleeve('back cap')],
  'underarm seam': [sleeve('front underarm seam', 'back underarm seam')],
  'front underarm seam': [sleeve('front underarm seam')],
  'back underarm seam': [sleeve('back underarm seam')],
  wrist: [sleeve('wrist')],
  armscye: [front('armscye'), back('armscye')],
  'front armscye': [front('armscye')],
  'back armscye': [back('armscye')],
  'side seam': [front('side seam'), back('side seam')],
  'front side seam': [front('side seam')],
  'back side seam': [back('side seam')],
  shoulder: [front('shoulder'), back('shoulder')],
  'front shoulder': [front('shoulder')],
  'back shoulder': [back('shoulder')],
  neckline: [front('neckline'), back('neckline')],
  'front neckline': [front('neckline')],
  'back neckline': [back('neckline')],
  waist: [front('waist'), back('waist')],
  'front waist': [front('waist')],
  'back waist': [back('waist')],
  'center front': [front('center front')],
  'center back': [back('center back')],
} as const satisfies Record<string, readonly SeamGroup[]>

/** What a draper calls a stitching line: `cap`, `front cap`, `waist`. */
export type SeamName = keyof typeof SEAM_NAMES

export const SEAM_NAME_LIST = Object.keys(SEAM_NAMES) as readonly SeamName[]

/** Seams of a piece that are moved as one line. */
export interface SeamLine {
  /** Id of the piece. */
  readonly piece: string
  /** Ids of its seams, in the order of the outline. */
  readonly seams: readonly string[]
  /** The wearer's side that they are of, or both. */
  readonly side: BodySide | 'both'
}

/**
 * The lines that a name means on a pattern, for one side of the body or both: seams that follow each other on a
 * piece make one line, in the order of the outline. A piece that is not split yet counts for both sides.
 */
export function seamLines(pattern: Pattern, name: SeamName, side: CorrectionSide): SeamLine[] {
  return SEAM_NAMES[name].flatMap((group) =>
    pattern.pieces
      .filter((piece) => baseName(piece.id) === group.piece)
      .flatMap((piece) => linesOf(piece, group, side)),
  )
}

function linesOf(piece: Piece, group: SeamGroup, side: CorrectionSide): SeamLine[] {
  const wanted = (id: string) => {
    if (!(group.seams as readonly string[]).includes(baseName(id))) return false
    const its = sideOfSeam(piece, id)
    return side === 'both' || its === 'both' || its === side
  }
  const chains: string[][] = []
  for (const seam of piece.seams) {
    const last = chains[chains.length - 1]
    const index = piece.seams.indexOf(seam)
    const before = piece.seams[index - 1]
    if (!wanted(seam.id)) continue
    if (last && before && last[last.length - 1] === before.id) last.push(seam.id)
    else chains.push([seam.id])
  }
  // The outline closes: a chain at its end may go on at its start.
  const first = chains[0]
  const last = chains[chains.length - 1]
  if (chains.length > 1 && first && last && first[0] === piece.seams[0]?.id && last.at(-1) === piece.seams.at(-1)?.id) {
    chains[0] = [...last, ...first]
    chains.pop()
  }
  return chains.map((seams) => ({ piece: piece.id, seams, side: lineSide(piece, seams) }))
}

function lineSide(piece: Piece, seams: readonly string[]): BodySide | 'both' {
  const sides = new Set(seams.map((seam) => sideOfSeam(piece, seam)))
  return sides.size === 1 ? ([...sides][0] as BodySide | 'both') : 'both'
}
