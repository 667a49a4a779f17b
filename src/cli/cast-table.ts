import type { Finding } from '../index.ts'
import type { CastRow } from './cast-work.ts'
import { type Cell, table } from './table.ts'
import type { Style } from './terminal.ts'

const COLUMNS = [
  { title: 'performer' },
  { title: 'mock-up', align: 'right' as const },
  { title: 'fittings', align: 'right' as const },
  { title: 'status' },
  { title: 'pages', align: 'right' as const },
  { title: 'worst finding' },
]

/** One line for each file: whose it is, how far it has been fitted, whether it can be cut, what is worst and what it prints. */
export function castTable(rows: readonly CastRow[], style: Style): string[] {
  return table(
    COLUMNS,
    rows.map((row) => cells(row, style)),
    style,
  )
}

function cells(row: CastRow, style: Style): Cell[] {
  const { performer, file, mockUp, fittings, pages, status } = row
  const paint = status === 'unusable' || status === 'findings' ? style.bad : style.good
  return [
    performer ?? file,
    mockUp === undefined ? '' : String(mockUp),
    status === 'unusable' ? '' : String(fittings.length),
    { text: status === 'findings' ? 'errors' : status, paint },
    pages.map(({ count }) => count).join(' + '),
    worst(row),
  ]
}

/** What a draper should look at first; a note is nothing to worry about. */
function worst({ problems, findings }: CastRow): string {
  const [problem] = problems
  if (problem) return [problem.where.field, problem.actual].filter((part) => part !== undefined).join(': ')
  const finding = findings.find(({ severity }) => severity !== 'note')
  return finding === undefined ? '' : `${finding.severity}: ${onWhat(finding)}${finding.actual}`
}

function onWhat({ where }: Finding): string {
  const on = where.join ?? [where.piece, where.seam].filter((part) => part !== undefined).join(' ')
  return on === '' ? '' : `${on}, `
}
