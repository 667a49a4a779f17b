/**
 * The values by their distance, nearest first; those as near in the order given. Sorted in rings as far as they are asked
 * for: most places are found near.
 */
export function* nearestFirst<T>(values: Iterable<T>, distance: (value: T) => number, ring: number): Generator<T> {
  const rings: { readonly value: T; readonly away: number }[][] = []
  for (const value of values) {
    const away = distance(value)
    const k = Math.floor(away / ring)
    while (rings.length <= k) rings.push([])
    rings[k]?.push({ value, away })
  }
  for (const one of rings) {
    one.sort((a, b) => a.away - b.away)
    for (const { value } of one) yield value
  }
}
