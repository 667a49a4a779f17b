import { namePattern, wordsPattern } from './name-pattern.ts'

/** One way of writing a value as JSON Schema says it. It may let pass what the reader refuses, never the reverse. */
export type JsonForm = Readonly<Record<string, unknown>>

/** A digit, or a fraction in one letter: what every number that can be read has. */
const DIGIT = '[0-9½⅓⅔¼¾⅕-⅞⅐⅑⅒]'

/** The forms of a length; `least` limits what is written as a plain number. */
export function lengthForms(least: JsonForm = {}): JsonForm[] {
  return [
    { type: 'number', ...least },
    { type: 'string', pattern: DIGIT },
  ]
}

export const angleForms = (): JsonForm[] => [{ type: 'string', pattern: `${DIGIT}[\\s\\S]*(?:°|º|[dD][eE][gG])` }]

export const shareForms = (): JsonForm[] => [{ type: 'string', pattern: `${DIGIT}[\\s\\S]*(?:%|[cC][eE][nN][tT])` }]

export const countForms = (): JsonForm[] => [
  { type: 'integer', minimum: 1 },
  { type: 'string', pattern: String.raw`^\s*\d{1,6}\s*$` },
]

export const flagForms = (): JsonForm[] => [
  { type: 'boolean' },
  { enum: ['yes', 'no'] },
  { type: 'string', pattern: wordsPattern(['yes', 'no', 'true', 'false']) },
]

export const textForms = (): JsonForm[] => [{ type: ['string', 'number', 'boolean'], pattern: String.raw`\S` }]

export const dateForms = (): JsonForm[] => [{ type: 'string', pattern: String.raw`^\s*\d{4}-\d{2}-\d{2}\s*$` }]

/** Editors complete the names from the enum; any other spelling of them is as good. */
export function nameForms(known: readonly string[]): JsonForm[] {
  return [{ enum: [...known] }, { type: 'string', pattern: namePattern(known) }]
}
