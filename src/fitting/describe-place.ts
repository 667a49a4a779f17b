import { pointAlong } from '../geometry/path-length.ts'
import { baseName } from '../pattern/side-names.ts'
import { mayReach } from './may-reach.ts'
import { type NamedPlace, namedPlaces } from './named-places.ts'
import type { SeamPlace } from './position.ts'
import { placeOnRun } from './resolve-place.ts'
import type { SeamRun } from './seam-run.ts'

/** A place this near to one that has a name is called by it, mm. */
const AT = 0.5

/** A line that meets the seam comes at least so near to it, mm. */
const BESIDE = 0.1

/**
 * A place on a line in the words that a performer file uses: the name of what lies there, a balance line that meets
 * the seam there, else its distance from the nearest name toward the next one on the other side. `resolvePlace` finds
 * it again within half a millimeter. `places` are those that have a name, where they are known.
 */
export function describePlace(run: SeamRun, at: number, places: readonly NamedPlace[] = namedPlaces(run)): SeamPlace {
  const here = places.find((place) => Math.abs(place.at - at) <= AT)
  if (here) return { landmark: here.name }
  const lines = linesNear(run, at)
  for (const line of run.piece.lines) {
    const place: SeamPlace = { line: baseName(line.id) }
    if (!lines.has(place.line)) continue
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

/** The names of the balance lines that may meet the run at a place: the others need not be looked for on all of it. */
function linesNear({ piece, stretches }: SeamRun, at: number): ReadonlySet<string> {
  const points = stretches
    .filter(({ start, length }) => at > start - AT && at < start + length + AT)
    .map(({ path, start, length }) => pointAlong(path, Math.min(Math.max(at - start, 0), length)))
  const near = piece.lines.filter(({ path }) => points.some((point) => mayReach(path, point, AT + BESIDE)))
  return new Set(near.map(({ id }) => baseName(id)))
}
