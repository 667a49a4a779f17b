import { rounded } from '../base/rounded.ts'

/** A tenth of a micrometer: far finer than any cutter. */
const DECIMALS = 4

/** One group of a DXF file: its code, and what stands on the line after it. */
export type Group = readonly [code: number, value: string | number]

/** The groups as the lines of a file: CRLF as readers of cutting rooms expect, ASCII, no exponents. */
export function groupsText(groups: readonly Group[]): string {
  return groups.map(([code, value]) => `${String(code).padStart(3)}\r\n${valueText(code, value)}\r\n`).join('')
}

/** Codes 10 to 59 hold coordinates, sizes and angles; the rest of the numbers are whole. */
function valueText(code: number, value: string | number): string {
  if (typeof value === 'string') return plainWords(value)
  if (code < 10 || code >= 60) return value.toFixed(0)
  const text = String(rounded(value, DECIMALS))
  return text.includes('.') ? text : `${text}.0`
}

/** Signs that labels are set in, in the letters that every plotter has. */
const SPELLED: readonly (readonly [RegExp, string])[] = [
  [/(\d?)½/g, '$1 1/2'],
  [/(\d?)¼/g, '$1 1/4'],
  [/(\d?)¾/g, '$1 3/4'],
  [/(\d?)⅛/g, '$1 1/8'],
  [/(\d?)⅜/g, '$1 3/8'],
  [/(\d?)⅝/g, '$1 5/8'],
  [/(\d?)⅞/g, '$1 7/8'],
  [/⁄/g, '/'],
  [/″/g, ' in'],
  [/[−–—]/g, '-'],
  [/ · /g, ' - '],
]

/**
 * Words as one line of ASCII: fractions and primes spelled out, control characters as spaces, other letters in DXF's
 * own way (`\U+00C9`).
 */
function plainWords(text: string): string {
  const spelled = SPELLED.reduce((words, [sign, letters]) => words.replace(sign, letters), text)
  // biome-ignore lint/suspicious/noControlCharactersInRegex: a line break would end the group
  const oneLine = spelled.replace(/[\u0000-\u001f\u007f\s]+/g, ' ').trim()
  return oneLine.replace(/\^/g, '^ ').replace(/[^ -~]/g, (letter) => {
    const code = letter.charCodeAt(0).toString(16).toUpperCase()
    return `\\U+${code.padStart(4, '0')}`
  })
}
