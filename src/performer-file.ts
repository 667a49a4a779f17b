import * as z from 'zod'
import { parseUnit, UNIT_WORD_LIST } from './base/lengths.ts'
import { wordsPattern } from './base/name-pattern.ts'
import type { Problem } from './base/problem.ts'
import { READ_ONCE } from './base/read-once.ts'
import { type CorrectionReaders, makeReaders, type Readers } from './base/readers.ts'
import { readingProblems, withoutEchoes } from './base/reading-problems.ts'
import { failure, type Result, success } from './base/result.ts'
import { sayable } from './base/sayable.ts'
import { LENGTH_UNITS, type LengthUnit } from './base/units.ts'
import { isSection, readYamlParts, type TreeSection, type YamlDocument } from './base/yaml-document.ts'
import { measureProblem, measuresSchema, withoutBlanks } from './body/read-measures.ts'
import { MOCK_UP_ALLOWANCES, type MockUpAllowances } from './drafting/allowances.ts'
import { choicesSchema, readChoices } from './drafting/read-choices.ts'
import { fittingPlace, fittingsSchema, labelProblems, readFittings, settingsProblems } from './fitting/read-fittings.ts'
import type { Performer } from './performer.ts'

/** What an allowance can be given for: every seam, both halves at once, or whatever is not named. */
export const ALLOWANCE_NAMES = [
  'default',
  'cap',
  'underarm seam',
  'center front',
  'center back',
  'neckline',
  'shoulder',
  'armscye',
  'side seam',
  'waist',
  'front cap',
  'back cap',
  'front underarm seam',
  'back underarm seam',
  'wrist',
] as const

/** What is asked of a performer file. */
export interface ReadingOptions {
  /** Takes a file whose performer is yet to be measured: no measure is required. It cannot be drafted. */
  readonly unmeasured?: boolean
}

/**
 * The schema of a whole performer file written in `read.unit`, keys in their normal spelling (`normaliseName`). The
 * settings of corrections are not among it: they are read by the corrections' own schemas.
 */
export function performerSchema(
  read: Readers,
  corrections: CorrectionReaders,
  { unmeasured = false }: ReadingOptions = {},
) {
  const unit = read.parsed<LengthUnit>('in, cm or mm', readUnit, () => [
    { enum: LENGTH_UNITS },
    { type: 'string', pattern: wordsPattern(UNIT_WORD_LIST) },
  ])
  const allowance = allowanceSchema(read)
  return z.strictObject({
    performer: read.text().describe('a role or a code, not a legal name'),
    production: read.text().optional(),
    units: unit.describe('in, cm or mm: for the numbers without a unit of their own'),
    measured: read.date().optional(),
    body: measuresSchema(read, unmeasured),
    draft: choicesSchema(read).optional(),
    'mock up': z.strictObject({ allowance: allowance.optional() }).optional(),
    'mock ups': z
      .record(
        z.string().regex(/^[1-9]\d{0,5}$/, { error: 'the number of a mock-up, from 1' }),
        z.strictObject({ allowance: allowance.optional() }),
      )
      .optional(),
    fittings: fittingsSchema(read, corrections).optional(),
  })
}

/**
 * Reads a performer file: lengths become mm, angles radians, everything is checked for form (whether a body can be is
 * `completeBody`'s to say). Fails with every problem of the file at once, in the order of the file, each with file,
 * line, column and field. `file` is only a name for them.
 */
export function readPerformer(
  text: string,
  file: string,
  corrections: CorrectionReaders,
  options: ReadingOptions = {},
): Result<Performer> {
  const read = readPerformerDocument(text, file, corrections, options)
  return read.ok ? success(read.value.performer) : read
}

type PerformerSchema = ReturnType<typeof performerSchema>

/** One file after another is read with the same few schemas. */
const SCHEMAS = new WeakMap<CorrectionReaders, Partial<Record<string, PerformerSchema>>>()

function schemaFor(read: Readers, corrections: CorrectionReaders, { unmeasured = false }: ReadingOptions) {
  const kind = `${read.unit}${unmeasured ? ' unmeasured' : ''}`
  const schemas = SCHEMAS.get(corrections) ?? {}
  const schema = schemas[kind] ?? performerSchema(read, corrections, { unmeasured })
  SCHEMAS.set(corrections, { ...schemas, [kind]: schema })
  return schema
}

/** What a performer file says, and the document that knows where it says it. */
interface PerformerDocument {
  readonly performer: Performer
  readonly document: YamlDocument
}

/** `readPerformer`, for those who have more to say of places in the file. */
export function readPerformerDocument(
  text: string,
  file: string,
  corrections: CorrectionReaders,
  options: ReadingOptions = {},
): Result<PerformerDocument> {
  const yaml = readYamlParts(text, file)
  if (!yaml.ok) return failure(...yaml.problems.map(sayable))
  const { document, problems: unread } = yaml.value
  if (!isSection(document.tree))
    return failure(...(unread.length > 0 ? unread.map(sayable) : [notAPerformer(document)]))
  const { tree } = document
  const written = tree.units
  const unit = typeof written === 'string' ? parseUnit(written) : undefined
  const read = makeReaders(unit ?? 'mm')
  const schema = schemaFor(read, corrections, options)
  // A measure or a choice left blank was not taken or not made.
  const blank = (name: 'body' | 'draft') =>
    tree[name] === undefined ? {} : { [name]: withoutBlanks(tree[name]) ?? {} }
  const parsed = schema.safeParse(
    {
      ...(options.unmeasured ? { body: {} } : {}),
      ...filledIn(tree),
      ...blank('body'),
      ...blank('draft'),
    },
    READ_ONCE,
  )
  const problems = [
    ...unread,
    ...(parsed.success ? [] : readingProblems(parsed.error.issues, schema, document, [])),
    ...labelProblems(document),
    ...settingsProblems(document, read, corrections),
  ]
  if (!parsed.success || problems.length > 0)
    return failure(
      ...withoutEchoes(problems)
        .map((p) => sayable(inItsWords(p, document)))
        .sort(byPlace),
    )
  const { data } = parsed
  const performer: Performer = {
    performer: data.performer,
    ...(data.production === undefined ? {} : { production: data.production }),
    units: data.units,
    ...(data.measured === undefined ? {} : { measured: data.measured }),
    body: data.body,
    choices: readChoices(data.draft),
    allowances: readAllowances(data['mock up'], data['mock ups']),
    fittings: readFittings(data.fittings ?? [], document, read, corrections),
  }
  return success({ performer, document })
}

/** The section without the parts that are named but blank, such as `fittings:` before the first fitting. */
function filledIn(tree: TreeSection): TreeSection {
  const required = ['performer', 'units', 'body']
  return Object.fromEntries(Object.entries(tree).filter(([key, value]) => value !== null || required.includes(key)))
}

export function readUnit(text: string): Result<LengthUnit> {
  const unit = parseUnit(text)
  if (unit) return success(unit)
  const expected = 'in, cm or mm'
  return failure({ code: 'unknown-unit', where: {}, actual: `"${text}"`, expected, hint: `write units: ${expected}` })
}

type WrittenAllowance = Readonly<Partial<Record<string, number | undefined>>>

function allowanceSchema(read: Readers) {
  const allowance = read.lengthFromZero().optional()
  const seams = Object.fromEntries(ALLOWANCE_NAMES.map((name) => [name, allowance]))
  return z.union([z.strictObject(seams), read.lengthFromZero().transform((mm): WrittenAllowance => ({ default: mm }))])
}

interface WrittenMockUp {
  readonly allowance?: WrittenAllowance | undefined
}

function readAllowances(
  standard: WrittenMockUp | undefined,
  byNumber: Readonly<Record<string, WrittenMockUp>> | undefined,
): MockUpAllowances {
  return {
    standard: { ...MOCK_UP_ALLOWANCES, ...givenOf(standard) },
    byMockUp: Object.fromEntries(Object.entries(byNumber ?? {}).map(([number, mockUp]) => [number, givenOf(mockUp)])),
  }
}

function givenOf(mockUp: WrittenMockUp | undefined): Record<string, number> {
  const entries = Object.entries(mockUp?.allowance ?? {})
  return Object.fromEntries(entries.filter((entry): entry is [string, number] => entry[1] !== undefined))
}

export function notAPerformer(document: YamlDocument): Problem {
  return {
    code: 'not-a-performer',
    where: document.placeOf([]),
    actual: Array.isArray(document.tree) ? 'a list' : 'a text without names',
    expected: 'a performer file: performer, units, body, …',
    hint: 'give a performer file; scye begin FILE writes one to fill in',
  }
}

/** Hints that only the section can give, and the fitting and correction a problem belongs to. */
function inItsWords(problem: Problem, document: YamlDocument): Problem {
  const placed = { ...problem, where: fittingPlace(problem.where, document) }
  const field = (problem.where.field ?? '').toLowerCase()
  if (field.startsWith('body.')) return measureProblem(placed, document)
  const hint = problem.code === 'missing' ? MISSING_HINTS[field] : undefined
  return hint === undefined ? placed : { ...placed, hint }
}

const MISSING_HINTS: Readonly<Record<string, string>> = {
  performer: 'write performer: and a role or a code, such as Lamplighter',
  units: 'write units: in, cm or mm, for the numbers without a unit of their own',
  body: 'write body: and the measures under it; scye begin FILE writes a file with all of them',
}

function byPlace(a: Problem, b: Problem): number {
  return (a.where.line ?? 0) - (b.where.line ?? 0) || (a.where.column ?? 0) - (b.where.column ?? 0)
}
