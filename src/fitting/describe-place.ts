import { baseName } from '../pattern/side-names.ts'
import { namedPlaces } from './named-places.ts'
import type { SeamPlace } from './position.ts'
import { placeOnRun } from './resolve-place.ts'
import type { SeamRun } from './seam-run.ts'

/** A place this near to one that has a name is called by it, mm. */
const AT = 0.5

/**
 * A place on a line in the words that a performer file uses: the name of what lies there, a balance line that meets
 * the seam there, else its distance from the nearest name toward the next one on the other side. `resolvePlace` finds
 * it again within half a millimeter.
 */
export function describePlace(run: SeamRun, at: number): SeamPlace {
  const places = namedPlaces(run)
  const here = places.find((place) => Math.abs(place.at - at) <= AT)
  if (here) return { landmark: here.name }
  for (const line of run.piece.lines) {
    const place: SeamPlace = { line: baseName(line.id) }
    const meets = placeOnRun(place, run)
    // A line that meets the seam twice says too little.
    if (meets.length === 1 && Math.abs((meets[0] as number) - at) <= AT) return place
  }
  const before = places.findLast((place) => place.at < at)
  // Of several names at one corner the first is what a draper calls it, the last the seam that begins there.
  const lower = before && places.find((place) => Math.abs(place.at - before.at) <= AT)
  const upper = places.find((place) => place.at > at)
  if (!lower || !upper) throw new RangeError(`no place ${at} mm along ${run.seams.map((seam) => seam.id).join(', ')}`)
  const [from, toward] = at - lower.at <= upper.at - at ? [lower, upper] : [upper, lower]
  return { from: from.name, toward: toward.name, distance: Math.abs(at - from.at) }
}
