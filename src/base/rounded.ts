/**
 * The number rounded to so many decimals, never −0. The text of what comes back has no exponent for
 * magnitudes a pattern can have (below 1e15) and up to six decimals. Throws on NaN and infinities: a drawing
 * that holds one is a mistake, not something to print.
 */
export function rounded(value: number, decimals: number): number {
  if (!Number.isFinite(value)) throw new RangeError(`${value} cannot be written`)
  const factor = 10 ** decimals
  return Math.round(value * factor) / factor + 0
}
