import type { Check, Found } from './check.ts'
import { capFigures } from './movement.ts'
import { onSide } from './tries-for-join.ts'
import { sayLength } from './words.ts'

/** Below this share of the armscye a cap is too flat for a fitted sleeve: it folds under the arm (common practice). */
const FLAT = 0.2

/** What is tried off the upper arm, mm: the cap keeps its length and rises. */
const NARROWINGS = [5, 10, 15, 20, 25, 30, 40] as const

/** The cap is high enough for its armscye. */
export const capHeight: Check = {
  name: 'cap-height',
  looksAt: 'cap height against the armscye: a fitted sleeve has a quarter to a third',
  mild: true,
  replaces: ['cap-low'],
  run: ({ pattern, units }) =>
    pattern.pieces.flatMap((piece): Found[] => {
      const cap = capFigures(pattern, piece)
      if (!cap || cap.capHeight >= FLAT * cap.armscye) return []
      const share = (cap.capHeight / cap.armscye).toFixed(2)
      return [
        {
          code: 'cap-flat',
          severity: 'warning',
          where: { piece: piece.id },
          actual: `cap height ${sayLength(cap.capHeight, units)} on an armscye of ${sayLength(cap.armscye, units)}: ${share}`,
          tries: NARROWINGS.map((mm) => ({ do: 'narrow', at: 'upper arm', by: `${mm} mm`, ...onSide(piece) })),
          expected: `${FLAT} of the armscye or more, at best 0.25 to 0.35`,
          hint: 'take width from the upper arm, lower the underarm of the bodice, or accept a sleeve that folds under the arm when it hangs',
        },
      ]
    }),
}
