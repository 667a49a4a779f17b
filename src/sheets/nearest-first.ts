/**
 * The values by their distance, nearest first; those as near in the order given. Sorted in rings of this breadth, and only as
 * far as they are asked for: most places are found near.
 */
export function nearestFirst<T>(values: readonly T[], away: (value: T) => number, breadth: number): Iterable<T> {
  const rings: T[][] = []
  for (const value of values) {
    const k = Math.floor(away(value) / breadth)
    while (rings.length <= k) rings.push([])
    rings[k]?.push(value)
  }
  let sorted = 0
  return {
    *[Symbol.iterator]() {
      for (const [k, ring] of rings.entries()) {
        if (k >= sorted) ring.sort((a, b) => away(a) - away(b))
        sorted = Math.max(sorted, k + 1)
        yield* ring
      }
    },
  }
}
