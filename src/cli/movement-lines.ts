import { formatLength, type LengthUnit, type MovementRow } from '../index.ts'
import { bare } from './lengths.ts'
import { type Cell, table, WIDTH, wrapped } from './table.ts'
import type { Style } from './terminal.ts'

/** Estimates of lengths are told no finer than this, mm. */
const COARSE: Readonly<Record<LengthUnit, number>> = { in: 25.4 / 4, cm: 5, mm: 5 }

/** How the sleeves move before and after every fitting; angles are estimates, to whole degrees. */
export function movementLines(rows: readonly MovementRow[], units: LengthUnit, style: Style): string[] {
  if (rows.length === 0) return ['  no sleeve']
  const columns = [
    { title: 'sleeve' },
    { title: 'version' },
    ...['cap height', 'armscye', 'share', 'biceps', 'waist to wrist', 'hangs at'].map((title) => ({
      title,
      align: 'right' as const,
    })),
  ]
  const cells = rows.map((row): Cell[] => [
    row.side === 'both' ? 'pair' : row.side,
    row.version,
    bare(row.capHeight, units),
    bare(row.armscye, units),
    (row.capHeight / row.armscye).toFixed(2),
    bare(row.bicepsWidth, units),
    row.underarmLength === undefined ? '' : bare(row.underarmLength, units),
    `${row.neutralLift.toFixed(0)}°`,
  ])
  const sentences = [lift(rows, units), ...reach(rows, units)]
  return [
    ...table(columns, cells, style),
    ...sentences.flatMap((text) => wrapped(text, WIDTH - 4, '  ').map((line) => `  ${style.quiet(line)}`)),
  ]
}

function lift(rows: readonly MovementRow[], units: LengthUnit): string {
  const last = rows[rows.length - 1] as MovementRow
  const ten = units === 'in' ? '10 mm (3/8 in)' : formatLength(10, units)
  const degrees = (value: number) => `${Math.abs(value).toFixed(0)}°`
  return (
    'Hangs at: how far below level the arm is when the sleeve lies without strain; an estimate, the sleeve taken as a ' +
    `cylinder. ${ten} more cap height and it hangs about ${degrees(last.liftPer10mm)} lower; ${ten} of underarm reach and ` +
    `it lifts about ${degrees(last.liftPer10mmReach)} higher. Waist to wrist is measured under the arm.`
  )
}

/** The back of a body has no sides: the first and the last row tell it before and after. */
function reach(rows: readonly MovementRow[], units: LengthUnit): string[] {
  const before = rows[0]?.reachForward
  const after = rows[rows.length - 1]?.reachForward
  if (!before || !after) return []
  const coarse = (mm: number) => COARSE[units] * Math.round(mm / COARSE[units])
  const least = formatLength(coarse(after.growth.least), units).replace(/ \w+$/, '')
  const most = formatLength(coarse(after.growth.most), units)
  const has = formatLength(Math.max(0, after.ease), units)
  const had = formatLength(Math.max(0, before.ease), units)
  return [
    `Reaching forward: the back grows by about ${least} to ${most}; the ` +
      `pattern has ${has} of ease there${has === had ? '' : ` (${had} in the draft)`}. Sleeves and armscyes give the rest, or the ` +
      `bodice rises. The growth is ${after.source}.`,
  ]
}
