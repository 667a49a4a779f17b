import { cos, sin } from '../base/trig.ts'
import { crossings } from './crossings.ts'
import { type Cubic, isLine, line } from './cubic.ts'
import { SAME_POINT } from './defaults.ts'
import { pathFrom, pathUntil } from './path-part.ts'
import { add, along, between, cross, distance, dot, type Point, subtract, turnBetween, unit } from './point.ts'

// Ends this near are moved onto each other, a fifth of the curve tolerance: joints that are smooth but for rounding.
const SNAP = 0.002

/** Two offset chains that must be joined round a corner of the line they are offsets of. */
export interface OffsetJoint {
  /** The offset of the line that arrives at the corner, and of the one that leaves it. */
  readonly before: readonly Cubic[]
  readonly after: readonly Cubic[]
  /** The corner itself, where the line that arrives ends; a dart's mouth has two. */
  readonly corner: Point
  readonly cornerAfter: Point
  /** Unit directions of travel at the corner. */
  readonly directionBefore: Point
  readonly directionAfter: Point
  readonly distanceBefore: number
  readonly distanceAfter: number
}

/** The joined chains: cut back or extended, and what runs between them. */
export interface JoinedOffset {
  readonly before: readonly Cubic[]
  readonly between: readonly Cubic[]
  readonly after: readonly Cubic[]
}

/**
 * The corner at which both offsets, extended straight where they must be, meet. A mitre longer than `limit` times the
 * larger distance is cut off square to its own direction at that distance from the corner, so that the corner never
 * has less than its allowance. Where the offsets run past each other without meeting (a concave corner between
 * short lines) they are led over the corner: a loop that `trimClosed` or `trimOpen` takes away.
 */
export function mitreCorner(joint: OffsetJoint, limit: number): JoinedOffset {
  const { before, after, corner, directionBefore, directionAfter, distanceBefore, distanceAfter } = joint
  const end = endOfChain(before)
  const start = startOfChain(after)
  if (distance(end, start) <= SAME_POINT) return { before, between: [], after: startedAt(after, end) }
  if (distance(end, start) <= SNAP) return snapped(before, after)
  const reach = Math.max(Math.abs(distanceBefore), Math.abs(distanceAfter))
  const turn = turnBetween(directionBefore, directionAfter)
  const sine = sin(turn)
  if (Math.abs(sine) < 1e-9 && cos(turn) < 0) {
    // A cusp: round its tip.
    return straight(before, [along(end, directionBefore, reach), along(start, directionBefore, reach)], after)
  }
  // From each end along its own line to where the lines cross; negative: the line must be cut back.
  const ahead = (distanceAfter - distanceBefore * cos(turn)) / sine
  const back = (distanceBefore - distanceAfter * cos(turn)) / sine
  const most = limit * reach
  if (ahead >= -SAME_POINT && back >= -SAME_POINT && Number.isFinite(ahead + back)) {
    const tip = along(end, directionBefore, Math.max(0, ahead))
    if (distance(tip, corner) <= most) return straight(before, [tip], after)
    const outward = unit(subtract(tip, corner))
    const first = cutOff(end, directionBefore, ahead, corner, outward, reach)
    const second = cutOff(start, { x: -directionAfter.x, y: -directionAfter.y }, back, corner, outward, reach)
    return straight(before, [first, second], after)
  }
  // Nearly straight on with unequal distances: the lines cross far away if at all, a step.
  const unequal = Math.abs(distanceBefore - distanceAfter) > SNAP
  if (unequal && Math.abs(sine) < 1e-3 && cos(turn) > 0) return straight(before, [], after)
  const room = Math.max(most, distance(end, start)) * 2
  const met = meeting(joint, Math.max(0, Math.min(ahead, room)), Math.max(0, Math.min(back, room)))
  if (met) return met
  return ahead < 0 && back < 0 ? straight(before, [corner], after) : straight(before, [], after)
}

/** Both ends moved, with their handles, to the middle of the gap. */
function snapped(before: readonly Cubic[], after: readonly Cubic[]): JoinedOffset {
  const last = before[before.length - 1] as Cubic
  const first = after[0] as Cubic
  const middle = between(last.p3, first.p0, 0.5)
  const moved = { ...last, p2: add(last.p2, subtract(middle, last.p3)), p3: middle }
  const movedFirst = { ...first, p0: middle, p1: add(first.p1, subtract(middle, first.p0)) }
  return { before: [...before.slice(0, -1), moved], between: [], after: [movedFirst, ...after.slice(1)] }
}

/** Where the line from `from` reaches `reach` along `outward` from the corner, no farther than `most`. */
function cutOff(from: Point, direction: Point, most: number, corner: Point, outward: Point, reach: number): Point {
  const slope = dot(direction, outward)
  const need = (reach - dot(subtract(from, corner), outward)) / slope
  return along(from, direction, slope > 0 ? Math.min(Math.max(0, need), most) : 0)
}

/** The chains extended straight by the given lengths and cut where they meet nearest the corner. */
function meeting(joint: OffsetJoint, ahead: number, back: number): JoinedOffset | undefined {
  const before = extendedEnd(joint.before, joint.directionBefore, ahead * 1.01)
  const after = extendedStart(joint.after, joint.directionAfter, back * 1.01)
  let best: { a: { index: number; t: number }; b: { index: number; t: number }; at: Point } | undefined
  for (const found of crossings(before, after).crossings) {
    if (!best || distance(found.at, joint.corner) < distance(best.at, joint.corner)) best = found
  }
  if (!best) return undefined
  const kept = pathUntil(before, best.a)
  const rest = pathFrom(after, best.b)
  if (kept.length === 0 || rest.length === 0) return undefined
  return { before: kept, between: [], after: startedAt(rest, endOfChain(kept)) }
}

/** From chain to chain by straight lines over the given points; a chain that ends in a line is made longer instead. */
export function straight(before: readonly Cubic[], points: readonly Point[], after: readonly Cubic[]): JoinedOffset {
  let first = [...before]
  let last = [...after]
  const lines: Cubic[] = []
  const [tip] = points
  if (tip) first = lengthenedEnd(first, tip)
  const final = points[points.length - 1]
  if (final) last = lengthenedStart(last, final)
  let at = endOfChain(first)
  const goal = startOfChain(last)
  for (const p of [...points, goal]) {
    if (distance(at, p) <= SAME_POINT) continue
    lines.push(line(at, p))
    at = p
  }
  return { before: first, between: lines, after: lines.length > 0 ? last : startedAt(last, at) }
}

/** The chain run on to p: as one line where it ends in a line that points there. */
function lengthenedEnd(chain: Cubic[], p: Point): Cubic[] {
  const last = chain[chain.length - 1] as Cubic
  if (!isLine(last) || !pointsTo(last.p0, last.p3, p)) return chain
  return [...chain.slice(0, -1), line(last.p0, p)]
}

function lengthenedStart(chain: Cubic[], p: Point): Cubic[] {
  const first = chain[0] as Cubic
  if (!isLine(first) || !pointsTo(first.p3, first.p0, p)) return chain
  return [line(p, first.p3), ...chain.slice(1)]
}

/** Whether p lies straight ahead of b, seen from a, within rounding. */
function pointsTo(a: Point, b: Point, p: Point): boolean {
  const length = distance(a, b)
  const way = subtract(b, a)
  return length > 1e-3 && dot(subtract(p, b), way) > 0 && Math.abs(cross(subtract(p, a), way)) <= 1e-9 * length
}

export function endOfChain(chain: readonly Cubic[]): Point {
  return (chain[chain.length - 1] as Cubic).p3
}

export function startOfChain(chain: readonly Cubic[]): Point {
  return (chain[0] as Cubic).p0
}

/** The chain with its first point replaced by one that is the same within rounding. */
export function startedAt(chain: readonly Cubic[], p: Point): readonly Cubic[] {
  const first = chain[0]
  return first && first.p0 !== p ? [{ ...first, p0: p }, ...chain.slice(1)] : chain
}

export function extendedEnd(chain: readonly Cubic[], direction: Point, by: number): readonly Cubic[] {
  const end = endOfChain(chain)
  if (!(by > SAME_POINT)) return chain
  const tip = along(end, direction, by)
  const longer = lengthenedEnd([...chain], tip)
  return endOfChain(longer) === tip ? longer : [...chain, line(end, tip)]
}

export function extendedStart(chain: readonly Cubic[], direction: Point, by: number): readonly Cubic[] {
  const start = startOfChain(chain)
  if (!(by > SAME_POINT)) return chain
  const tip = along(start, direction, -by)
  const longer = lengthenedStart([...chain], tip)
  return startOfChain(longer) === tip ? longer : [line(tip, start), ...chain]
}
