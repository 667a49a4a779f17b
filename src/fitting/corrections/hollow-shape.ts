import type { Path } from '../../geometry/path.ts'
import { shiftedTurns, turnChanges, turnedLine } from '../line-turns.ts'
import { type ProfileNode, smoothProfile } from '../profile.ts'

/** Bends below this count as none, radians: half of what the checks let pass as unseen. */
const UNSEEN = Math.PI / 1440

/** Steps of the slope at the underarm that are tried, up to the one with which the hollow begins without a bend back. */
const SLOPES = 8
const ENOUGH = 1.5

/** Beyond the notch a hollow may end at these shares of its distance from the underarm, and this far below the top, mm. */
const ENDS = [1, 1.25, 1.5, 1.75, 2] as const
const BELOW_TOP = 30

export interface HollowRequest {
  /** The half, from the underarm up, as if it were the front one. */
  readonly half: Path
  readonly length: number
  /** Depth, mm. */
  readonly by: number
  /** Where it is deepest, mm from the underarm. */
  readonly deepest: number
  /** Where it begins; undefined: at the underarm. */
  readonly start?: number
  /** Where it ends, and whether it may end farther up. */
  readonly end: number
  readonly fixed: boolean
}

/** The shape of a hollow: where it ends, and how steeply the line turns in at the underarm, mm per mm. */
export interface HollowShape {
  readonly end: number
  readonly slope: number
}

/**
 * The hollow that leaves the half as fair as it was: it turns in at the underarm no more, and ends no farther up, than
 * it must so that the line does not bend back on either side of it. Where none does, the one that bends back least often.
 */
export function hollowShape(request: HollowRequest): HollowShape {
  const { by, deepest, start, end, fixed, length } = request
  const line = turnedLine(request.half, length)
  const most = turnChanges(line.turned, UNSEEN)
  const ends = fixed ? [end] : ENDS.map((share) => share * end).filter((at) => at === end || at < length - BELOW_TOP)
  const slopes =
    start === undefined ? Array.from({ length: SLOPES + 1 }, (_, k) => (k / SLOPES) * ENOUGH * (by / deepest)) : [0]
  let best: { shape: HollowShape; changes: number } | undefined
  for (const slope of slopes) {
    for (const at of ends) {
      const changes = turnChanges(shiftedTurns(line, smoothProfile(nodesOf(request, { end: at, slope }))), UNSEEN)
      if (changes <= most) return { end: at, slope }
      if (!best || changes < best.changes) best = { shape: { end: at, slope }, changes }
    }
  }
  return (best as { shape: HollowShape }).shape
}

function nodesOf({ by, deepest, start }: HollowRequest, { end, slope }: HollowShape): ProfileNode[] {
  return [
    { at: start ?? 0, amount: 0, slope: -slope },
    { at: deepest, amount: -by, slope: 0 },
    { at: end, amount: 0, slope: 0 },
  ]
}
