import type { SeamPlace } from './position.ts'
import { sayPlace } from './resolve-place.ts'

/**
 * Several places as a stitcher reads them: `the cap line, front and back, and the shoulder notch`. Places that differ
 * only in the half are said once.
 */
export function sayPlaces(places: readonly SeamPlace[], sayLength: (mm: number) => string): string {
  const said = new Map<string, string[]>()
  for (const { half, ...place } of places) {
    const words = articled(named(place, sayLength), sayLength)
    const halves = said.get(words) ?? []
    said.set(words, half === undefined || halves.includes(half) ? halves : [...halves, half])
  }
  const each = [...said].map(([words, halves]) => (halves.length === 0 ? words : `${words}, ${halves.join(' and ')}`))
  const comma = each.some((words) => words.includes(','))
  return listed(each, comma ? '; ' : ', ')
}

/** A place nearer to a name than a tape can say has that name. */
export function named(place: SeamPlace, sayLength: (mm: number) => string): SeamPlace {
  return 'from' in place && /^0 /.test(sayLength(place.distance)) ? { landmark: place.from } : place
}

/** The words of `sayPlace` with the article that names have on a slip. */
function articled(place: SeamPlace, sayLength: (mm: number) => string): string {
  if ('landmark' in place) return `the ${place.landmark}`
  if ('line' in place) return `the ${place.line}`
  if ('from' in place) return `${sayLength(place.distance)} from the ${place.from} toward the ${place.toward}`
  const [a, b] = place.between
  return sayPlace({ between: [`the ${a}`, `the ${b}`], share: place.share }, sayLength)
}

function listed(words: readonly string[], separator: string): string {
  if (words.length < 2) return words.join('')
  return `${words.slice(0, -1).join(separator)}${separator === '; ' ? '; ' : ' and '}${words[words.length - 1]}`
}
