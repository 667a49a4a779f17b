import { CAP } from '../drafting/defaults.ts'
import { newton } from '../drafting/newton.ts'
import { pathLength } from '../geometry/path-length.ts'
import type { Point } from '../geometry/point.ts'
import { seamOf } from '../pattern/seam.ts'
import { bendables, bendPath } from './bend-path.ts'
import type { CapLine } from './cap-line.ts'
import { cutPath } from './cut-path.ts'
import { type CrownMove, crownBends, keptPart } from './move-crown.ts'

/** Both halves come to their lengths within this, mm. */
const ACCURACY = 1e-7

/** Each half must have this much cap above its underarm part to be drawn again, mm. Our own. */
const LEAST_SPAN = 40

export interface CrownRequest {
  /** By how much each half is to change its length, mm, in the order of the cap's halves. */
  readonly changes: readonly [number, number]
  /** How far the underarm parts move meanwhile. */
  readonly underarm?: readonly [Point, Point]
}

/**
 * Where the crown of a cap must go so that its halves change their lengths by so much, to 1e-6 mm, while 38 mm at each
 * underarm keep their shape: two unknowns, two lengths, damped Newton. Undefined where there is no such place.
 */
export function solveCrown(cap: CapLine, { changes, underarm }: CrownRequest): CrownMove | undefined {
  const kept = cap.halves.map((half) => keptPart(half, CAP.copied)) as [number, number]
  if (cap.halves.some((half, i) => half.length - (kept[i] as number) < LEAST_SPAN)) return undefined
  const move = (by: Point): CrownMove => ({ by, kept, ...(underarm === undefined ? {} : { underarm }) })
  const farthest = cap.halves[0].length + cap.halves[1].length
  const moving = crownBends(cap, move({ x: 0, y: 0 })).map(({ seam, from, to }) => {
    const path = cutPath(seamOf(cap.piece, seam).parts.flat(), from, to)
    return { parts: bendables(path, from), length: pathLength(path) }
  })
  const residuals = (x: number, y: number): [number, number] | undefined => {
    if (Math.hypot(x, y) > farthest) return undefined
    const bends = crownBends(cap, move({ x, y }))
    const [first, second] = moving.map(({ parts, length }, i) => {
      const bent = bendPath(parts, (bends[i] as (typeof bends)[number]).bend)
      return pathLength(bent, { accuracy: ACCURACY / 20 }) - length - (changes[i] as number)
    })
    return [first as number, second as number]
  }
  const found = newton(residuals, [0, 0], { accuracy: ACCURACY })
  return found && move({ x: found[0], y: found[1] })
}
