import type { LengthUnit, Report, ReportMeasure } from '../index.ts'
import { findingLines } from './finding-lines.ts'
import { bare, bareEase, UNIT_WORDS } from './lengths.ts'
import { movementLines } from './movement-lines.ts'
import { rounded } from './rounding.ts'
import { type Cell, table } from './table.ts'
import type { Style } from './terminal.ts'
import { capTable, seamTable } from './walk-tables.ts'

/** Less than this left of an allowance is too little to sew, mm. */
const LITTLE = 3

/** The report as a draper reads it, findings first; lines of at most 100 columns, the figures of a line add up. */
export function reportTables(report: Report, units: LengthUnit, style: Style): string {
  const title = [report.performer, report.production, report.version].filter((part) => part).join(' · ')
  const { findings, joins } = report
  const blocks = [
    [style.strong(title), style.quiet(`lengths in ${UNIT_WORDS[units]}; stitching lines, darts closed`)],
    findingLines(findings, style),
    [style.strong('Walk: the sleeve into its armscye'), ...capTable(joins, findings, units, style)],
    [style.strong('Walk: the other seams, back to front'), ...seamTable(joins, findings, units, style)],
    [style.strong('Measures'), ...measureTable(report, units, style)],
    [style.strong('Allowance used on the mock-up'), ...allowanceTable(report, units, style)],
    [style.strong('Movement'), ...movementLines(report.movement, units, style)],
  ]
  return `${blocks.map((lines) => lines.join('\n')).join('\n\n')}\n`
}

function measureTable(report: Report, units: LengthUnit, style: Style): string[] {
  const columns = [
    { title: 'measure' },
    { title: 'side' },
    ...['body', 'ease', 'asked', 'drafted'].map((title) => ({ title, align: 'right' as const })),
    { title: 'from' },
  ]
  const rows = report.measures.map((row): Cell[] => {
    const say = (value: number) => (isAngle(row) ? `${value.toFixed(1)}°` : bare(value, units))
    // To whole millimetres before they are inches, as everywhere that estimates are told.
    const error = row.standardError === undefined || isAngle(row) ? row.standardError : Math.round(row.standardError)
    const give = error === undefined ? '' : ` ± ${say(error)}`
    return [
      row.name,
      row.side,
      ...(isAngle(row) ? [say(row.body), '', say(row.asked), say(row.drafted)] : lengths(row, units)),
      row.estimated ? { text: `estimated${give}`, paint: style.doubtful } : (row.from ?? 'measured'),
    ]
  })
  return table(columns, rows, style)
}

/** What does not show on paper, mm. */
const SAME = 0.05

/** Body and ease make what was asked; so does what was drafted where it is the same. */
function lengths({ body, ease, asked, drafted }: ReportMeasure, units: LengthUnit): string[] {
  const shown = { body: rounded(body, units), ease: rounded(ease, units) }
  const sum = shown.body + shown.ease
  const present = Math.abs(drafted - asked) < SAME ? sum : drafted
  return [bare(shown.body, units), bareEase(shown.ease, units), bare(sum, units), bare(present, units)]
}

function isAngle(row: ReportMeasure): boolean {
  return row.name === 'shoulder slope'
}

function allowanceTable(report: Report, units: LengthUnit, style: Style): string[] {
  const used = report.allowances.filter((row) => row.used !== 0)
  if (used.length === 0) return ['  none']
  const columns = [
    { title: 'seam' },
    ...['cut with', 'used', 'left'].map((title) => ({ title, align: 'right' as const })),
    { title: '' },
  ]
  const rows = used.map((row): Cell[] => {
    const shown = { cut: rounded(row.cut, units), used: rounded(row.used, units) }
    const left = bare(shown.cut - shown.used, units)
    return [
      `${row.piece}, ${row.seam}`,
      bare(shown.cut, units),
      bare(shown.used, units),
      left,
      row.left < LITTLE ? { text: row.left < 0 ? 'more than there was' : 'hardly any left', paint: style.bad } : '',
    ]
  })
  return table(columns, rows, style)
}
