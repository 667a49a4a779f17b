import type { Finding } from '../base/problem.ts'
import { distance } from '../geometry/point.ts'
import type { BodiceHalf } from './bodice-half.ts'
import { WAIST } from './defaults.ts'

/** What a cutter would look at again on the drawn halves: an armscye that bends back, waist darts that are wide. */
export function bodiceFindings(halves: { readonly back: BodiceHalf; readonly front: BodiceHalf }): Finding[] {
  return (['back', 'front'] as const).flatMap((part) => [
    ...bentBack(part, halves[part]),
    ...wideDarts(part, halves[part]),
  ])
}

function bentBack(side: 'back' | 'front', half: BodiceHalf): Finding[] {
  if (half.fair) return []
  return [
    {
      code: 'armscye-bends-back',
      severity: 'warning',
      where: { piece: `bodice ${side}`, seam: 'armscye' },
      actual: `the armscye bends back at the ${side} width line`,
      expected: 'a curve that turns one way from the underarm to the width line',
      hint: `measure ${side} width, shoulder length and shoulder slope again`,
    },
  ]
}

/** Two darts a half at most; what they then take each may be more than lies flat. */
function wideDarts(part: 'back' | 'front', { waist }: BodiceHalf): Finding[] {
  const widest = Math.max(0, ...waist.darts.map(({ mouth }) => distance(...mouth)))
  if (widest <= WAIST.dartMost) return []
  return [
    {
      code: 'waist-darts-wide',
      severity: 'warning',
      where: { piece: `bodice ${part}`, seam: 'waist' },
      actual: `${waist.darts.length} ${part} waist darts of ${widest.toFixed(0)} mm each`,
      expected: `at most ${WAIST.dartMost} mm each`,
      hint: 'measure bust girth and waist girth again; if they are right, cut panels, or give more waist ease',
    },
  ]
}
