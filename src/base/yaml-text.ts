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
