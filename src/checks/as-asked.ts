import type { Finding } from '../base/problem.ts'
import type { LengthUnit } from '../base/units.ts'
import { MEASURES } from '../body/measure.ts'
import type { MeasureRow } from '../drafting/draft.ts'
import type { Check } from './check.ts'
import { bindsOn } from './wearing-ease.ts'
import { sayAngle, sayLength } from './words.ts'

/** A measure taken twice differs by a quarter of an inch, mm; a slope by a degree (common practice). */
const SAME_LENGTH = 25.4 / 4
const SAME_ANGLE = Math.PI / 180

/** The pattern still measures what was asked for: what fittings changed is said, so that it was meant. */
export const asAsked: Check = {
  name: 'as-asked',
  looksAt: 'measures of the pattern against those asked for',
  mild: true,
  run: ({ measures, units }) => measures.flatMap((row) => (bindsOn(row) ? [] : compared(row, units))),
}

function compared(row: MeasureRow, units: LengthUnit): Finding[] {
  const angle = MEASURES[row.name].kind === 'angle'
  if (Math.abs(row.drafted - row.asked) <= (angle ? SAME_ANGLE : SAME_LENGTH)) return []
  const say = (value: number) => (angle ? sayAngle(value) : sayLength(value, units))
  const side = row.side === 'both' ? '' : ` ${row.side}`
  return [
    {
      code: 'not-as-asked',
      severity: 'note',
      where: { field: `body.${row.name}` },
      actual: `${row.name}${side}: ${say(row.drafted)} on the pattern, ${say(row.asked)} asked`,
      expected: `${say(row.asked)}, as asked`,
      hint: 'right if a fitting meant it; if not, look for the correction on the alteration slip',
    },
  ]
}
