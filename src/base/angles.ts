import { isFault, parseNumber } from './numbers.ts'
import { failure, type Result, success } from './result.ts'

/**
 * The angle in radians that a text says: `22 deg`, `22°`, `22 1/2 degrees`. Fails with one problem
 * (`not-an-angle`), without a place. A bare number is refused: a slope is often noted as a drop in inches.
 */
export function parseAngle(text: string): Result<number> {
  const match = /^(.*?)\s*(?:°|º|deg\.?|degrees?)$/i.exec(text.trim())
  const fraction = parseNumber(match?.[1] ?? text)
  if (match && !isFault(fraction)) return success(((fraction.numerator / fraction.denominator) * Math.PI) / 180)
  return failure({
    code: 'not-an-angle',
    where: {},
    actual: isFault(fraction) ? `"${text.trim()}" ${fraction.reason}` : `"${text.trim()}" has no deg after it`,
    expected: 'an angle such as 22 deg',
    hint: isFault(fraction) ? fraction.hint : 'measure the angle below horizontal and write deg after it',
  })
}

/** An angle in radians as text in degrees, one decimal at most: `22 deg`. */
export function formatAngle(radians: number): string {
  const tenths = Math.round((radians * 1800) / Math.PI)
  return `${(tenths === 0 ? 0 : tenths) / 10} deg`
}
