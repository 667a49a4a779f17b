import { atan2 } from '../../base/trig.ts'
import { type Path, reversePath } from '../../geometry/path.ts'
import { shiftedTurn, type TurnedLine, velocity } from '../line-turns.ts'
import { type Profile, type ProfileNode, type SmoothProfile, smoothProfile } from '../profile.ts'

/** Each half of the cap may change its length by no more than about this, mm. */
export const MOST_CHANGE = 1

/** A rise of direction that the eye does not see as a bend back, radians: a quarter of a degree. */
const UNSEEN = Math.PI / 720

/** What a reach does to one half of the cap. */
export interface ReachOutcome {
  /** Change of the half's length, mm. */
  readonly change: number
  /** How far the cap turns at the underarm, radians; 0: it meets the underarm seam at the angle it had. */
  readonly turn: number
  /** Whether it stays hollow from the underarm to the taper's end. */
  readonly hollow: boolean
}

/** The shape of a reach along half a cap, from the underarm (position 0) to the end of the taper. */
export interface ReachShape {
  readonly nodes: readonly ProfileNode[]
  /** Slope at the underarm, mm per mm, zero or negative. */
  readonly slope: number
}

/**
 * How a reach of `by` mm runs to nothing over `taper` mm: as near as can be to level at the underarm, where the
 * cap then runs smoothly across the underarm seam, as long as each half stays hollow below the notch and keeps
 * its length within 1 mm. On a short taper a level start would bulge the cap; it is then lifted like a wing, straight
 * and then in a parabola, hollow at the price of a corner at the underarm. `lines` are the halves
 * from the underarm up as far as the taper, both as if they were the front half. Where no shape keeps the length, the hollow one that changes it least.
 */
export function reachShape(lines: readonly TurnedLine[], by: number, taper: number): ReachShape {
  const room: Room = { amounts: [], slopes: [] }
  const changeBy = (profile: SmoothProfile) => (line: TurnedLine) => Math.abs(changeOf(line, profile, room))
  const isHollow = (profile: Profile) => lines.every((line) => staysHollow(line, profile))
  const tried: { readonly shape: ReachShape; readonly profile: Profile; readonly change: number }[] = []
  for (const shape of candidates(by, taper)) {
    const profile = smoothProfile(shape.nodes)
    const change = Math.max(...lines.map(changeBy(profile)))
    // The directions cost more than the length: they are asked for only where it is kept.
    if (change <= MOST_CHANGE && isHollow(profile)) return shape
    tried.push({ shape, profile, change })
  }
  // One that is not hollow comes after all that are.
  const inOrder = tried.sort((a, b) => a.change - b.change)
  return (inOrder.find(({ profile }) => isHollow(profile)) ?? (inOrder[0] as (typeof tried)[number])).shape
}

/** Shapes in order of preference: level or nearly so, then straight with a parabola, of its usual share, tighter, wider. */
function* candidates(by: number, taper: number): Generator<ReachShape> {
  const end = { at: taper, amount: 0, slope: 0 }
  for (let k = 0; k <= 24; k++) {
    const slope = k === 0 ? 0 : (-1.2 * by * k) / (24 * taper)
    yield { nodes: [{ at: 0, amount: by, slope }, end], slope }
  }
  for (const share of [0.5, 0.46, 0.42, 0.38, 1 / 3, 0.55, 0.6, 0.7, 0.8, 0.9]) {
    const width = share * taper
    const slope = -by / (taper - width / 2)
    yield {
      nodes: [{ at: 0, amount: by, slope }, { at: taper - width, amount: (-slope * width) / 2, slope }, end],
      slope,
    }
  }
}

/** What a reach of this shape does to a half of the cap that runs up from the underarm as the front one does. */
export function reachOutcome(line: TurnedLine, shape: ReachShape): ReachOutcome {
  const profile = smoothProfile(shape.nodes)
  const start = velocity(profile, 0, line.curvature[0] as number)
  return {
    change: changeOf(line, profile),
    turn: Math.abs(atan2(start.across, start.along)),
    hollow: staysHollow(line, profile),
  }
}

/** A half of the cap run up from the underarm as if it were the front half: a back half seen in the mirror. */
export function asFrontHalf(path: Path, runsUp: boolean): Path {
  const mirror = (p: { x: number; y: number }) => ({ x: 0 - p.x, y: p.y })
  if (runsUp) return path
  return reversePath(path).map((c) => ({ p0: mirror(c.p0), p1: mirror(c.p1), p2: mirror(c.p2), p3: mirror(c.p3) }))
}

/** Arrays to write in, the same for every shape that is tried. */
interface Room {
  readonly amounts: number[]
  readonly slopes: number[]
}

/** By how much a shift by the profile makes the line longer, mm. */
function changeOf(
  { at, curvature }: TurnedLine,
  profile: SmoothProfile,
  room: Room = { amounts: [], slopes: [] },
): number {
  const { amounts, slopes } = room
  profile.along(at, amounts, slopes)
  let change = 0
  let speed = 0
  for (let i = 0; i < at.length; i++) {
    const along = 1 + (curvature[i] as number) * (amounts[i] as number)
    const across = slopes[i] as number
    const next = Math.sqrt(along * along + across * across)
    if (i > 0) change += ((at[i] as number) - (at[i - 1] as number)) * ((speed + next) / 2 - 1)
    speed = next
  }
  return change
}

/** Whether the line still turns one way only after a shift by the profile. */
function staysHollow(line: TurnedLine, profile: Profile): boolean {
  let lowest = Number.POSITIVE_INFINITY
  for (let i = 0; i < line.at.length; i++) {
    const direction = shiftedTurn(line, profile, i)
    if (direction > lowest + UNSEEN) return false
    lowest = Math.min(lowest, direction)
  }
  return true
}
