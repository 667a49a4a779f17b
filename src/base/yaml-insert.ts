import { isMap, type Node, parseDocument } from 'yaml'
import { normaliseName } from './names.ts'
import type { Problem } from './problem.ts'
import { failure, type Result, success } from './result.ts'
import { isSection, readYaml, type Tree, type TreePath } from './yaml-document.ts'
import {
  afterComments,
  type Collection,
  colonEnd,
  columnOf,
  contentEnd,
  entryIndent,
  firstOf,
  indentsOf,
  isCollection,
  keyOf,
  lastEnd,
  lineEnd,
  nodeAt,
} from './yaml-offsets.ts'
import { blockLines, flowText, type Indents } from './yaml-text.ts'

/**
 * The text with a value put in at a path that is not there yet: a further entry of a list (its index the number of
 * entries) or of a section, or the value of a name that is blank. Nothing else changes, byte for byte: comments, line
 * ends, indents and brackets stay, and what is put in follows those beside it. `block` names the keys whose lists get
 * lines of their own. Fails with `cannot-insert` where the place is none for it, or the text would then say anything
 * else besides; and where the text cannot be read.
 */
export function insertYaml(
  text: string,
  file: string,
  path: TreePath,
  value: Tree,
  block: readonly string[],
): Result<string> {
  const before = readYaml(text, file)
  if (!before.ok) return before
  const mark = text.startsWith('\ufeff') ? '\ufeff' : ''
  const plain = text.slice(mark.length)
  const document = parseDocument(plain, {
    schema: 'failsafe',
    version: '1.2',
    prettyErrors: false,
    uniqueKeys: false,
    keepSourceTokens: true,
  })
  const refused = () => failure(cannotInsert(before.value.placeOf(path)))
  const parent = nodeAt(document.contents as Node | null, path.slice(0, -1))
  const last = path[path.length - 1]
  if (!isCollection(parent) || last === undefined) return refused()
  const changed = inserted({
    text: plain,
    parent,
    last,
    value,
    block,
    indents: indentsOf(plain, document.contents as Node),
  })
  const after = changed === undefined ? undefined : readYaml(changed, file)
  if (changed === undefined || !after?.ok) return refused()
  const meant = withValue(before.value.tree, path, asRead(value))
  return JSON.stringify(after.value.tree) === JSON.stringify(meant) ? success(mark + changed) : refused()
}

interface Insertion {
  readonly text: string
  readonly parent: Collection
  readonly last: string | number
  readonly value: Tree
  readonly block: readonly string[]
  readonly indents: Indents
}

function inserted(insertion: Insertion): string | undefined {
  const { text, parent, last, value, block, indents } = insertion
  const pair = isMap<Node, Node | null>(parent) ? parent.items.find((item) => keyOf(item) === last) : undefined
  if (pair) {
    const colon = colonEnd(pair)
    // A value that is said to be blank (`~`) would have to be taken out.
    if (colon === undefined || (pair.value?.range && pair.value.range[1] > pair.value.range[0])) return undefined
    if (parent.flow) return spliced(text, colon, ` ${flowText(value)}`)
    const key = columnOf(text, pair.key.range?.[0] ?? 0)
    if (!isBlock(value, String(last), block)) return spliced(text, colon, ` ${flowText(value)}`)
    return splicedLines(text, lineEnd(text, colon), blockLines(value, key + indents.list, indents, block))
  }
  const entry = isMap(parent) ? `${last}: ${flowText(value)}` : flowText(value)
  if (parent.flow) return inBrackets(text, parent, entry)
  const column = columnOf(text, firstOf(parent))
  const lines = isMap(parent)
    ? isBlock(value, String(last), block)
      ? [`${' '.repeat(column)}${last}:`, ...blockLines(value, column + indents.list, indents, block)]
      : [`${' '.repeat(column)}${entry}`]
    : blockLines([value], column, { ...indents, entry: entryIndent(text, parent) ?? indents.entry }, block)
  const apart = column === 0 && isMap(parent) ? ['', ...lines] : lines
  const end = lineEnd(text, contentEnd(parent))
  return splicedLines(text, afterComments(text, end, isMap(parent) ? column : column + 1), apart)
}

/** Between brackets, behind the last entry, or behind the opening bracket. */
function inBrackets(text: string, parent: Collection, entry: string): string {
  if (parent.items.length > 0) return spliced(text, lastEnd(parent), `, ${entry}`)
  const at = (parent.range?.[0] ?? 0) + 1
  return spliced(text, at, text[at] === ' ' ? ` ${entry}` : ` ${entry} `)
}

function spliced(text: string, at: number, piece: string): string {
  return text.slice(0, at) + piece + text.slice(at)
}

/** Lines put in where a line begins, or at the end of a text that does not end its last one. */
function splicedLines(text: string, at: number, lines: readonly string[]): string {
  const end = text.slice(0, at).endsWith('\n') ? endBefore(text, at) : text.includes('\r\n') ? '\r\n' : '\n'
  const joined = lines.join(end)
  return spliced(text, at, at > 0 && text[at - 1] !== '\n' ? `${end}${joined}` : `${joined}${end}`)
}

/** Line ends of both kinds: as the line before has it. */
function endBefore(text: string, at: number): string {
  return text.slice(0, at).endsWith('\r\n') ? '\r\n' : '\n'
}

function isBlock(value: Tree, key: string, block: readonly string[]): boolean {
  return Array.isArray(value) && block.includes(key)
}

/** Names in the spelling in which they are read. */
function asRead(tree: Tree): Tree {
  if (typeof tree !== 'object' || tree === null) return tree
  if (Array.isArray(tree)) return tree.map(asRead)
  return Object.fromEntries(Object.entries(tree).map(([key, value]) => [normaliseName(key), asRead(value)]))
}

/** The tree with the value at the path: what the text is to say afterwards. */
function withValue(tree: Tree, path: TreePath, value: Tree): Tree {
  const [first, ...rest] = path
  if (first === undefined) return value
  if (typeof first === 'number') {
    const list = Array.isArray(tree) ? [...tree] : []
    list[first] = withValue((list[first] as Tree | undefined) ?? null, rest, value)
    return list
  }
  const own = isSection(tree) ? tree : {}
  return { ...own, [first]: withValue(own[first] ?? null, rest, value) }
}

function cannotInsert(where: Problem['where']): Problem {
  return {
    code: 'cannot-insert',
    where,
    actual: 'a place where nothing can be put in without changing what stands there',
    expected: 'a list or a section that is written out, or blank',
    hint: 'write it into the file by hand, or write that part of the file like the example of scye begin',
  }
}
