import { formatLength } from '../../base/format-length.ts'
import type { LengthUnit } from '../../base/units.ts'
import type { JoinPart, Pattern } from '../../pattern/pattern.ts'
import { pieceOf, seamLength, seamOf } from '../../pattern/seam.ts'
import { joinLengths } from '../../pattern/sewn-line.ts'

/** What a stitching line is, how long it is with darts closed, and each join it is sewn in: its partner and the ease. */
export function seamWords(pattern: Pattern, piece: string, seam: string, units: LengthUnit): string {
  const say = (mm: number) =>
    units === 'mm' ? formatLength(mm, 'mm') : `${formatLength(mm, units)} (${formatLength(mm, 'mm')})`
  const { name } = pieceOf(pattern, piece)
  const own = `${name}, ${seam}: ${say(seamLength(seamOf(pieceOf(pattern, piece), seam)))}`
  const isHere = (part: JoinPart) => part.piece === piece && part.seam === seam
  const joins = pattern.joins.flatMap((join) => {
    const { a, b, ease } = joinLengths(pattern, join)
    const side = join.a.some(isHere) ? join.a : join.b.some(isHere) ? join.b : undefined
    if (!side) return []
    const [other, length] = side === join.a ? [join.b, b] : [join.a, a]
    // In a join of several parts the seam is one of them: then the whole line is told.
    const whole =
      side.length > 1
        ? `with ${named(
            side.filter((part) => !isHere(part)),
            pattern,
          )} ${say(side === join.a ? a : b)}, `
        : ''
    return [`${whole}sewn to ${named(other, pattern)} ${say(length)}, ${easeWords(ease, units)}`]
  })
  return [own, ...joins].join('; ')
}

function named(parts: readonly JoinPart[], pattern: Pattern): string {
  return parts.map((part) => `${pieceOf(pattern, part.piece).name}, ${part.seam}`).join(' and ')
}

function easeWords(ease: number, units: LengthUnit): string {
  const amount = formatLength(Math.abs(ease), units)
  return /^0 /.test(amount) ? 'no ease' : ease > 0 ? `ease ${amount}` : `short by ${amount}`
}
