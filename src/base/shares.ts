import { isFault, parseNumber } from './numbers.ts'
import { failure, type Result, success } from './result.ts'

/** The share that a percentage says: 0.06 for `6 %`. Fails with one problem (`not-a-share`), without a place. */
export function parseShare(text: string): Result<number> {
  const match = /^(.*?)\s*(?:%|percent|per cent)$/i.exec(text.trim())
  const fraction = parseNumber(match?.[1] ?? text)
  if (match && !isFault(fraction)) return success(fraction.numerator / (fraction.denominator * 100))
  return failure({
    code: 'not-a-share',
    where: {},
    actual: isFault(fraction) ? `"${text.trim()}" ${fraction.reason}` : `"${text.trim()}" has no % after it`,
    expected: 'a percentage such as 6 %',
    hint: isFault(fraction) ? fraction.hint : 'write % after the number',
  })
}

/** A share as a percentage, one decimal at most: `6 %`. */
export function formatShare(share: number): string {
  const tenths = Math.round(share * 1000)
  return `${(tenths === 0 ? 0 : tenths) / 10} %`
}
