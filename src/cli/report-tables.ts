import type { Finding, LengthUnit, Report, WalkedJoin } from '../index.ts'
import { bare, bareEase, UNIT_WORDS } from './lengths.ts'
import { placeText } from './print-problems.ts'
import { type Cell, table, WIDTH, wrapped } from './table.ts'
import type { Style } from './terminal.ts'

/** The report as a draper reads it, findings first; lines of at most 100 columns. */
export function reportTables(report: Report, units: LengthUnit, style: Style): string {
  const title = [report.performer, report.production, report.version].filter((part) => part).join(' · ')
  const blocks = [
    [style.strong(title), style.quiet(`lengths in ${UNIT_WORDS[units]}; stitching lines, darts closed`)],
    findingLines(report.findings, style),
    [style.strong('Walk'), ...walkTable(report.joins, report.findings, units, style)],
    [style.strong('Measures'), ...measureTable(report, units, style)],
    [style.strong('Allowance used on the mock-up'), ...allowanceTable(report, units, style)],
    [style.strong('Movement'), ...movementTable(report, units, style)],
  ]
  return `${blocks.map((lines) => lines.join('\n')).join('\n\n')}\n`
}

/** Findings, each with what was expected and what to do; a line that says so where there are none. */
export function findingLines(findings: readonly Finding[], style: Style): string[] {
  if (findings.length === 0) return [style.good('No findings.')]
  const counted = (['error', 'warning', 'note'] as const).flatMap((severity) => {
    const count = findings.filter((f) => f.severity === severity).length
    return count === 0 ? [] : [`${count} ${severity}${count === 1 ? '' : 's'}`]
  })
  return [
    style.strong(`Findings: ${counted.join(', ')}`),
    ...findings.flatMap(({ severity, where, actual, expected, hint }) => {
      const paint = severity === 'error' ? style.bad : severity === 'warning' ? style.doubtful : style.quiet
      const place = placeText(where)
      const [first = '', ...rest] = wrapped(`${place === '' ? '' : `${place}: `}${actual}`, WIDTH - 11)
      return [
        `  ${paint(severity.padEnd(9))}${first}`,
        ...[...rest, ...wrapped(`expected: ${expected}`, WIDTH - 11), ...wrapped(`→ ${hint}`, WIDTH - 13, '  ')].map(
          (line) => `${' '.repeat(11)}${line}`,
        ),
      ]
    }),
  ]
}

function walkTable(
  joins: readonly WalkedJoin[],
  findings: readonly Finding[],
  units: LengthUnit,
  style: Style,
): string[] {
  const columns = [
    { title: 'join' },
    ...['sewn', 'to', 'ease', 'asked', 'least', 'most'].map((title) => ({ title, align: 'right' as const })),
    { title: 'verdict' },
  ]
  const rows = joins.flatMap((join): Cell[][] => [
    [
      join.id,
      bare(join.a, units),
      bare(join.b, units),
      bareEase(join.ease, units),
      ...[join.declared.target, join.declared.min, join.declared.max].map((mm) => bareEase(mm, units)),
      verdict(join, findings, style),
    ],
    ...(join.spans.length < 2 ? [] : join.spans).map((span): Cell[] => [
      `  ${span.from} to ${span.to}`,
      bare(span.a, units),
      bare(span.b, units),
      bareEase(span.ease, units),
      '',
      '',
      '',
      '',
    ]),
  ])
  return table(columns, rows, style)
}

/** What the findings say of a join, in a word. */
function verdict({ id, ease, declared }: WalkedJoin, findings: readonly Finding[], style: Style): Cell {
  const mine = findings.filter((f) => f.where.join === id)
  if (mine.length === 0) return { text: 'sews', paint: style.good }
  const paint = mine.some((f) => f.severity === 'error') ? style.bad : style.doubtful
  if (ease < declared.min) return { text: 'too short', paint }
  if (ease > declared.max) return { text: /cap/.test(id) ? 'too full' : 'too long', paint }
  return { text: 'look again', paint }
}

function measureTable(report: Report, units: LengthUnit, style: Style): string[] {
  const columns = [
    { title: 'measure' },
    { title: 'side' },
    ...['body', 'ease', 'asked', 'drafted'].map((title) => ({ title, align: 'right' as const })),
    { title: 'from' },
  ]
  const rows = report.measures.map((row): Cell[] => {
    const angle = row.name === 'shoulder slope'
    const say = (value: number) => (angle ? `${value.toFixed(1)}°` : bare(value, units))
    const give = row.standardError === undefined ? '' : ` ± ${say(row.standardError)}`
    return [
      row.name,
      row.side,
      say(row.body),
      angle ? '' : bareEase(row.ease, units),
      say(row.asked),
      say(row.drafted),
      row.estimated ? { text: `estimated${give}`, paint: style.doubtful } : (row.from ?? 'measured'),
    ]
  })
  return table(columns, rows, style)
}

function allowanceTable(report: Report, units: LengthUnit, style: Style): string[] {
  const used = report.allowances.filter((row) => row.used !== 0)
  if (used.length === 0) return ['  none']
  const columns = [
    { title: 'seam' },
    ...['cut with', 'used', 'left'].map((title) => ({ title, align: 'right' as const })),
  ]
  const rows = used.map((row): Cell[] => [
    `${row.piece}, ${row.seam}`,
    bare(row.cut, units),
    bare(row.used, units),
    row.left < 3 ? { text: bare(row.left, units), paint: style.bad } : bare(row.left, units),
  ])
  return table(columns, rows, style)
}

function movementTable(report: Report, units: LengthUnit, style: Style): string[] {
  const columns = [
    { title: 'sleeve' },
    { title: 'version' },
    ...['cap height', 'armscye', 'share', 'biceps', 'neutral lift', 'cap 10 mm higher'].map((title) => ({
      title,
      align: 'right' as const,
    })),
  ]
  const rows = report.movement.map((row): Cell[] => [
    row.side,
    row.version,
    bare(row.capHeight, units),
    bare(row.armscye, units),
    (row.capHeight / row.armscye).toFixed(2),
    bare(row.bicepsWidth, units),
    `${row.neutralLift.toFixed(1)}°`,
    `+${row.liftPer10mm.toFixed(1)}°`,
  ])
  const note = 'neutral lift: arm below horizontal, atan(π · cap height / biceps), an estimate from a cylinder'
  return [...table(columns, rows, style), style.quiet(`  ${note}`)]
}
