import type { Tree } from './yaml-document.ts'

/** What may stand without quotes, in a block and between brackets: begins with no mark of YAML's and holds none. */
const PLAIN = /^(?![-?:]\s)[^\s!&*%@`'"#,[\]{}|>:?][^,[\]{}:#\r\n]*(?<!\s)$/

/** Words that mean nothing at all to `readYaml`, unless they are in quotes. */
const BLANK = /^(?:|~|null)$/i

/** A text as a YAML scalar that `readYaml` reads back as it is, with quotes only where it needs them. */
export function scalarText(text: string): string {
  return PLAIN.test(text) && !BLANK.test(text) && !/^(?:---|\.\.\.)/.test(text) ? text : JSON.stringify(text)
}

/** A tree as YAML in one line: lists and sections in brackets. What is null is left blank. */
export function flowText(tree: Tree): string {
  if (tree === null) return ''
  if (typeof tree === 'string') return scalarText(tree)
  if (Array.isArray(tree)) return tree.length === 0 ? '[]' : `[ ${tree.map(flowText).join(', ')} ]`
  const entries = Object.entries(tree).map(([key, value]) => `${scalarText(key)}: ${flowText(value)}`.trimEnd())
  return entries.length === 0 ? '{}' : `{ ${entries.join(', ')} }`
}

/** Columns from a name to the dashes of its list, and from a dash to what stands behind it. */
export interface Indents {
  readonly list: number
  readonly entry: number
}

/** A list as lines that begin at a column: an entry behind each dash; lists of the names in `block` likewise. */
export function blockLines(value: Tree, column: number, indents: Indents, block: readonly string[]): string[] {
  if (!Array.isArray(value)) return [`${' '.repeat(column)}${flowText(value)}`]
  const dash = `${' '.repeat(column)}-${' '.repeat(indents.entry - 1)}`
  const inner = column + indents.entry
  return value.flatMap((entry: Tree) =>
    sectionLines(entry, inner, indents, block).map((line, i) => (i === 0 ? dash + line.slice(inner) : line)),
  )
}

function sectionLines(entry: Tree, column: number, indents: Indents, block: readonly string[]): string[] {
  const margin = ' '.repeat(column)
  if (typeof entry !== 'object' || entry === null || Array.isArray(entry)) return [`${margin}${flowText(entry)}`]
  return Object.entries(entry).flatMap(([key, value]: [string, Tree]) =>
    Array.isArray(value) && block.includes(key)
      ? [`${margin}${scalarText(key)}:`, ...blockLines(value, column + indents.list, indents, block)]
      : [`${margin}${scalarText(key)}: ${flowText(value)}`],
  )
}
