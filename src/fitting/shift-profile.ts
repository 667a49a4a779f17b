import type { Problem } from '../base/problem.ts'
import { failure, type Result, success } from '../base/result.ts'
import type { SeamPosition } from './position-map.ts'
import { type Profile, type ProfileNode, smoothProfile } from './profile.ts'
import { runPosition, type SeamRun } from './seam-run.ts'

/** A place that moves by `amount` mm along the outward normal; negative moves it inwards. */
export interface Station {
  /** Id of the seam. */
  readonly seam: string
  /** mm of sewn length from the seam's start. */
  readonly along: number
  /** mm along the outward normal. */
  readonly amount: number
  /**
   * Slope of the profile there, mm per mm along the run; absent: as smooth as can be, 0 at an end, which keeps its
   * angle. With an amount of 0 only at an end of the run, which stays and lets the line leave it at another angle.
   */
  readonly slope?: number
}

/** A place where nothing moves. */
export interface Anchor {
  /** Id of the seam. */
  readonly seam: string
  /** mm of sewn length from the seam's start. */
  readonly along: number
}

/** Places nearer than this on one seam are the same place, mm. */
const SAME_PLACE = 0.01

/** A line that moves out faster than it goes along would turn by more than 45°: no taper, but a corner. */
const STEEPEST = 1

/** A profile along a run, and the intervals in which anything moves, as run positions. */
export interface ShiftProfile {
  readonly profile: Profile
  readonly active: readonly { readonly from: number; readonly to: number }[]
}

/**
 * The profile of a shift: nothing moves beyond the anchors next to a station; an end of the run that is no
 * station is an anchor. Undefined when all amounts are zero. Problems: two amounts at one place, or a taper so
 * short that the line would turn a corner.
 */
export function shiftProfile(
  run: SeamRun,
  stations: readonly Station[],
  anchors: readonly Anchor[],
): Result<ShiftProfile | undefined> {
  const nodes = collectNodes(run, stations, anchors)
  if (!nodes.ok) return nodes
  if (stations.every((station) => station.amount === 0)) return success(undefined)
  const profile = smoothProfile(nodes.value)
  const steep = steepest(nodes.value, profile)
  if (steep) return failure(tooShort(run, steep))
  const active: { from: number; to: number }[] = []
  for (let i = 1; i < nodes.value.length; i++) {
    const a = nodes.value[i - 1] as ProfileNode
    const b = nodes.value[i] as ProfileNode
    if (a.amount === 0 && b.amount === 0) continue
    const last = active[active.length - 1]
    if (last && last.to === a.at) last.to = b.at
    else active.push({ from: a.at, to: b.at })
  }
  return success({ profile, active })
}

function collectNodes(run: SeamRun, stations: readonly Station[], anchors: readonly Anchor[]): Result<ProfileNode[]> {
  const place = (position: Omit<SeamPosition, 'piece'>): number => {
    const at = runPosition(run, { piece: run.piece.id, seam: position.seam, along: position.along })
    if (at === undefined) throw new RangeError(`${position.seam} is not part of the run`)
    if (at < -SAME_PLACE || at > run.length + SAME_PLACE) throw new RangeError(`${at} mm lies off the run`)
    // Ends are ends exactly, so that a corner moves as a corner.
    if (at < SAME_PLACE) return 0
    return at > run.length - SAME_PLACE ? run.length : at
  }
  const nodes: ProfileNode[] = []
  for (const station of stations) {
    const at = place(station)
    const twin = nodes.find((node) => Math.abs(node.at - at) < SAME_PLACE)
    if (twin && twin.amount !== station.amount) return failure(twoAmounts(run, at, twin.amount, station.amount))
    const slope = station.slope === undefined ? {} : { slope: station.slope }
    if (!twin) nodes.push({ at, amount: station.amount, ...slope })
  }
  for (const anchor of anchors) {
    const at = place(anchor)
    const twin = nodes.find((node) => Math.abs(node.at - at) < SAME_PLACE)
    if (twin && twin.amount !== 0) return failure(twoAmounts(run, at, twin.amount, 0))
    if (!twin) nodes.push({ at, amount: 0, slope: 0 })
  }
  for (const at of [0, run.length]) {
    if (!nodes.some((node) => Math.abs(node.at - at) < SAME_PLACE)) nodes.push({ at, amount: 0, slope: 0 })
  }
  const isEnd = ({ at }: ProfileNode) => at === 0 || at === run.length
  const turns = (n: ProfileNode) => isEnd(n) && n.slope !== undefined
  return success(nodes.map((n) => (n.amount === 0 && !turns(n) ? { ...n, slope: 0 } : n)).sort((a, b) => a.at - b.at))
}

interface Steep {
  readonly at: number
  readonly rise: number
  readonly width: number
}

function steepest(nodes: readonly ProfileNode[], profile: Profile): Steep | undefined {
  for (let i = 1; i < nodes.length; i++) {
    const a = nodes[i - 1] as ProfileNode
    const b = nodes[i] as ProfileNode
    const width = b.at - a.at
    for (let k = 0; k <= 8; k++) {
      if (Math.abs(profile.slope(a.at + (width * k) / 8)) > STEEPEST) {
        return { at: a.at, rise: Math.abs(b.amount - a.amount), width }
      }
    }
  }
  return undefined
}

function twoAmounts(run: SeamRun, at: number, one: number, other: number): Problem {
  return {
    code: 'two-amounts-at-one-place',
    where: { piece: run.piece.id, seam: seamAt(run, at) },
    actual: `${mm(one)} and ${mm(other)} at the same place, ${mm(at)} along the line`,
    expected: 'one amount at each place, and tapers that end elsewhere',
    hint: 'name another place to taper to, or leave the place out',
  }
}

function tooShort(run: SeamRun, steep: Steep): Problem {
  return {
    code: 'taper-too-short',
    where: { piece: run.piece.id, seam: seamAt(run, steep.at + steep.width / 2) },
    actual: `${mm(steep.rise)} within ${mm(steep.width)} of seam`,
    expected: `at least ${mm((1.5 * steep.rise) / STEEPEST)} of seam for this amount`,
    hint: 'taper to a place farther away, or take a smaller amount',
  }
}

function seamAt(run: SeamRun, at: number): string {
  let found = run.seams[0]?.id ?? ''
  for (const seam of run.seams) if ((run.seamStarts.get(seam.id) as number) < at) found = seam.id
  return found
}

function mm(value: number): string {
  return `${value.toFixed(1)} mm`
}
