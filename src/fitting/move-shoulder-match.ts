import { type Result, success } from '../base/result.ts'
import type { Pattern } from '../pattern/pattern.ts'
import { pieceOf } from '../pattern/seam.ts'
import { baseName } from '../pattern/side-names.ts'
import { capJoins } from './cap-joins.ts'
import { capLine } from './cap-line.ts'
import { type OperationResult, unchanged } from './operation.ts'
import { reMark } from './re-mark.ts'
import { matchPoints, partsBetween, placeAt } from './turn-cap.ts'

export interface MoveShoulderMatchOptions {
  /** The sleeve. */
  readonly piece: string
  /** By how much the place that meets the shoulder seam moves along the cap toward the front, mm; negative toward the back. */
  readonly forward: number
}

/**
 * Moves the shoulder notch of a sleeve along its cap, and with it where the front armscye's part of the cap ends and the
 * back armscye's begins; the outline and all other marks stay. A sleeve that is not sewn in keeps everything. Zero
 * returns the same pattern.
 */
export function moveShoulderMatch(
  pattern: Pattern,
  { piece: id, forward }: MoveShoulderMatchOptions,
): Result<OperationResult> {
  const cap = capLine(pieceOf(pattern, id))
  const [up, down] = cap.halves
  const rising = capJoins(pattern, cap, up)
  const falling = capJoins(pattern, cap, down)
  const present = rising[0] && matchPoints(pattern, cap, rising[0])
  if (forward === 0 || !present || falling.length === 0) return success(unchanged(pattern))
  const total = up.length + down.length
  const shoulder = present.shoulder + (up.name === 'front' ? -forward : forward)
  const place = placeAt(cap, shoulder)
  const marks = cap.piece.notches
    .filter((notch) => baseName(notch.id) === 'shoulder notch')
    .map(({ id: mark }) => ({ id: mark, seam: place.half.seam.id, along: place.along }))
  const joins = pattern.joins.map((join) => {
    if (rising.includes(join)) return { ...join, a: partsBetween(cap, present.underarm, shoulder) }
    if (!falling.includes(join)) return join
    const parts = partsBetween(cap, shoulder, present.underarm + total)
    return { ...join, a: parts.reverse().map((part) => ({ ...part, reversed: true })) }
  })
  return reMark({ ...pattern, joins }, { piece: id, marks })
}
