/** An exact fraction of whole numbers; the denominator is positive. */
export interface Fraction {
  readonly numerator: number
  readonly denominator: number
}

/** Why a text is no number: what is wrong, and what to write instead. */
export interface NumberFault {
  readonly reason: string
  readonly hint: string
}

/** More digits than any tape has; below it every product with a unit stays an exact whole number. */
const MOST_DIGITS = 12

const VULGAR: Readonly<Record<string, string>> = {
  '½': '1/2',
  '⅓': '1/3',
  '⅔': '2/3',
  '¼': '1/4',
  '¾': '3/4',
  '⅕': '1/5',
  '⅖': '2/5',
  '⅗': '3/5',
  '⅘': '4/5',
  '⅙': '1/6',
  '⅚': '5/6',
  '⅐': '1/7',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
  '⅑': '1/9',
  '⅒': '1/10',
}

/** `15 1/2`, `15-1/2`, `15 5/8` and, with the slash of typeset fractions, `15 1⁄2`. */
const MIXED = /^(?:(\d+)(?: |-))?(\d+) ?\/ ?(\d+)$/
const DECIMAL = /^(\d*)[.,](\d+)$/
const WHOLE = /^\d+$/

/**
 * Reads a number the way people write one beside a tape: `15`, `15.5`, `15,5`, `.5`, `3/8`, `15 1/2`, `15-1/2`,
 * `15½`, `-3/8`. The fraction returned is exact. Whatever could mean two things (`11/2`, `1,000`, `15 - 1/2`) or
 * is left over (`15 1/2 3`) is a fault, never a guess.
 */
export function parseNumber(text: string): Fraction | NumberFault {
  const plain = plainNumber(text)
  const negative = /^[-+]/.test(plain)
  const body = negative ? plain.slice(1).trim() : plain
  const sign = plain.startsWith('-') ? -1 : 1
  if (body.replace(/\D/g, '').length > MOST_DIGITS) {
    return { reason: 'has more digits than a tape', hint: `write at most ${MOST_DIGITS} digits` }
  }
  const fraction = wholeOf(body) ?? decimalOf(body) ?? mixedOf(body) ?? leftOver(body)
  return isFault(fraction) ? fraction : { ...fraction, numerator: sign * fraction.numerator }
}

/** Tells a fault from a number. */
export function isFault(value: Fraction | NumberFault): value is NumberFault {
  return 'reason' in value
}

/** One kind of space, hyphen and slash; a one-letter fraction written out, parted from the digits before it. */
function plainNumber(text: string): string {
  return text
    .replace(/[\u2010-\u2014\u2212]/g, '-')
    .replace(/(\d)-(?=[½⅓⅔¼¾⅕-⅞⅐⅑⅒])/g, '$1 ')
    .replace(/[½⅓⅔¼¾⅕-⅞⅐⅑⅒]/g, (letter) => ` ${VULGAR[letter]} `)
    .replace(/[⁄∕]/g, '/')
    .replace(/\s+/g, ' ')
    .trim()
}

function wholeOf(text: string): Fraction | undefined {
  return WHOLE.test(text) ? { numerator: Number(text), denominator: 1 } : undefined
}

function decimalOf(text: string): Fraction | NumberFault | undefined {
  const match = DECIMAL.exec(text)
  if (!match) return undefined
  const [, whole = '', decimals = ''] = match
  if (text.includes(',') && decimals.length === 3 && whole !== '' && Number(whole) !== 0) {
    return {
      reason: 'could be thousands or decimals',
      hint: `write ${whole}.${decimals} or ${whole}${decimals}`,
    }
  }
  return { numerator: Number(whole + decimals), denominator: 10 ** decimals.length }
}

function mixedOf(text: string): Fraction | NumberFault | undefined {
  const match = MIXED.exec(text)
  if (!match) return undefined
  const [, whole, over = '', under = ''] = match
  const numerator = Number(over)
  const denominator = Number(under)
  if (denominator === 0) return { reason: 'divides by zero', hint: 'write the fraction as on the tape, such as 1/2' }
  if (numerator >= denominator)
    return { reason: 'has a fraction of one or more', hint: improperHint(whole, over, under) }
  return { numerator: Number(whole ?? 0) * denominator + numerator, denominator }
}

/** `11/2` is a common slip for `1 1/2`: say both. */
function improperHint(whole: string | undefined, over: string, under: string): string {
  const denominator = Number(under)
  const value = Number(over)
  const written = `${Math.floor(value / denominator)}${value % denominator ? ` ${value % denominator}/${under}` : ''}`
  if (whole !== undefined || over.length < 2) return `write the whole number apart, such as ${written}`
  return `write ${over.slice(0, -1)} ${over.slice(-1)}/${under} or ${written}, whichever is meant`
}

function leftOver(text: string): NumberFault {
  const hint = 'write a number such as 15, 15 1/2, 15-1/2, 15.5 or 15,5'
  if (text === '') return { reason: 'is empty', hint }
  if (/^[-+.,/\d ]+$/.test(text) && /\d/.test(text)) return { reason: 'is more, or less, than one number', hint }
  return { reason: 'is not a number', hint }
}
