import { isAlias, isMap, isScalar, isSeq, LineCounter, type Node, type Pair, parseDocument } from 'yaml'
import { normaliseName } from './names.ts'
import type { Place, Problem } from './problem.ts'
import { failure, type Result, success } from './result.ts'
import { guardText, tooDeepAt } from './text-guard.ts'
import { yamlFault } from './yaml-faults.ts'

/**
 * What a file says: every scalar as the text that was written (`15 1/2`, `015`, `12:30` and `no` stay as they are),
 * null where nothing was written, keys in their normal spelling (`normaliseName`).
 */
export type Tree =
  | string
  | null
  | readonly Tree[]
  | {
      /** What stands behind each name. */
      readonly [key: string]: Tree
    }

/** Names, each with what stands behind it. */
export type TreeSection = { readonly [key: string]: Tree }

export function isSection(tree: Tree | undefined): tree is TreeSection {
  return typeof tree === 'object' && tree !== null && !Array.isArray(tree)
}

/** The way to a value: keys in their normal spelling, places in a list from 0. */
export type TreePath = readonly (string | number)[]

/** A file that was read, and where in it everything stands. */
export interface YamlDocument {
  readonly file: string
  readonly tree: Tree
  /**
   * Where a value stands: line and column from 1, and the field as a dotted path with the keys as they are written
   * and list entries counted from 1. For a value that is not there, or is blank: its key, or its nearest parent's.
   */
  placeOf(path: TreePath): Place
  /** Where the key of a value stands, for problems of the key itself. */
  placeOfKey(path: TreePath): Place
}

interface Spot {
  readonly written: string
  readonly key: number
  /** Undefined where nothing is written. */
  readonly value: number | undefined
}

/** A syntax error makes the parser stumble over what follows: more than these only confuse. */
const MOST_SYNTAX_PROBLEMS = 3

/**
 * Reads YAML 1.2 text. Fails with problems of code `empty-file`, `not-text`, `file-too-long`, `nested-too-deep`,
 * `not-yaml`, `duplicate-key` or `not-a-section`, each with its line and column; never throws for what a file holds.
 */
export function readYaml(text: string, file: string): Result<YamlDocument> {
  const read = readYamlParts(text, file)
  if (!read.ok) return read
  return read.value.problems.length > 0 ? failure(...read.value.problems) : success(read.value.document)
}

/**
 * The same, but a file with entries that cannot be used (`duplicate-key`, `not-a-section`, a reference) is still read
 * without them, so that whatever else is wrong with it can be said at once. Fails where nothing can be read.
 */
export function readYamlParts(
  text: string,
  file: string,
): Result<{ readonly document: YamlDocument; readonly problems: readonly Problem[] }> {
  // The parser knows no line that ends with a carriage return alone.
  const plain = text.replace(/^\ufeff/, '').replace(/\r\n?/g, '\n')
  const guard = guardText(plain, file)
  if (guard) return failure(guard)
  const lines = new LineCounter()
  const document = parsed(plain, lines)
  if (!document) return failure(tooDeepAt(plain, file))
  const at = (offset: number) => {
    const { line, col } = lines.linePos(offset)
    return { file, line, column: col }
  }
  const faults = [...document.errors, ...document.warnings]
  if (faults.length > 0) {
    return failure(...faults.slice(0, MOST_SYNTAX_PROBLEMS).map((fault) => yamlFault(fault, at(fault.pos[0]))))
  }
  const spots = new Map<string, Spot>()
  const problems: Problem[] = []
  const tree = readNode(document.contents as Node | null, [], spots, problems, at)
  const read: YamlDocument = {
    file,
    tree,
    placeOf: (path) => place(path, spots, file, at, false),
    placeOfKey: (path) => place(path, spots, file, at, true),
  }
  return success({ document: read, problems })
}

/** Undefined where quotes hid from the guard that brackets are nested without end, and the parser ran out of stack. */
function parsed(text: string, lineCounter: LineCounter) {
  try {
    return parseDocument(text, {
      schema: 'failsafe',
      version: '1.2',
      prettyErrors: false,
      uniqueKeys: false,
      lineCounter,
    })
  } catch (error) {
    if (error instanceof RangeError) return undefined
    throw error
  }
}

type At = (offset: number) => { readonly file: string; readonly line: number; readonly column: number }

function readNode(node: Node | null, path: TreePath, spots: Map<string, Spot>, problems: Problem[], at: At): Tree {
  if (node === null) return null
  if (isScalar(node)) {
    return isBlank(node) ? null : String(node.value)
  }
  if (isSeq<Node | null>(node)) {
    return node.items.map((item, index) => {
      const here = [...path, index]
      const start = item?.range?.[0] ?? node.range?.[0] ?? 0
      spots.set(spotKey(here), { written: `${index + 1}`, key: start, value: start })
      return readNode(item, here, spots, problems, at)
    })
  }
  if (isMap<Node, Node | null>(node)) {
    const entries: [string, Tree][] = []
    for (const pair of node.items) {
      const entry = readPair(pair, path, spots, problems, at)
      if (entry) entries.push(entry)
    }
    return Object.fromEntries(entries)
  }
  const start = node.range?.[0] ?? 0
  problems.push({
    code: 'not-yaml',
    where: { ...at(start), ...(path.length > 0 ? { field: fieldOf(path, spots) } : {}) },
    actual: isAlias(node) ? `a reference, *${node.source}` : 'something that is no value',
    expected: 'the value itself',
    hint: 'write the value out',
  })
  return null
}

function readPair(
  pair: Pair<Node, Node | null>,
  path: TreePath,
  spots: Map<string, Spot>,
  problems: Problem[],
  at: At,
): [string, Tree] | undefined {
  const start = pair.key.range?.[0] ?? 0
  const written = isScalar(pair.key) ? String(pair.key.value) : ''
  const key = normaliseName(written)
  if (key === '') {
    problems.push({
      code: 'not-a-section',
      where: at(start),
      actual: 'an entry without a name',
      expected: 'a name, a colon and a value',
      hint: 'write it such as "bust girth: 37 3/4"',
    })
    return undefined
  }
  const here = [...path, key]
  const earlier = spots.get(spotKey(here))
  if (earlier) {
    problems.push({
      code: 'duplicate-key',
      where: { ...at(start), field: fieldOf(here, spots) },
      actual: `"${written}" a second time`,
      expected: `"${earlier.written}" once (it stands in line ${at(earlier.key).line} already)`,
      hint: 'keep one of the two',
    })
    return undefined
  }
  const value = pair.value
  spots.set(spotKey(here), { written, key: start, value: isBlank(value) ? undefined : value?.range?.[0] })
  return [key, readNode(value, here, spots, problems, at)]
}

/** Nothing written, or YAML's own words for nothing. */
function isBlank(node: Node | null): boolean {
  return node === null || (isScalar(node) && node.type === 'PLAIN' && /^(?:|~|null|Null|NULL)$/.test(node.source ?? ''))
}

function place(path: TreePath, spots: Map<string, Spot>, file: string, at: At, ofKey: boolean): Place {
  const field = path.length > 0 ? { field: fieldOf(path, spots) } : {}
  for (let length = path.length; length > 0; length--) {
    const spot = spots.get(spotKey(path.slice(0, length)))
    if (!spot) continue
    const whole = length === path.length
    return { ...at(whole && !ofKey ? (spot.value ?? spot.key) : spot.key), ...field }
  }
  return { file, line: 1, column: 1, ...field }
}

function fieldOf(path: TreePath, spots: Map<string, Spot>): string {
  return path
    .map((part, index) => {
      const spot = spots.get(spotKey(path.slice(0, index + 1)))
      return spot?.written ?? (typeof part === 'number' ? `${part + 1}` : part)
    })
    .join('.')
}

function spotKey(path: TreePath): string {
  return JSON.stringify(path)
}
