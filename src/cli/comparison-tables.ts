import {
  formatLength,
  type LengthUnit,
  type MadePattern,
  type PieceComparison,
  type SeamMove,
  sayPlace,
  type VersionComparison,
} from '../index.ts'
import { bare, bareEase, UNIT_WORDS } from './lengths.ts'
import type { Written } from './output.ts'
import { rounded } from './rounding.ts'
import { fileLines } from './summary.ts'
import { table, WIDTH, wrapped } from './table.ts'
import type { Style } from './terminal.ts'

/** Two versions as a draper compares them: what moved, how the joins stand, what did not change; at most 100 columns. */
export function comparisonTables(
  made: MadePattern,
  comparison: VersionComparison,
  written: Written,
  style: Style,
): string {
  const { performer, production, units } = made.performer
  const { from, to, seams, joins, pieces } = comparison
  const what = made.versions.length === 1 ? 'no fitting yet: there is only the draft' : `from ${from} to ${to}`
  const title = [performer, production, what].filter((part) => part).join(' · ')
  const moved = seams.filter((seam) => seam.move > 0)
  const blocks = [
    [style.strong(title), style.quiet(`lengths in ${UNIT_WORDS[units]}; stitching lines, darts closed`)],
    [style.strong('Moved'), ...(moved.length === 0 ? ['  nothing'] : moveTable(moved, units, style))],
    ...(joins.length === 0 ? [] : [[style.strong('Joins'), ...joinTable(comparison, units, style)]]),
    [style.strong('Unchanged'), ...pieces.flatMap(unchangedLines)],
    fileLines({ ...written, left: [] }, style),
  ]
  return `${blocks.map((lines) => lines.join('\n')).join('\n\n')}\n`
}

/** A row for each seam, and under it where each stretch of it moved most. */
function moveTable(moved: readonly SeamMove[], units: LengthUnit, style: Style): string[] {
  const columns = [
    { title: 'seam' },
    ...['most', 'before', 'after', 'longer'].map((title) => ({ title, align: 'right' as const })),
  ]
  const rows = moved.map((row) => [
    `${row.piece}, ${row.seam}`,
    finely(row.move, units),
    bare(row.before, units),
    bare(row.after, units),
    longer(row.before, row.after, units),
  ])
  const say = (mm: number) => formatLength(mm, units)
  const [head = '', ...lines] = table(columns, rows, style)
  const places = moved.map(({ peaks }) =>
    peaks.map(({ move, way, place }) => `      ${finely(move, units)} ${way} at ${sayPlace(place, say)}`),
  )
  return [head, ...lines.flatMap((line, i) => [line, ...(places[i] ?? []).map(style.quiet)])]
}

/** What a tape's divisions cannot show is said in mm. */
function finely(mm: number, units: LengthUnit): string {
  const text = bare(mm, units)
  return /[1-9]/.test(text) || mm === 0 ? text : `${mm.toFixed(mm < 0.05 ? 2 : 1)} mm`
}

/** The difference of the ends as they are shown beside it; what they do not show is said in mm. */
function longer(before: number, after: number, units: LengthUnit): string {
  const text = bareEase(rounded(after, units) - rounded(before, units), units)
  if (/[1-9]/.test(text)) return text
  const mm = after - before
  return Math.abs(mm) < 0.05 ? 'same' : `${mm < 0 ? '−' : '+'}${Math.abs(mm).toFixed(1)} mm`
}

function joinTable({ joins, from, to }: VersionComparison, units: LengthUnit, style: Style): string[] {
  const columns = [
    { title: 'join' },
    ...[`ease, ${from}`, `ease, ${to}`, 'differs by'].map((title) => ({ title, align: 'right' as const })),
  ]
  const rows = joins.map(({ join, before, after }) => [
    join,
    bareEase(before.ease, units),
    bareEase(after.ease, units),
    longer(before.ease, after.ease, units),
  ])
  return table(columns, rows, style)
}

function unchangedLines(piece: PieceComparison): string[] {
  const { unchanged, changed, added, removed, was } = piece
  const kinds = ['seams', 'darts', 'notches', 'lines', 'landmarks'] as const
  const names = (parts: typeof unchanged) => [...new Set(kinds.flatMap((kind) => parts[kind]))]
  const apart = was === undefined || was === piece.piece ? '' : ` (cut apart from ${was})`
  const all = [changed, added, removed].every((parts) => names(parts).length === 0)
  const text = all ? 'everything' : names(unchanged).join(', ') || 'nothing'
  return wrapped(`${piece.piece}${apart}: ${text}`, WIDTH - 2, '  ').map((line) => `  ${line}`)
}
