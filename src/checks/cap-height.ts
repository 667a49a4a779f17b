import type { Finding } from '../base/problem.ts'
import type { Check } from './check.ts'
import { capFigures } from './movement.ts'
import { sayLength } from './words.ts'

/** Below this share of the armscye a cap is too flat for a fitted sleeve: it folds under the arm (common practice). */
const FLAT = 0.2

/** The cap is high enough for its armscye. */
export const capHeight: Check = {
  name: 'cap-height',
  looksAt: 'cap height against the armscye: a fitted sleeve has a quarter to a third',
  replaces: ['cap-low'],
  run: ({ pattern, units }) =>
    pattern.pieces.flatMap((piece): Finding[] => {
      const cap = capFigures(pattern, piece)
      if (!cap || cap.capHeight >= FLAT * cap.armscye) return []
      const share = (cap.capHeight / cap.armscye).toFixed(2)
      return [
        {
          code: 'cap-flat',
          severity: 'warning',
          where: { piece: piece.id },
          actual: `cap height ${sayLength(cap.capHeight, units)} on an armscye of ${sayLength(cap.armscye, units)}: ${share}`,
          expected: `${FLAT} of the armscye or more, at best 0.25 to 0.35`,
          hint: 'take width from the upper arm, lower the underarm of the bodice, or accept a sleeve that folds under the arm when it hangs',
        },
      ]
    }),
}
