import { isFault, parseNumber } from './numbers.ts'
import { failure, type Result, success } from './result.ts'
import { type LengthUnit, MM_IN_UNIT } from './units.ts'

/** Two readings of one length must agree to this share: an inch of another length is then found out. */
const AGREEMENT = 0.01

/**
 * Unit words by their spelling in lower case. Feet are left out on purpose: tapes of the trade run in inches, and
 * a lone ′ is more often a slip for ″ than a foot.
 */
const UNIT_WORDS: Readonly<Record<string, LengthUnit>> = {
  in: 'in',
  'in.': 'in',
  inch: 'in',
  inches: 'in',
  ins: 'in',
  '"': 'in',
  cm: 'cm',
  'cm.': 'cm',
  centimeter: 'cm',
  centimeters: 'cm',
  centimetre: 'cm',
  centimetres: 'cm',
  mm: 'mm',
  'mm.': 'mm',
  millimeter: 'mm',
  millimeters: 'mm',
  millimetre: 'mm',
  millimetres: 'mm',
}

/** Every word that means a unit, in lower case. */
export const UNIT_WORD_LIST: readonly string[] = Object.keys(UNIT_WORDS)

const FEET_HINT = 'write it in inches, 12 to the foot'

const EXPECTED = 'a length such as 15 1/2 in, 39.4 cm or 394 mm'

/**
 * The length in mm that a text says, rounded once (fractions are exact). `15 1/2`, `15-1/2 in`, `15½″`, `39.4 cm`,
 * `39,4 cm`, `394 mm`; without a unit it takes `unit`. `15 1/2 in (39.4 cm)` gives it twice: the first is taken and
 * the second must agree to 1 %. Fails with one problem (`not-a-length`, `unknown-unit`, `units-disagree`), without a
 * place, when the text is anything else; negative lengths are read, whether they make sense is the caller's to say.
 */
export function parseLength(text: string, unit: LengthUnit): Result<number> {
  const twice = /^([^()]*)\(([^()]*)\)$/.exec(text.trim())
  if (!twice) return single(text, unit, text)
  const [, first = '', second = ''] = twice
  const a = single(first, unit, text)
  if (!a.ok) return a
  const b = single(second, undefined, text)
  if (!b.ok) return b
  if (Math.abs(a.value - b.value) <= AGREEMENT * Math.abs(a.value)) return a
  return failure({
    code: 'units-disagree',
    where: {},
    actual: `"${text.trim()}": ${round(a.value)} mm and ${round(b.value)} mm`,
    expected: 'two readings of one length that agree to 1 %',
    hint: 'measure again with a tape you trust, and write the reading that is right',
  })
}

/** The unit that a word means: `in`, `inches`, `cm`, `mm`, …; undefined for any other. */
export function parseUnit(word: string): LengthUnit | undefined {
  const plain = word.trim().toLowerCase()
  return Object.hasOwn(UNIT_WORDS, plain) ? UNIT_WORDS[plain] : undefined
}

function single(text: string, unit: LengthUnit | undefined, whole: string): Result<number> {
  const { number, word } = splitUnit(text)
  const known = word === '' ? unit : parseUnit(word)
  if (known === undefined) return unknownUnit(word, whole)
  const fraction = parseNumber(number)
  if (!isFault(fraction)) {
    const mm = MM_IN_UNIT[known]
    return success((fraction.numerator * mm.numerator) / (fraction.denominator * mm.denominator))
  }
  const feet = /\d ?(?:['′’]|f(?:ee|oo)?t)/i.test(number)
  return failure({
    code: 'not-a-length',
    where: {},
    actual: whole.trim() === '' ? 'nothing' : `"${whole.trim()}" ${feet ? 'has feet' : fraction.reason}`,
    expected: EXPECTED,
    hint: feet ? FEET_HINT : fraction.hint,
  })
}

/** The text before its unit, and the unit as one word in lower case; all kinds of double prime become `"`. */
function splitUnit(text: string): { number: string; word: string } {
  const plain = text.replace(/[″”“„‟〃]|''|′′|’’/g, '"').trim()
  const match = /^(.*?[\d.,½⅓⅔¼¾⅕-⅞⅐⅑⅒])\s*([a-z]+\.?|["'′’])$/i.exec(plain)
  return { number: match?.[1] ?? plain, word: (match?.[2] ?? '').toLowerCase() }
}

function unknownUnit(word: string, whole: string): Result<never> {
  const feet = /^(ft\.?|foot|feet|['′’])$/.test(word)
  const meters = /^(m|meters?|metres?)$/.test(word)
  return failure({
    code: 'unknown-unit',
    where: {},
    actual: word === '' ? `"${whole.trim()}": the second reading has no unit` : `"${whole.trim()}" in "${word}"`,
    expected: EXPECTED,
    hint: feet ? FEET_HINT : meters ? 'write it in cm or mm' : 'write in, cm or mm after the number',
  })
}

function round(mm: number): number {
  return Math.round(mm * 10) / 10
}
