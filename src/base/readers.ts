import * as z from 'zod'
import { parseAngle } from './angles.ts'
import {
  angleForms,
  countForms,
  dateForms,
  flagForms,
  type JsonForm,
  lengthForms,
  nameForms,
  shareForms,
  textForms,
} from './json-forms.ts'
import { parseLength } from './lengths.ts'
import { nearestName, normaliseName } from './names.ts'
import { unprintable } from './printable.ts'
import type { Result } from './result.ts'
import { failure, success } from './result.ts'
import { parseShare } from './shares.ts'
import type { LengthUnit } from './units.ts'

/** What a performer file holds at its ends: the text as it was written. Programs may give numbers. */
export type Written = string | number

/** A schema that reads one written value. Works with `.optional()`, `.default(value)` and inside other schemas. */
export type Reader<T> = z.ZodType<T, Written>

/** What is wrong with one value, in words: the `params` of the issue a reader raises. */
export interface ReadingIssue {
  /** Stable, kebab-case. */
  readonly code: string
  readonly actual: string
  readonly expected: string
  readonly hint: string
}

/**
 * Schemas for one file: a length without a unit takes the file's. All give mm or radians. Build settings from
 * them with `z.strictObject({ by: read.positiveLength(), 'along cap': read.positiveLength().optional() })`; keys
 * are in their normal spelling (`normaliseName`): lower case, single spaces.
 */
export interface Readers {
  /** The file's unit. */
  readonly unit: LengthUnit
  /** Any length, also negative; mm. */
  length(): Reader<number>
  /** A length above zero; mm. */
  positiveLength(): Reader<number>
  /** Zero or more; mm. */
  lengthFromZero(): Reader<number>
  /** `22 deg`; radians. */
  angle(): Reader<number>
  /** `6 %` as 0.06. */
  share(): Reader<number>
  /** A length or a percentage: `{ mm }` or `{ share }`, zero or more. */
  lengthOrShare(): Reader<
    | {
        /** A length in mm. */
        readonly mm: number
      }
    | {
        /** A share: 0.06 is 6 %. */
        readonly share: number
      }
  >
  /** A whole number from 1. */
  count(): Reader<number>
  /** `yes`, `no`, `true` or `false`. */
  flag(): Reader<boolean>
  /** Any text that is not blank and can be printed; blanks at both ends fall away, others count as one. */
  text(): Reader<string>
  /** A calendar day as `2026-10-09`. */
  date(): Reader<string>
  /** One of the known names, however spaced, hyphenated or capitalised; `what` says in a problem what it names. */
  name<const T extends string>(what: string, known: readonly T[]): Reader<T>
  /** One value or a list of them, at least one; always an array. */
  listOf<T extends z.ZodType>(item: T): z.ZodType<z.output<T>[], z.input<T> | z.input<T>[]>
  /**
   * A value of your own: `parse` gets the text and returns the value or one problem; `expected` describes it. `forms` are
   * what JSON Schema says of it, in a file read by any program; text and numbers when absent.
   */
  parsed<T>(expected: string, parse: (text: string) => Result<T>, forms?: () => readonly JsonForm[]): Reader<T>
}

/**
 * How the settings of each correction are read: its strict schema made for a file's unit, by the correction's
 * normal name; undefined for a name nobody knows. `do`, `side`, `seen` and `voided` are not among the settings.
 */
export interface CorrectionReaders {
  /** Every name there is, for hints. */
  readonly names: readonly string[]
  /** The maker of the schema for the settings of this correction; undefined for a name that is none. */
  readonly settingsOf: (name: string) => ((read: Readers) => z.ZodObject) | undefined
}

/** More does not fit on a label, and is no remark. */
const MOST_LETTERS = 500

const MADE: Partial<Record<LengthUnit, Readers>> = {}

/** The readers for files written in this unit: the same ones whenever they are asked for. */
export function makeReaders(unit: LengthUnit): Readers {
  const readers = MADE[unit] ?? readersFor(unit)
  MADE[unit] = readers
  return readers
}

function readersFor(unit: LengthUnit): Readers {
  const length = (test?: (mm: number) => boolean, expected = 'a length', least?: JsonForm) =>
    parsed(
      `${expected} such as ${unit === 'in' ? '1 1/2 in' : unit === 'cm' ? '3.8 cm' : '38 mm'}`,
      (text) => {
        const result = parseLength(text, unit)
        if (!result.ok || !test || test(result.value)) return result
        return fault('length-out-of-range', `"${text}"`, expected, 'write it without a minus, or leave it out')
      },
      () => lengthForms(least),
    )
  return {
    unit,
    length: once(() => length()),
    positiveLength: once(() => length((mm) => mm > 0, 'a length above zero', { exclusiveMinimum: 0 })),
    lengthFromZero: once(() => length((mm) => mm >= 0, 'a length of zero or more', { minimum: 0 })),
    angle: once(() => parsed('an angle such as 22 deg', parseAngle, angleForms)),
    share: once(() => parsed('a percentage such as 6 %', parseShare, shareForms)),
    lengthOrShare: once(() =>
      parsed(
        'a length or a percentage such as 6 %',
        (text) => lengthOrShare(text, unit),
        () => lengthForms({ minimum: 0 }),
      ),
    ),
    count: once(() => parsed('a whole number from 1', readCount, countForms)),
    flag: once(() => parsed('yes or no', readFlag, flagForms)),
    text: once(() => parsed('some words', readWords, textForms)),
    date: once(() => parsed('a date such as 2026-10-09', readDate, dateForms)),
    name: (what, known) =>
      parsed(
        `a ${what}: ${known.join(', ')}`,
        (text) => readName(text, what, known),
        () => nameForms(known),
      ),
    listOf: (item) =>
      z
        .union([z.array(item).min(1, { error: 'at least one entry' }), item], { error: 'one entry or a list' })
        .transform((value): z.output<typeof item>[] => (Array.isArray(value) ? value : [value])),
    parsed,
  }
}

/** A schema that is made when it is first asked for, and then kept. */
function once<T>(make: () => T): () => T {
  let made: T | undefined
  return () => {
    made ??= make()
    return made
  }
}

/** Raises an issue in a schema's own check or transform with the words a draper needs. */
export function raise(context: z.RefinementCtx, issue: ReadingIssue): void {
  context.addIssue({ code: 'custom', message: issue.expected, params: { ...issue } })
}

function parsed<T>(expected: string, parse: (text: string) => Result<T>, forms?: () => readonly JsonForm[]): Reader<T> {
  const reader = z.union([z.string(), z.number()], { error: expected }).transform((written, context) => {
    // Ten digits, so that the last bit of a computed number does not make it unreadable.
    const text = typeof written === 'number' ? String(Number(written.toPrecision(10))) : written
    const result = parse(text.trim())
    if (result.ok) return result.value
    for (const { code, actual, expected: wanted, hint } of result.problems) {
      raise(context, { code, actual, expected: wanted, hint })
    }
    return z.NEVER
  })
  if (forms === undefined) return reader.meta({ description: expected })
  return reader.meta({
    description: expected,
    // Asked for when a JSON Schema is made, and not whenever a file is read.
    get anyOf() {
      return forms().map((form) => ({ ...form }))
    },
  })
}

function fault(code: string, actual: string, expected: string, hint: string): Result<never> {
  return failure({ code, where: {}, actual, expected, hint })
}

function lengthOrShare(text: string, unit: LengthUnit): Result<{ mm: number } | { share: number }> {
  const share = text.includes('%') || /percent/i.test(text)
  const result = share ? parseShare(text) : parseLength(text, unit)
  if (!result.ok) return result
  if (result.value < 0) {
    return fault('length-out-of-range', `"${text}"`, 'a length or a percentage of zero or more', 'leave the minus out')
  }
  return success(share ? { share: result.value } : { mm: result.value })
}

function readCount(text: string): Result<number> {
  const value = Number(text)
  if (/^\d{1,6}$/.test(text) && value >= 1) return success(value)
  return fault('not-a-count', `"${text}"`, 'a whole number from 1', 'write a number such as 1')
}

function readFlag(text: string): Result<boolean> {
  const word = text.toLowerCase()
  if (word === 'yes' || word === 'true') return success(true)
  if (word === 'no' || word === 'false') return success(false)
  return fault('not-yes-or-no', `"${text}"`, 'yes or no', 'write yes or no')
}

function readWords(text: string): Result<string> {
  const words = text.replace(/[\s\u0085]+/g, ' ').trim()
  const letter = unprintable(words)
  if (words === '')
    return fault('empty-text', 'nothing but blanks', 'some words', 'write something, or leave the line out')
  if (letter !== undefined) {
    const hint = `take ${letter} out, a letter that cannot be seen`
    return fault('not-printable', `"${words}"`, 'words that can be printed on a label', hint)
  }
  if (words.length <= MOST_LETTERS) return success(words)
  const expected = `at most ${MOST_LETTERS} letters`
  return fault('text-too-long', `${words.length} letters`, expected, 'say it in fewer words, or put # before the rest')
}

function readDate(text: string): Result<string> {
  const [, year, month, day] = (/^(\d{4})-(\d{2})-(\d{2})$/.exec(text) ?? []).map(Number)
  if (year && month && day && month <= 12 && day <= daysIn(year, month)) return success(text)
  return fault('not-a-date', `"${text}"`, 'a date as year-month-day', 'write it such as 2026-10-09')
}

function daysIn(year: number, month: number): number {
  const leap = year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0)
  if (month === 2) return leap ? 29 : 28
  return [4, 6, 9, 11].includes(month) ? 30 : 31
}

function readName<T extends string>(text: string, what: string, known: readonly T[]): Result<T> {
  const normal = normaliseName(text)
  const found = known.find((name) => normaliseName(name) === normal)
  if (found !== undefined) return success(found)
  const near = nearestName(text, known)
  const hint = near === undefined ? `write one of: ${known.join(', ')}` : `did you mean "${near}"?`
  return fault('unknown-name', `"${text}"`, `a ${what}: ${known.join(', ')}`, hint)
}
