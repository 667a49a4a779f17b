import { capital } from '../base/capital.ts'
import { failure, type Result, success } from '../base/result.ts'
import type { BodySide } from '../base/side.ts'
import type { LengthUnit } from '../base/units.ts'
import type { Body } from '../body/body.ts'
import type { Choices } from '../drafting/choices.ts'
import { type DrawnHalf, drawHalf, neckWidthFor } from '../drafting/draw-half.ts'
import type { Pattern } from '../pattern/pattern.ts'
import type { Piece } from '../pattern/piece.ts'
import { baseName, drawnSide, otherSide } from '../pattern/side-names.ts'
import { bodiceSteps } from './bodice-steps.ts'
import { checkSteps } from './check-steps.ts'
import type { PaperOptions } from './paper.ts'
import { sleeveSteps } from './sleeve-steps.ts'
import type { Section } from './step.ts'

export interface ExplainedDraft {
  readonly body: Body
  readonly choices: Choices
  /** The draft of this body with these choices, before any fitting. */
  readonly pattern: Pattern
  readonly units: LengthUnit
}

/**
 * The draft as steps for ruler, set square and curve, a section for each piece (for each half of one that differs left
 * and right), and the checks by hand last. Lengths are those that a ruler shows: sixteenths of an inch or whole millimetres, each
 * measured from where the reader has put the point before, so that roundings do not add up. Problems: those of the draft.
 */
export function explainDraft({ body, choices, pattern, units }: ExplainedDraft): Result<readonly Section[]> {
  const width = neckWidthFor(body, choices)
  const [left, right] = [drawHalf(body.left, choices, width), drawHalf(body.right, choices, width)]
  if (!left.ok || !right.ok) return failure(...[left, right].flatMap((half) => (half.ok ? [] : half.problems)))
  const drawn: Readonly<Record<BodySide, DrawnHalf>> = { left: left.value, right: right.value }

  const section = (piece: Piece, side: BodySide, suffix: string, title: string): Section => {
    const standard = { ...piece, id: baseName(piece.id) }
    const options: PaperOptions = { units, mirrored: side !== drawnSide(standard), suffix }
    const source = { half: body[side], choices }
    const { bodice, sleeve } = drawn[side]
    const steps =
      standard.id === 'sleeve'
        ? sleeveSteps(sleeve, source, options)
        : bodiceSteps(standard.id === 'bodice back' ? 'back' : 'front', bodice, source, options)
    return { piece: piece.id, title, suffix, steps }
  }
  const sections = pattern.pieces.flatMap((piece) => {
    const name = capital(piece.name)
    if (piece.side === 'left' || piece.side === 'right') return [section(piece, piece.side, '', name)]
    const side = drawnSide(piece)
    if (piece.side !== 'whole') return [section(piece, side, '', piece.side === 'fold' ? `${name}, on the fold` : name)]
    return [side, otherSide(side)].map((each) => section(piece, each, ` ${each}`, `${name}, ${each} half`))
  })
  const alike = pattern.pieces.every((piece) => piece.side === 'pair' || piece.side === 'fold')
  const sides: readonly BodySide[] = alike ? ['right'] : ['left', 'right']
  const checks = sides.map((side): Section => {
    const title = alike ? 'Checks by hand' : `Checks by hand, ${side} side`
    return { piece: 'checks', title, suffix: alike ? '' : ` ${side}`, steps: checkSteps(drawn[side], units) }
  })
  return success([...sections, ...checks])
}
