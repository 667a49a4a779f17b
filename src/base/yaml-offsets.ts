import { isMap, isScalar, isSeq, type Node, type Pair, type YAMLMap, type YAMLSeq } from 'yaml'
import { normaliseName } from './names.ts'
import type { TreePath } from './yaml-document.ts'
import type { Indents } from './yaml-text.ts'

/** A list or a section, with brackets or without. */
export type Collection = YAMLMap<Node, Node | null> | YAMLSeq<Node | null>

/** Where a collection's entries begin: columns from 0 of its keys or dashes, and how far content is behind a dash. */
const USUAL: Indents = { list: 2, entry: 2 }

interface SourceToken {
  readonly type: string
  readonly offset: number
  readonly source: string
}

/** How lists stand under their names in this file: by the first that is not between brackets. */
export function indentsOf(text: string, root: Node | null): Indents {
  const found: Indents[] = []
  const visit = (node: Node | null | undefined, key: number): void => {
    if (isSeq<Node | null>(node)) {
      if (!node.flow && node.items.length > 0) {
        const list = columnOf(text, firstOf(node)) - key
        found.push({ list, entry: entryIndent(text, node) ?? USUAL.entry })
      }
      for (const item of node.items) visit(item, 0)
    } else if (isMap<Node, Node | null>(node)) {
      for (const pair of node.items) visit(pair.value, columnOf(text, pair.key.range?.[0] ?? 0))
    }
  }
  visit(root, 0)
  return found[0] ?? USUAL
}

export function entryIndent(text: string, list: YAMLSeq<Node | null> | Collection): number | undefined {
  const item = list.items[list.items.length - 1] as Node | null | undefined
  if (!item?.range) return undefined
  const indent =
    columnOf(text, isCollection(item) && !item.flow ? firstOf(item) : item.range[0]) -
    columnOf(text, firstOf(list as Collection))
  return indent >= 2 ? indent : undefined
}

/** Where the first key or dash of a collection without brackets stands. */
export function firstOf(node: Collection): number {
  if (isMap<Node>(node)) return node.items[0]?.key.range?.[0] ?? node.range?.[0] ?? 0
  return dashes(node)[0] ?? node.range?.[0] ?? 0
}

function dashes(node: Collection): number[] {
  const { items = [] } = (node.srcToken ?? {}) as {
    readonly items?: readonly { readonly start: readonly SourceToken[] }[]
  }
  return items.flatMap(({ start }) =>
    start.filter((token) => token.type === 'seq-item-ind').map((token) => token.offset),
  )
}

export function colonEnd(pair: Pair<Node, Node | null>): number | undefined {
  const { sep = [] } = ((pair as { srcToken?: unknown }).srcToken ?? {}) as { readonly sep?: readonly SourceToken[] }
  const colon = sep.find((token) => token.type === 'map-value-ind')
  return colon === undefined ? undefined : colon.offset + colon.source.length
}

/** Behind the last letter that is no comment. */
export function contentEnd(node: Node): number {
  return isCollection(node) && !node.flow ? lastEnd(node) : (node.range?.[1] ?? 0)
}

/** Behind the last entry of a collection. */
export function lastEnd(node: Collection): number {
  const end = node.range?.[1] ?? 0
  if (isMap<Node, Node | null>(node)) {
    const pair = node.items[node.items.length - 1]
    if (!pair) return end
    return isThere(pair.value) ? contentEnd(pair.value) : (colonEnd(pair) ?? pair.key.range?.[1] ?? end)
  }
  const item = node.items[node.items.length - 1]
  return isThere(item) ? contentEnd(item) : (dashes(node).at(-1) ?? end - 1) + 1
}

function isThere(node: Node | null | undefined): node is Node {
  return node?.range !== undefined && node.range !== null && node.range[1] > node.range[0]
}

export function isCollection(node: Node | null | undefined): node is Collection {
  return isMap(node) || isSeq(node)
}

export function keyOf(pair: Pair<Node, Node | null>): string {
  return isScalar(pair.key) ? normaliseName(String(pair.key.value)) : ''
}

export function nodeAt(node: Node | null, path: TreePath): Node | null | undefined {
  let found: Node | null | undefined = node
  for (const part of path) {
    if (isSeq<Node | null>(found) && typeof part === 'number') found = found.items[part]
    else if (isMap<Node, Node | null>(found)) found = found.items.find((pair) => keyOf(pair) === part)?.value
    else return undefined
  }
  return found
}

export function columnOf(text: string, offset: number): number {
  return offset - (text.lastIndexOf('\n', offset - 1) + 1)
}

/** Where the next line begins; a block of text ends there already. */
export function lineEnd(text: string, offset: number): number {
  if (text[offset - 1] === '\n') return offset
  const next = text.indexOf('\n', offset)
  return next < 0 ? text.length : next + 1
}

/** Past the comments that follow at once and stand at this column or further in: they belong to what is before. */
export function afterComments(text: string, offset: number, column: number): number {
  const line = /^( *)#.*(?:\n|$)/.exec(text.slice(offset))
  return line && line[0] !== '' && (line[1] ?? '').length >= Math.max(column, 1)
    ? afterComments(text, offset + line[0].length, column)
    : offset
}
