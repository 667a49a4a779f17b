import { crossings } from './crossings.ts'
import { type Cubic, line, moveCubic, pointAt, reverseCubic } from './cubic.ts'
import { CURVE_TOLERANCE, SAME_POINT } from './defaults.ts'
import { lineCrossings } from './line-crossings.ts'
import {
  endOfChain,
  extendedEnd,
  extendedStart,
  type JoinedOffset,
  mitreCorner,
  type OffsetJoint,
  startedAt,
  startOfChain,
  straight,
} from './offset-corner.ts'
import { movePath, reversePath } from './path.ts'
import { pathFrom, pathUntil } from './path-part.ts'
import { add, along, distance, dot, type Point, rightOf, subtract, turnBetween, unit } from './point.ts'
import { mirrorAcross, mirrorX } from './transform.ts'

// A corner that would reach farther than this many distances is mitred instead: its lines run nearly alike.
const FARTHEST = 3

// Shorter handles and cubics are rounding, mm.
const SLIVER = 1e-4

/**
 * The corner after a line whose allowance ends square to it: the stitching line is drawn on until it meets the next
 * line's cutting line, and the allowance ends square over that point. Mitred where the lines hardly turn.
 */
export function squareCorner(joint: OffsetJoint, limit: number): JoinedOffset {
  const { before, after, corner, directionBefore, directionAfter, distanceBefore, distanceAfter } = joint
  const most = FARTHEST * Math.max(distanceBefore, distanceAfter)
  const onAfter = axisMeeting(extendedStart(after, directionAfter, most), corner, directionBefore, most)
  if (!onAfter || !(distanceBefore > 0) || turnBetween(directionBefore, directionAfter) <= 0)
    return mitreCorner(joint, limit)
  const clear = clearOf(onAfter.rest, corner, directionBefore, distanceAfter)
  const top = along(clear.foot, rightOf(directionBefore), distanceBefore)
  return { ...straight(before, [top, clear.foot], clear.rest) }
}

/**
 * A line that bends more sharply at its end than its allowance is wide has a cutting line that comes too near to the
 * corner there: it is left at the first point that is far enough away, square to the way from the corner.
 */
function clearOf(rest: readonly Cubic[], corner: Point, direction: Point, least: number) {
  const start = { foot: startOfChain(rest), rest }
  if (distance(start.foot, corner) >= least - CURVE_TOLERANCE) return start
  for (const [index, cubic] of rest.entries()) {
    const t = Array.from({ length: 65 }, (_, k) => k / 64).find((t) => distance(pointAt(cubic, t), corner) >= least)
    if (t === undefined) continue
    const from = pointAt(cubic, t)
    const out = subtract(from, corner)
    const across = dot(out, direction)
    if (!(across > 0)) return start
    return { foot: along(corner, direction, dot(out, out) / across), rest: pathFrom(rest, { index, t }) }
  }
  return start
}

/**
 * The corner after a line that is folded back along itself (hem, wrist): beyond the stitching line the edge is the
 * mirror image of the next line's cutting line, so that it lies on the piece when folded.
 */
export function mirrorCorner(joint: OffsetJoint, limit: number): JoinedOffset {
  const { before, after, corner, directionBefore, directionAfter, distanceBefore, distanceAfter } = joint
  const most = FARTHEST * Math.max(distanceBefore, distanceAfter)
  const onAfter = axisMeeting(extendedStart(after, directionAfter, most), corner, directionBefore, most)
  if (!onAfter || !(distanceBefore > 0)) return mitreCorner(joint, limit)
  const image = movePath(onAfter.rest, mirrorAcross(corner, add(corner, directionBefore)))
  const edge = extendedEnd(before, directionBefore, most)
  const met = firstMeeting(edge, image, corner, 2 * most)
  if (!met) return mitreCorner(joint, limit)
  const kept = pathUntil(edge, met.a)
  const folded = reversePath(pathUntil(image, met.b))
  if (kept.length === 0) return mitreCorner(joint, limit)
  return joinChains(kept, folded, onAfter.rest)
}

/**
 * The corner at a fold, where an allowance of 0 begins or ends: a line that bends too sharply on its way to the fold has
 * a cutting line that runs over it and comes back; it ends where it reaches the fold. Undefined where it does not run over.
 */
export function foldCorner(joint: OffsetJoint): JoinedOffset | undefined {
  const { before, after, corner, directionAfter, distanceBefore, distanceAfter } = joint
  if (distanceBefore === 0 && distanceAfter > 0) {
    const turned = fromOtherSide(joint, (j) => foldCorner(j) ?? { before: [], between: [], after: [] })
    return turned.before.length > 0 ? turned : undefined
  }
  if (!(distanceAfter === 0 && distanceBefore > 0)) return undefined
  const over = lineCrossings(before, corner, add(corner, directionAfter)).filter(
    ({ share, at }) => share < 0 && -share < FARTHEST * distanceBefore && distance(at, endOfChain(before)) > SLIVER,
  )
  const first = over.sort((a, b) => a.index + a.t - b.index - b.t)[0]
  const kept = first ? pathUntil(before, first) : []
  return first && kept.length > 0 ? straight(kept, [first.at], after) : undefined
}

/**
 * The edge over a dart's mouth: closed, the dart's depth lies on the line before it; so beyond the first leg the
 * edge is the mirror image of what it lies on, as far as the dart's center, and from there its mirror image again.
 */
export function dartCorner(joint: OffsetJoint, point: Point): JoinedOffset {
  const { before, after, corner, cornerAfter, directionBefore, directionAfter, distanceBefore, distanceAfter } = joint
  const width = distance(corner, cornerAfter)
  const most = FARTHEST * Math.max(distanceBefore, distanceAfter, 1) + width
  const edge = extendedEnd(before, directionBefore, most)
  const legMeeting = nearestOnLine(edge, point, corner)
  const nextEdge = reaching(extendedStart(after, directionAfter, most), point, cornerAfter, most)
  const nextMeeting = nearestOnLine(nextEdge, point, cornerAfter)
  if (!legMeeting || !nextMeeting) return straight(before, [], after)
  const kept = pathUntil(edge, legMeeting)
  const rest = pathFrom(nextEdge, nextMeeting)
  if (kept.length === 0 || rest.length === 0) return straight(before, [], after)
  // What the fold lies on, run backward from the leg; drawn on straight where the line before is short.
  const under = kept.map(reverseCubic).reverse()
  const end = endOfChain(under)
  const image = movePath([...under, line(end, along(end, endDirection(under), most))], mirrorAcross(point, corner))
  // Halfway between the legs, also where they are not equally long.
  const middle = add(point, add(unit(subtract(corner, point)), unit(subtract(cornerAfter, point))))
  const center = lineCrossings(image, point, middle).find((c) => c.share > 0)
  if (!center) return straight(kept, [], rest)
  const half = pathUntil(image, center)
  const otherHalf = reversePath(movePath(half, mirrorAcross(point, middle)))
  return joinChains(kept, [...half, ...otherHalf], rest)
}

/** The same corner seen from the other line: `make` is given the mirrored joint, its result is mirrored back. */
export function fromOtherSide(joint: OffsetJoint, make: (joint: OffsetJoint) => JoinedOffset): JoinedOffset {
  const flip = mirrorX()
  const turned = (chain: readonly Cubic[]) => chain.map((c) => reverseCubic(moveCubic(c, flip))).reverse()
  const made = make({
    before: turned(joint.after),
    after: turned(joint.before),
    corner: flip(joint.cornerAfter),
    cornerAfter: flip(joint.corner),
    directionBefore: { x: joint.directionAfter.x, y: -joint.directionAfter.y },
    directionAfter: { x: joint.directionBefore.x, y: -joint.directionBefore.y },
    distanceBefore: joint.distanceAfter,
    distanceAfter: joint.distanceBefore,
  })
  return { before: turned(made.after), between: turned(made.between), after: turned(made.before) }
}

/** Where a chain meets the line through the corner, nearest the corner, and the rest of the chain from there. */
function axisMeeting(chain: readonly Cubic[], corner: Point, direction: Point, most: number) {
  let best: { index: number; t: number; at: Point } | undefined
  for (const found of lineCrossings(chain, corner, add(corner, direction))) {
    if (found.share < -SAME_POINT || found.share > most) continue
    if (!best || found.share < distance(best.at, corner)) best = found
  }
  if (!best) return undefined
  const rest = pathFrom(chain, best)
  return rest.length > 0 ? { at: startOfChain(rest), rest } : undefined
}

/** A short chain between two darts whose legs slant away past its end: drawn on straight until it meets the leg. */
function reaching(chain: readonly Cubic[], point: Point, mouth: Point, most: number): readonly Cubic[] {
  if (nearestOnLine(chain, point, mouth)) return chain
  const direction = endDirection(chain)
  const met = nearestOnLine(extendedEnd(chain, direction, most), point, mouth)
  // A little beyond, so that something of it is left after the leg.
  return met ? extendedEnd(chain, direction, distance(endOfChain(chain), met.at) + CURVE_TOLERANCE) : chain
}

/** Where a chain meets the endless line from the dart's point through a mouth point, nearest the mouth, outside it. */
function nearestOnLine(chain: readonly Cubic[], point: Point, mouth: Point) {
  let best: { index: number; t: number; share: number; at: Point } | undefined
  for (const found of lineCrossings(chain, point, mouth)) {
    if (found.share < 1 - 1e-9) continue
    if (!best || found.share < best.share) best = found
  }
  return best
}

function firstMeeting(a: readonly Cubic[], b: readonly Cubic[], corner: Point, most: number) {
  let best: { a: { index: number; t: number }; b: { index: number; t: number }; at: Point } | undefined
  for (const found of crossings(a, b).crossings) {
    if (distance(found.at, corner) > most) continue
    if (!best || found.b.index + found.b.t < best.b.index + best.b.t) best = found
  }
  return best
}

/** The chains one after the other with straight lines over gaps. */
function joinChains(before: readonly Cubic[], middle: readonly Cubic[], after: readonly Cubic[]): JoinedOffset {
  const made: Cubic[] = []
  let at = endOfChain(before)
  for (const c of middle) {
    if (distance(c.p0, c.p3) <= SAME_POINT && distance(c.p0, c.p1) <= SAME_POINT) continue
    if (distance(at, c.p0) > SAME_POINT) made.push(line(at, c.p0), c)
    else made.push({ ...c, p0: at })
    at = c.p3
  }
  if (distance(at, startOfChain(after)) > SAME_POINT) {
    made.push(line(at, startOfChain(after)))
    return { before, between: made, after }
  }
  return { before, between: made, after: startedAt(after, at) }
}

/** Unit direction at the end of a chain; a sliver left by a cut through the chain has none of its own. */
function endDirection(chain: readonly Cubic[]): Point {
  const c = chain.findLast(({ p0, p3 }) => distance(p0, p3) > SLIVER) ?? (chain[chain.length - 1] as Cubic)
  const from = distance(c.p2, c.p3) > SLIVER ? c.p2 : distance(c.p1, c.p3) > SLIVER ? c.p1 : c.p0
  return unit(subtract(c.p3, from))
}
