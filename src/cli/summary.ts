import { relative } from 'node:path'
import { formatLength, type MadePattern, walkJoins } from '../index.ts'
import { findingLines } from './finding-lines.ts'
import type { Written } from './output.ts'
import { table } from './table.ts'
import type { Style } from './terminal.ts'

/** What `scye draft` says at its end: findings, where the files are, and the figures a draper looks at first. */
export function summary(made: MadePattern, written: Written, style: Style): string {
  const { report } = made
  const title = [report.performer, report.production, report.version].filter((part) => part).join(' · ')
  const blocks = [
    [style.strong(title)],
    ...(report.findings.length > 0 ? [findingLines(report.findings, style)] : []),
    fileLines(written, style),
    figures(made, style),
  ]
  return `${blocks.map((lines) => lines.join('\n')).join('\n\n')}\n`
}

/** Cap height, cap ease front and back, armscye, biceps width and how the sleeve hangs: as drafted, and after the fittings. */
function figures(made: MadePattern, style: Style): string[] {
  const { units } = made.performer
  const versions = [made.versions[0], made.versions.at(-1)].filter((v, i, all) => v && all.indexOf(v) === i)
  const eases = versions.map((v) => new Map(v ? walkJoins(v.pattern).map((join) => [join.id, join.ease]) : []))
  const joins = [...new Set(eases.flatMap((map) => [...map.keys()]))].filter((id) => /^(front|back) cap\b/.test(id))
  const length = (mm: number | undefined) => (mm === undefined ? '' : formatLength(mm, units))
  const rows: string[][] = []
  for (const side of [...new Set(made.report.movement.map((row) => row.side))]) {
    const at = versions.map((v) => made.report.movement.find((row) => row.version === v?.label && row.side === side))
    const name = side === 'both' ? '' : `, ${side}`
    rows.push([`cap height${name}`, ...at.map((row) => length(row?.capHeight))])
    rows.push([`biceps width${name}`, ...at.map((row) => length(row?.bicepsWidth))])
    rows.push([`armscye${name}`, ...at.map((row) => length(row?.armscye))])
    rows.push([`sleeve hangs at${name}`, ...at.map((row) => (row ? `${row.neutralLift.toFixed(0)}°` : ''))])
  }
  // Once the sides are apart, both come from the one join of the draft.
  const joined = joins.filter((id) => !joins.some((other) => other.startsWith(`${id} `)))
  for (const id of joined) {
    const easeIn = (map: ReadonlyMap<string, number>) => map.get(id) ?? map.get(id.replace(/ (left|right)$/, ''))
    rows.push([`ease, ${id}`, ...eases.map((map) => length(easeIn(map)))])
  }
  const columns = [{ title: '' }, ...versions.map((v) => ({ title: v?.label ?? '', align: 'right' as const }))]
  return table(columns, rows, style)
}

/** A folder as it is named from where the user is; whole where it lies elsewhere. */
export function placeShown(folder: string): string {
  const place = relative(process.cwd(), folder) || '.'
  return place.startsWith('..') ? folder : place
}

export function fileLines({ folder, files, replaced, left }: Written, style: Style): string[] {
  const lines = [style.strong(`Written to ${placeShown(folder)}/`)]
  for (const file of files) lines.push(`  ${file}${replaced.includes(file) ? style.quiet('  (replaced)') : ''}`)
  if (left.length > 0) lines.push(style.doubtful(`  left from an earlier run: ${left.join(', ')}`))
  return lines
}
