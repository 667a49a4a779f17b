import type { Finding } from '../base/problem.ts'
import { CLOTH_EASE } from '../drafting/defaults.ts'
import { EASE_STITCHING } from '../pattern/ease-stitching.ts'
import type { Piece } from '../pattern/piece.ts'
import { isCapJoin } from '../pattern/sewn-line.ts'
import { baseName, namedSide } from '../pattern/side-names.ts'
import type { Check, CheckContext } from './check.ts'
import { type WalkedJoin, walkJoin } from './walk-join.ts'
import { sayEase, sayLength } from './words.ts'

/** From this share of what the cloth takes, the ease does not go in by pins alone (common practice). */
const NEAR = 0.8

/** Cap ease against what the cloth takes without gathers; a cap with more than that is `walk`'s to say. */
export const capEase: Check = {
  name: 'cap-ease',
  looksAt: 'cap ease near the most that the cloth takes without gathers',
  mild: true,
  run: (context) => context.pattern.pieces.flatMap((piece) => onSleeve(context, piece)),
}

function onSleeve(context: CheckContext, piece: Piece): Finding[] {
  const { pattern } = context
  const joins = pattern.joins.filter((join) => isCapJoin(join) && join.a.some((part) => part.piece === piece.id))
  const walked = joins.flatMap((join) => walkJoin(pattern, join) ?? [])
  const sides = [...new Set(walked.map(({ id }) => namedSide(id)))]
  return sides.flatMap((side) => {
    const halves = walked.filter(({ id }) => namedSide(id) === side)
    return nearly(context, piece, halves)
  })
}

function nearly({ units, cloth }: CheckContext, piece: Piece, halves: readonly WalkedJoin[]): Finding[] {
  const sum = (of: (half: WalkedJoin) => number) => halves.reduce((total, half) => total + of(half), 0)
  const ease = sum((half) => half.ease)
  const armscye = sum((half) => half.b)
  const most = cloth === undefined ? sum((half) => half.declared.max) : CLOTH_EASE[cloth].most * armscye
  if (ease <= NEAR * most || halves.some((half) => half.ease > half.declared.max)) return []
  const percent = (mm: number) => `${Math.round((100 * mm) / armscye)} %`
  const eases = halves.map((half) => `${baseName(half.id)} ${sayEase(half.ease, units)}`).join(', ')
  const rows = EASE_STITCHING.map((mm) => sayLength(mm, units)).join(' and ')
  return [
    {
      code: 'ease-stitching',
      severity: 'note',
      where: { piece: piece.id, seam: 'cap' },
      actual: `ease ${eases}, ${percent(ease)} of the armscye; ${cloth ?? 'the cloth'} takes ${percent(most)} without gathers`,
      expected: `less than ${percent(NEAR * most)} to go in by pins alone`,
      hint: `run two rows of ease stitching from notch to notch over the shoulder, ${rows} outside the stitching line; draw them up, spread and steam before the sleeve is set`,
    },
  ]
}
