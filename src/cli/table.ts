import type { Style } from './terminal.ts'

/**
 * Tables fit into this many columns: the terminal's, up to a sheet of paper; COLUMNS says how many where no terminal
 * does.
 */
export const WIDTH = widthFrom(process.stdout.columns ?? Number(process.env.COLUMNS))

function widthFrom(columns: number): number {
  return columns > 0 ? Math.max(60, Math.min(100, columns)) : 100
}

export interface Column {
  readonly title: string
  readonly align?: 'left' | 'right'
}

/** One cell: text, or text with a color of its own. */
export type Cell = string | { readonly text: string; readonly paint: (text: string) => string }

/**
 * A table as lines of at most WIDTH columns, titles first, two spaces between columns, texts and numbers padded
 * to their column. The widest of the columns aligned left is wrapped where the table would not fit.
 */
export function table(columns: readonly Column[], rows: readonly (readonly Cell[])[], style: Style): string[] {
  const widths = columns.map((column, i) => Math.max(column.title.length, ...rows.map((row) => textOf(row[i]).length)))
  const over = widths.reduce((sum, w) => sum + w + 2, 0) - WIDTH
  const texts = columns.flatMap(({ align }, i) => (align === 'right' ? [] : [i]))
  const widest = texts.reduce((best, i) => ((widths[i] ?? 0) > (widths[best] ?? 0) ? i : best), texts[0] ?? 0)
  if (over > 0 && texts.length > 0) widths[widest] = Math.max(LEAST, (widths[widest] ?? 0) - over)
  const line = (cells: readonly Cell[], paint: (text: string) => string) =>
    `  ${cells.map((cell, i) => painted(cell, widths[i] ?? 0, columns[i]?.align, paint)).join('  ')}`.trimEnd()
  const lines = (cells: readonly Cell[]) => {
    const parts = texts.map((i) => [i, wrapped(textOf(cells[i]), widths[i] ?? 0, INDENT)] as const)
    const count = Math.max(1, ...parts.map(([, part]) => part.length))
    return Array.from({ length: count }, (_, k) =>
      line(
        cells.map((cell, i) => {
          const part = parts.find(([column]) => column === i)?.[1]
          return withText(cell, part === undefined ? (k === 0 ? textOf(cell) : '') : (part[k] ?? ''))
        }),
        (text) => text,
      ),
    )
  }
  return [
    line(
      columns.map((c) => c.title),
      style.quiet,
    ),
    ...rows.flatMap(lines),
  ]
}

/** A wrapped column is not narrower than this. */
const LEAST = 12

/** The further lines of a wrapped cell. */
const INDENT = '  '

function withText(cell: Cell, text: string): Cell {
  return typeof cell === 'string' ? text : { ...cell, text }
}

/** Text broken at spaces into lines of the terminal. */
export function wrappedToWidth(text: string): string[] {
  return wrapped(text, WIDTH)
}

/** Text broken at spaces into lines of at most `width`, the further ones behind `indent`. */
export function wrapped(text: string, width: number, indent = ''): string[] {
  const lines: string[] = []
  let line = ''
  for (const word of text.split(' ')) {
    const prefix = lines.length > 0 ? indent : ''
    if (line !== '' && prefix.length + line.length + 1 + word.length > width) {
      lines.push(prefix + line)
      line = word
    } else line = line === '' ? word : `${line} ${word}`
  }
  return [...lines, (lines.length > 0 ? indent : '') + line]
}

function textOf(cell: Cell | undefined): string {
  return typeof cell === 'string' ? cell : (cell?.text ?? '')
}

function painted(cell: Cell, width: number, align: Column['align'], paint: (text: string) => string): string {
  const text = textOf(cell)
  const fits = text.length > width ? `${text.slice(0, Math.max(0, width - 1))}…` : text
  const padding = ' '.repeat(width - fits.length)
  const colored = (typeof cell === 'string' ? paint : cell.paint)(fits)
  return align === 'right' ? padding + colored : colored + padding
}
