import type { Path } from '../geometry/path.ts'
import { pathLength } from '../geometry/path-length.ts'
import { add, type Point, point, scale, subtract } from '../geometry/point.ts'
import type { Bend } from './bend-path.ts'
import type { SeamBend } from './bend-seams.ts'
import { type CapHalf, type CapLine, fromUnderarm } from './cap-line.ts'

/** How a cap moves: its crown by `by` mm, its underarm parts as they are by `underarm`, each `kept` mm long. */
export interface CrownMove {
  readonly by: Point
  /** In the order of the cap's halves. */
  readonly kept: readonly [number, number]
  /** Absent: the underarm parts stay, the same numbers. */
  readonly underarm?: readonly [Point, Point]
}

/**
 * The displacement that takes the crown of a cap with it and leaves the underarm parts as they are. Along each half it
 * grows as u²(3 − 2u): of all displacements that leave place and direction at both ends alone this one bends least
 * (∫|D″|² is smallest for a cubic), so what fittings shaped in between stays as much as it can. The crown keeps its
 * direction, the joint of the halves its smoothness.
 */
export function crownBends(cap: CapLine, { by, kept, underarm }: CrownMove): SeamBend[] {
  return cap.halves.map((half, i): SeamBend => {
    const keep = kept[i] as number
    const low = underarm?.[i] ?? point(0, 0)
    const start = underarm ? 0 : keep
    const [from, to] = half.runsUp ? [start, half.length] : [0, half.length - start]
    return { seam: half.seam.id, from, to, bend: crownBend(half, keep, low, by) }
  })
}

function crownBend(half: CapHalf, keep: number, low: Point, high: Point): Bend {
  const span = half.length - keep
  const way = half.runsUp ? 1 : -1
  const rise = subtract(high, low)
  return (at) => {
    const raw = (fromUnderarm(half, at) - keep) / span
    // The ends are ends exactly, so that the crown is one point and the underarm part stays as it is.
    if (raw > 1 - 1e-9) return { by: high, change: point(0, 0) }
    const u = raw < 1e-9 ? 0 : raw
    return { by: add(low, scale(rise, u * u * (3 - 2 * u))), change: scale(rise, (way * 6 * u * (1 - u)) / span) }
  }
}

/** A joint this near to where a kept part should end is where it ends, mm: no sliver of a cubic is left over. */
const AT_JOINT = 1.5

/** Where the kept underarm part of a half ends, mm from the underarm: `keep`, or the joint of its cubics next to it. */
export function keptPart(half: CapHalf, keep: number): number {
  let start = 0
  let best = keep
  let least = AT_JOINT
  for (const c of half.seam.parts.flat()) {
    start += pathLength([c] as Path)
    const away = Math.abs(fromUnderarm(half, start) - keep)
    if (away < least) {
      least = away
      best = fromUnderarm(half, start)
    }
  }
  return best
}
