import type { z } from 'zod'
import { nearestName } from './names.ts'
import type { Problem } from './problem.ts'
import type { Tree, TreePath, YamlDocument } from './yaml-document.ts'

type Issue = z.core.$ZodIssue

/** What there is to know beside the schema. */
interface ReadingContext {
  readonly schema: z.core.$ZodType
  readonly document: YamlDocument
  /** Where the value that the schema read stands. */
  readonly base: TreePath
  /** Keys that were read by somebody else: known, at the top of the value, though not to the schema. */
  readonly otherKeys: readonly string[]
}

/**
 * The problems that a schema's issues stand for, each with its place in the file: readers' own words where a reader
 * raised it; `missing` and `unknown-key` (with the nearest name that the schema knows) and `wrong-shape` for the rest.
 */
export function readingProblems(
  issues: readonly Issue[],
  schema: z.core.$ZodType,
  document: YamlDocument,
  base: TreePath,
  otherKeys: readonly string[] = [],
): Problem[] {
  return issues.flatMap((issue) => problemsOf(issue, [], { schema, document, base, otherKeys }))
}

function problemsOf(issue: Issue, prefix: TreePath, context: ReadingContext): Problem[] {
  const { document, schema, otherKeys } = context
  const inner = [...prefix, ...(issue.path as (string | number)[])]
  const path = [...context.base, ...inner]
  if (issue.code === 'custom' && issue.params) {
    const { code, actual, expected, hint } = issue.params as Record<string, string | undefined>
    if (code && actual && expected && hint) return [{ code, where: document.placeOf(path), actual, expected, hint }]
  }
  if (issue.code === 'unrecognized_keys') {
    const known = [...keysAt(schema, inner), ...(inner.length === 0 ? otherKeys : [])]
    return issue.keys.map((key) => unknownKey(document, [...path, key], known))
  }
  if (issue.code === 'invalid_key') return [wrongKey(document, path, issue.issues[0]?.message ?? 'another name')]
  const written = valueAt(document.tree, path)
  if (written === undefined || written === null) return [missing(document, path, expectedOf(issue))]
  if (issue.code === 'invalid_union') {
    const branch = closestBranch(issue.errors)
    if (branch) return branch.flatMap((deeper) => problemsOf(deeper, inner, context))
  }
  return [wrongShape(document, path, written, expectedOf(issue))]
}

function wrongKey(document: YamlDocument, path: TreePath, expected: string): Problem {
  const where = document.placeOfKey(path)
  return { code: 'unknown-key', where, actual: `"${String(path.at(-1))}"`, expected, hint: `write ${expected}` }
}

/** The unknown key at the path as a problem, with the nearest of the known names as its hint. */
function unknownKey(document: YamlDocument, path: TreePath, known: readonly string[]): Problem {
  const key = String(path.at(-1))
  const near = nearestName(key, known)
  return {
    code: 'unknown-key',
    where: document.placeOfKey(path),
    actual: `"${key}"`,
    expected: `one of: ${known.join(', ')}`,
    hint: near === undefined ? 'take it out, or write one of the names above' : `did you mean "${near}"?`,
  }
}

/** Something that must be there and is not, at the nearest place there is. */
function missing(document: YamlDocument, path: TreePath, expected: string, hint?: string): Problem {
  return {
    code: 'missing',
    where: document.placeOf(path),
    actual: 'nothing',
    expected,
    hint: hint ?? `write ${String(path.at(-1) ?? 'it')}: and ${expected}`,
  }
}

function wrongShape(document: YamlDocument, path: TreePath, written: Tree, expected: string): Problem {
  const shape = Array.isArray(written)
    ? 'a list'
    : typeof written === 'string'
      ? `"${written}"`
      : 'a section with names'
  return { code: 'wrong-shape', where: document.placeOf(path), actual: shape, expected, hint: `write ${expected}` }
}

/** What was expected, in words: a schema's own message, or the kind of thing. */
function expectedOf(issue: Issue): string {
  if (issue.code === 'invalid_type' && issue.message.startsWith('Invalid input')) {
    if (issue.expected === 'array') return 'a list'
    return issue.expected === 'object' || issue.expected === 'record' ? 'a section with names' : 'a value'
  }
  return issue.message.startsWith('Invalid') ? 'another value' : issue.message
}

/** Of the ways a value may be written, the one it came nearest to; undefined where it is like none of them. */
function closestBranch(branches: readonly (readonly Issue[])[]): readonly Issue[] | undefined {
  const near = branches.filter((branch) => !branch.some((issue) => issue.path.length === 0 && isShape(issue)))
  return near.sort((a, b) => a.length - b.length)[0]
}

/** A list where a text belongs, and the like: this way of writing was not meant. */
function isShape(issue: Issue): boolean {
  if (issue.code === 'invalid_union') return closestBranch(issue.errors) === undefined
  return issue.code === 'invalid_type'
}

/**
 * The problems without those that only follow from others: what is missing because its name is misspelt beside it, and
 * what cannot be read because it is a reference.
 */
export function withoutEchoes(problems: readonly Problem[]): Problem[] {
  const [parent, name] = [/\.?[^.]*$/, /[^.]*$/]
  const field = ({ where }: Problem) => where.field ?? ''
  return problems.filter((one) => {
    if (one.code !== 'missing') return true
    return !problems.some((other) => {
      if (other.code === 'not-yaml') return field(other) === field(one)
      const isBeside = field(other).replace(parent, '') === field(one).replace(parent, '')
      return other.code === 'unknown-key' && isBeside && other.hint.includes(`"${name.exec(field(one))?.[0]}"`)
    })
  })
}

/** What stands at a path, null where it is blank, undefined where there is nothing. */
export function valueAt(tree: Tree, path: TreePath): Tree | undefined {
  let value: Tree | undefined = tree
  for (const part of path) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, part)) return undefined
    value = (value as Readonly<Record<string | number, Tree>>)[part]
  }
  return value
}

/** As much of a schema's definition as it takes to find the keys it knows. */
interface Definition {
  readonly type: string
  readonly shape?: Readonly<Record<string, z.core.$ZodType>>
  readonly element?: z.core.$ZodType
  readonly valueType?: z.core.$ZodType
  readonly innerType?: z.core.$ZodType
  readonly in?: z.core.$ZodType
  readonly options?: readonly z.core.$ZodType[]
  readonly getter?: () => z.core.$ZodType
}

/** The keys that a schema knows at a path, of all the ways in which the value there may be written. */
function keysAt(schema: z.core.$ZodType, path: TreePath): string[] {
  let candidates = unwrap(schema)
  for (const part of path) {
    candidates = candidates.flatMap((def) => unwrap(def.shape?.[part] ?? def.element ?? def.valueType))
  }
  return [...new Set(candidates.flatMap((def) => Object.keys(def.shape ?? {})))]
}

function unwrap(schema: z.core.$ZodType | undefined): Definition[] {
  if (!schema) return []
  const def: Definition = schema._zod.def
  if (def.type === 'union') return (def.options ?? []).flatMap(unwrap)
  if (def.type === 'lazy') return unwrap(def.getter?.())
  const inner = def.type === 'pipe' ? def.in : def.innerType
  return inner ? unwrap(inner) : [def]
}
