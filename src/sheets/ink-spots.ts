import type { Segment } from './ink.ts'

/** Spots are about so far apart, mm: well below any page. */
const APART = 40

/** Single places that have ink, x and y by turns, mm. */
export type InkSpots = Float64Array

/** Some places on the ink, one for each square of a grid that it begins in: enough to see at once where it lies. */
export function inkSpots(ink: readonly Segment[]): InkSpots {
  const found = new Map<string, readonly [number, number]>()
  for (const { a } of ink) {
    const square = `${Math.floor(a.x / APART)} ${Math.floor(a.y / APART)}`
    if (!found.has(square)) found.set(square, [a.x, a.y])
  }
  return Float64Array.from([...found.values()].flat())
}
