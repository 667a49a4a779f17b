import { columnsOf } from './columns.ts'
import type { Style } from './terminal.ts'

/** Tables fit into this many columns: a terminal beside the pattern, or a sheet of paper. */
export const WIDTH = 100

export interface Column {
  readonly title: string
  readonly align?: 'left' | 'right'
}

/** One cell: text, or text with a color of its own. */
export type Cell = string | { readonly text: string; readonly paint: (text: string) => string }

/**
 * A table as lines of at most WIDTH columns, titles first, two spaces between columns, texts and numbers padded
 * to their column. The last column that is aligned left is cut short where the table would not fit.
 */
export function table(columns: readonly Column[], rows: readonly (readonly Cell[])[], style: Style): string[] {
  const widths = columns.map((column, i) => Math.max(column.title.length, ...rows.map((row) => textOf(row[i]).length)))
  const over = widths.reduce((sum, w) => sum + w + 2, 0) - WIDTH
  const last = columns.findLastIndex((column) => column.align !== 'right')
  if (over > 0 && last >= 0) widths[last] = Math.max((columns[last]?.title ?? '').length, (widths[last] ?? 0) - over)
  const line = (cells: readonly Cell[], paint: (text: string) => string) =>
    `  ${cells.map((cell, i) => painted(cell, widths[i] ?? 0, columns[i]?.align, paint)).join('  ')}`.trimEnd()
  return [
    line(
      columns.map((c) => c.title),
      style.quiet,
    ),
    ...rows.map((row) => line(row, (text) => text)),
  ]
}

/** Text broken at spaces into lines of at most `width`, the further ones behind `indent`. */
export function wrapped(text: string, width: number, indent = ''): string[] {
  const lines: string[] = []
  let line = ''
  for (const word of text.split(' ')) {
    const prefix = lines.length > 0 ? indent : ''
    if (line !== '' && columnsOf(prefix + line) + 1 + columnsOf(word) > width) {
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
