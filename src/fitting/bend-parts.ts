import type { Path } from '../geometry/path.ts'
import { pathLength } from '../geometry/path-length.ts'
import type { Seam } from '../pattern/piece.ts'
import { type Bend, bendables, bendPath, bentPositions } from './bend-path.ts'
import { cutPath } from './cut-path.ts'
import { tableMap } from './position-map.ts'
import type { ReplacedSeam } from './replace-seams.ts'

/** How one part of a seam is bent, from `from` to `to` mm from the part's own start; outside it stays. */
export interface PartBend {
  readonly from: number
  readonly to: number
  /** `at` is mm from the part's start. */
  readonly bend: Bend
}

/**
 * A seam with darts, its parts bent each by its own displacement (see `bendPath`); undefined leaves a part as it is. The
 * ends of the parts go where their displacements take them: darts and neighbours are the caller's to move along.
 */
export function bendParts(seam: Seam, bendOf: (index: number, length: number) => PartBend | undefined): ReplacedSeam {
  const old: number[] = [0]
  const now: number[] = [0]
  let before = 0
  let after = 0
  const parts = seam.parts.map((part, index): Path => {
    const length = pathLength(part)
    const request = bendOf(index, length)
    const { path, places, moved } = request
      ? bendPart(part, length, request)
      : { path: part, places: [length], moved: [length] }
    places.forEach((place, i) => {
      if (before + place <= (old[old.length - 1] as number) + 1e-9) return
      old.push(before + place)
      now.push(after + (moved[i] as number))
    })
    before += length
    after += moved[moved.length - 1] as number
    return path
  })
  return { seam: { ...seam, parts }, map: tableMap(old, now) }
}

function bendPart(part: Path, length: number, { from, to, bend }: PartBend) {
  const parts = bendables(cutPath(part, from, to), from)
  const bent = [...bendPath(parts, bend)]
  const head = from > 1e-6 ? cutPath(part, 0, from) : []
  const tail = to < length - 1e-6 ? cutPath(part, to, length) : []
  const last = head[head.length - 1]
  const first = tail[0]
  const [one, other] = [bent[0], bent[bent.length - 1]]
  if (last && one) bent[0] = { ...one, p0: last.p3 }
  if (first && other) bent[bent.length - 1] = { ...(bent[bent.length - 1] ?? other), p3: first.p0 }
  const { old, now } = bentPositions(parts, bent, from)
  const end = now[now.length - 1] as number
  const path = [...head, ...bent, ...tail]
  return tail.length > 0
    ? { path, places: [...old, length], moved: [...now, end + length - to] }
    : { path, places: old, moved: now }
}
