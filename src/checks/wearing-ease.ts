import type { MeasureName } from '../body/measure.ts'
import type { MeasureRow } from '../drafting/draft.ts'
import type { Check, CheckContext, Found, WrittenCorrection } from './check.ts'
import { sayEase, sayLength } from './words.ts'

/** Measures that go round the body or a limb: below them the garment cannot be closed. */
const GIRTHS: ReadonlySet<MeasureName> = new Set([
  'bust girth',
  'waist girth',
  'upper arm girth',
  'upper arm girth flexed',
  'elbow girth',
  'wrist girth',
])

/** With less than this share of the ease that was asked for, the garment binds (common practice). */
const BINDS = 0.5

/** Room to move: what the pattern measures, less the body, against the ease that was asked for. */
export const wearingEase: Check = {
  name: 'wearing-ease',
  looksAt: 'wearing ease at bust, waist, back, upper arm, elbow and wrist',
  run: (context) => context.measures.flatMap((row) => easeOf(context, row)),
}

/** Whether a measure has less than half of its ease. */
export function bindsOn(row: MeasureRow): boolean {
  return row.ease > 0 && row.drafted - row.body < BINDS * row.ease
}

function easeOf({ units }: CheckContext, row: MeasureRow): Found[] {
  if (!bindsOn(row)) return []
  const left = row.drafted - row.body
  const tooSmall = left < 0 && GIRTHS.has(row.name)
  const side = row.side === 'both' ? '' : ` ${row.side}`
  return [
    {
      code: tooSmall ? 'smaller-than-body' : 'little-ease',
      severity: tooSmall ? 'error' : 'warning',
      where: { field: `body.${row.name}` },
      actual: `${row.name}${side}: ${sayLength(row.drafted, units)} on a body of ${sayLength(row.body, units)}, ease ${sayEase(left, units)}`,
      expected: `ease ${sayEase(row.ease, units)}`,
      tries: triesFor(row, row.ease - left),
      hint: `let out ${row.name.replace(' girth', '')} by ${sayLength(row.ease - left, units)}, or ask for less ease`,
    },
  ]
}

/** What gives a measure `mm` more. */
function triesFor({ name, side }: MeasureRow, mm: number): WrittenCorrection[] {
  const on = side === 'both' ? {} : { side }
  const by = (parts: number) => `${(Math.ceil((10 * mm) / parts) / 10).toFixed(1)} mm`
  const [, part] = /^(upper arm|elbow|wrist) girth\b/.exec(name) ?? []
  if (part !== undefined) return [{ do: 'widen', at: part, by: by(1), ...on }]
  if (name === 'back width' || name === 'front width') return [{ do: name, by: by(2), direction: 'wider', ...on }]
  // A quarter at each of the four edges that are sewn at the sides.
  const sides = { do: 'let out', seam: 'side seam', by: by(4) }
  if (name === 'waist girth') return [{ ...sides, 'taper to': 'underarm' }, sides]
  return name === 'bust girth' ? [sides] : []
}
