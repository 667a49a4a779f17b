import { nearest } from '../../../geometry/nearest.ts'
import type { Path } from '../../../geometry/path.ts'
import { pathLength, subPath } from '../../../geometry/path-length.ts'
import { distance, type Point } from '../../../geometry/point.ts'

/** A seam of a piece on the page, and where it begins, mm of sewn length round the piece. */
interface OutlineSeam {
  readonly seam: string
  readonly parts: readonly Path[]
  readonly start: number
  readonly length: number
}

/** The stitching lines of a piece in their order round it, darts closed. */
export interface SewnOutline {
  readonly piece: string
  readonly seams: readonly OutlineSeam[]
  readonly length: number
}

/** A place on the page; with `piece` and `round`, mm round its outline, where it lies on a stitching line. */
export interface Spot {
  readonly at: Point
  readonly name: string
  readonly piece: string
  readonly round?: number
}

export function sewnOutline(
  piece: string,
  seams: readonly (readonly [seam: string, parts: readonly Path[]])[],
): SewnOutline {
  let start = 0
  const placed = seams.map(([seam, parts]) => {
    const length = parts.reduce((sum, part) => sum + pathLength(part), 0)
    const one = { seam, parts, start, length }
    start += length
    return one
  })
  return { piece, seams: placed, length: start }
}

/** The nearest place on any of the outlines. */
export function nearestSpot(
  outlines: readonly SewnOutline[],
  p: Point,
): (Spot & { readonly distance: number }) | undefined {
  let best: (Spot & { readonly distance: number }) | undefined
  for (const { piece, seams } of outlines) {
    for (const { seam, parts, start } of seams) {
      let before = start
      for (const part of parts) {
        const found = nearest(part, p)
        if (!best || found.distance < best.distance)
          best = { at: found.at, name: `on the ${seam}`, piece, round: before + found.along, distance: found.distance }
        before += pathLength(part)
      }
    }
  }
  return best
}

/** A measure between two spots; mm. */
export interface Measured {
  readonly straight: number
  /** Along the stitching lines of one piece, darts closed: the shorter way, what it runs along, and the other way. */
  readonly along?: {
    readonly mm: number
    readonly seams: readonly string[]
    readonly paths: readonly Path[]
    readonly other: number
  }
}

export function measureBetween(outlines: readonly SewnOutline[], a: Spot, b: Spot): Measured {
  const straight = distance(a.at, b.at)
  const outline = outlines.find(({ piece }) => piece === a.piece)
  if (!outline || a.piece !== b.piece || a.round === undefined || b.round === undefined) return { straight }
  const [low, high] = a.round < b.round ? [a.round, b.round] : [b.round, a.round]
  const inside = high - low
  const round = outline.length - inside
  const stretches: readonly (readonly [number, number])[] =
    inside <= round
      ? [[low, high]]
      : [
          [high, outline.length],
          [0, low],
        ]
  const along = stretches.map(([from, to]) => between(outline, from, to))
  return {
    straight,
    along: {
      mm: Math.min(inside, round),
      seams: [...new Set(along.flatMap(({ seams }) => seams))],
      paths: along.flatMap(({ paths }) => paths),
      other: Math.max(inside, round),
    },
  }
}

/** Shorter than this there is nothing to draw, mm. */
const NOTHING = 1e-4

function between(outline: SewnOutline, from: number, to: number): { seams: string[]; paths: Path[] } {
  const seams: string[] = []
  const paths: Path[] = []
  for (const { seam, parts, start } of outline.seams) {
    let before = start
    for (const part of parts) {
      const length = pathLength(part)
      const a = Math.max(0, from - before)
      const b = Math.min(length, to - before)
      if (b - a > NOTHING) {
        paths.push(subPath(part, a, b))
        seams.push(seam)
      }
      before += length
    }
  }
  return { seams, paths }
}
