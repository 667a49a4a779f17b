import { columnsOf } from './columns.ts'
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
  const widths = fitting(columns, rows)
  const line = (cells: readonly Cell[], paint: (text: string) => string) =>
    `  ${cells.map((cell, i) => painted(cell, widths[i] ?? 0, columns[i]?.align, paint)).join('  ')}`.trimEnd()
  const broken = (cell: Cell | undefined, i: number, indent: string) => wrapped(textOf(cell), widths[i] ?? 0, indent)
  const lines = (cells: readonly Cell[]) => {
    const parts = cells.map((cell, i) => broken(cell, i, columns[i]?.align === 'right' ? '' : INDENT))
    const count = Math.max(1, ...parts.map((part) => part.length))
    return Array.from({ length: count }, (_, k) =>
      line(
        cells.map((cell, i) => withText(cell, parts[i]?.[k] ?? '')),
        (text) => text,
      ),
    )
  }
  const titles = columns.map(({ title }, i) => broken(title, i, ''))
  const high = Math.max(1, ...titles.map((part) => part.length))
  return [
    // Titles stand on the line above the first row.
    ...Array.from({ length: high }, (_, k) =>
      line(
        titles.map((part) => part[k - high + part.length] ?? ''),
        style.quiet,
      ),
    ),
    ...rows.flatMap(lines),
  ]
}

/** Widths that fit: as wide as their cells, less, one by one, where words can be broken into lines. */
function fitting(columns: readonly Column[], rows: readonly (readonly Cell[])[]): number[] {
  const cellsOf = (i: number) => rows.map((row) => textOf(row[i]))
  const widths = columns.map(({ title }, i) => Math.max(title.length, ...cellsOf(i).map((text) => text.length)))
  const least = columns.map(({ title, align }, i) => {
    const word = Math.max(...title.split(' ').map((part) => part.length))
    const cell = Math.max(0, ...cellsOf(i).map((text) => text.length))
    return Math.max(word, align === 'right' ? cell : Math.min(cell, LEAST))
  })
  const room = (i: number) => (widths[i] ?? 0) - (least[i] ?? 0)
  const total = () => widths.reduce((sum, width) => sum + width + 2, 0)
  while (total() > WIDTH) {
    const roomiest = widths.reduce((best, _, i) => (room(i) > room(best) ? i : best), 0)
    if (room(roomiest) <= 0) break
    widths[roomiest] = (widths[roomiest] ?? 0) - 1
  }
  return widths
}

/** Words are not broken into lines narrower than this. */
const LEAST = 9

/** The further lines of a wrapped cell. */
const INDENT = '  '

function withText(cell: Cell, text: string): Cell {
  return typeof cell === 'string' ? text : { ...cell, text }
}

/** Text broken at spaces into lines of the terminal. */
export function wrappedToWidth(text: string): string[] {
  return wrapped(text, WIDTH)
}

/** Text broken at spaces into lines of at most `width`, all as far in as the first, the further ones behind `indent` too. */
export function wrapped(text: string, width: number, indent = ''): string[] {
  const words = text.trimStart()
  const lead = text.slice(0, text.length - words.length)
  const lines: string[] = []
  let line = ''
  const prefix = () => (lines.length > 0 ? lead + indent : lead)
  for (const word of words.split(' ')) {
    if (line !== '' && columnsOf(prefix() + line) + 1 + columnsOf(word) > width) {
      lines.push(prefix() + line)
      line = word
    } else line = line === '' ? word : `${line} ${word}`
  }
  return [...lines, prefix() + line]
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
