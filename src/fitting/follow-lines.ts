import { isLine, line as straight } from '../geometry/cubic.ts'
import { alongOf, nearestOnCubic } from '../geometry/nearest.ts'
import { endOf, firstCubic, lastCubic, type Path, reversePath, startOf } from '../geometry/path.ts'
import { directionAlong, pathLength, tangentAt } from '../geometry/path-length.ts'
import { add, between, cross, distance, dot, magnitude, type Point, scale, subtract, unit } from '../geometry/point.ts'
import type { Line, Seam } from '../pattern/piece.ts'
import { frameOnSeam, partStart, pointOnSeam, seamLength, seamStart } from '../pattern/seam.ts'
import { isStraight } from './close-cut.ts'
import { cutPath } from './cut-path.ts'
import type { OutlineChange } from './follow-marks.ts'
import { cubicMayReach, mayReach } from './may-reach.ts'

/** A line ends on a seam when its end is this near, mm. */
const ON_SEAM = 0.05

/**
 * A balance line after the outline changed: where it ended on a moved seam it is lengthened or shortened in its own
 * direction to the seam as it now is; where it ended in a corner that moved it goes to the corner, and a straight
 * line that ends on another seam goes along whole, so that it stays level. The inside of others stays where it was
 * drawn. A line that does not end on a moved seam is the same object. A line that has been moved itself is looked up on
 * the old seams by where it was `drawn`.
 */
export function followLine(
  line: Line,
  oldSeams: readonly Seam[],
  change: Pick<OutlineChange, 'seams' | 'maps' | 'corners'>,
  drawn: Line = line,
): Line {
  const [drawnStart, drawnEnd] = [startOf(drawn.path), endOf(drawn.path)]
  const startMay = mayFollow(drawnStart, oldSeams, change)
  const endMay = mayFollow(drawnEnd, oldSeams, change)
  if (!startMay && !endMay) return line
  const atStart = startMay ? followEnd(reversePath(line.path), oldSeams, change, drawnStart) : undefined
  const start = atStart ? reversePath(atStart) : line.path
  const atEnd = endMay ? followEnd(line.path, oldSeams, change, drawnEnd) : undefined
  if (!atStart && !atEnd) return line
  const again = line === drawn ? straightAgain(line, oldSeams, change) : undefined
  if (again) return { ...line, path: again }
  if (!atEnd) return { ...line, path: start }
  if (!atStart) return { ...line, path: atEnd }
  // One straight line with both ends moved stays one straight line.
  if (line.path.length === 1 && isLine(firstCubic(line.path))) {
    return { ...line, path: [straight(startOf(start), endOf(atEnd))] }
  }
  return { ...line, path: followEnd(start, oldSeams, change, drawnEnd) ?? start }
}

/** Whether an end may lie in a corner or on a seam that moved. */
function mayFollow(end: Point, oldSeams: readonly Seam[], { maps, corners }: Pick<OutlineChange, 'maps' | 'corners'>) {
  return (
    corners.some(({ from }) => distance(from, end) < ON_SEAM) ||
    oldSeams.some(({ id, parts }) => maps.has(id) && parts.some((part) => mayReach(part, end, ON_SEAM)))
  )
}

/**
 * A straight line from a corner that moved to another seam: in its old direction through the corner as it now is. From
 * corner to corner, as over a piece that was opened: straight from end to end.
 */
function straightAgain(
  { path }: Line,
  oldSeams: readonly Seam[],
  { seams, corners }: Pick<OutlineChange, 'seams' | 'corners'>,
): Path | undefined {
  if (!isStraight(path)) return undefined
  const ends = [startOf(path), endOf(path)] as const
  const [from, to] = ends.map((end) => cornerNow(end, oldSeams, corners))
  if (from && to) return straightOver(path, from, to)
  const [corner, away] = from ? [from, ends[1]] : [to, ends[0]]
  if (!corner || path.length > 1) return undefined
  for (const [i, old] of oldSeams.entries()) {
    const place = placeOn(old, away)
    if (!place) continue
    const met = crossing(seams[i] as Seam, place.along, corner, unit(subtract(away, from ? ends[0] : ends[1])))
    return met && [from ? straight(corner, met) : straight(met, corner)]
  }
  return undefined
}

/** Where the corner at an end of a line is now; undefined where it ends in none. */
function cornerNow(end: Point, oldSeams: readonly Seam[], corners: OutlineChange['corners']): Point | undefined {
  const old = oldSeams.map(seamStart).find((corner) => distance(corner, end) < ON_SEAM)
  return old && (corners.find(({ from }) => distance(from, old) < ON_SEAM)?.to ?? end)
}

/** A straight path between other ends; its joints stay where they were across the piece. */
function straightOver(path: Path, from: Point, to: Point): Path {
  const [start, end] = [startOf(path), endOf(path)]
  const joints = path.slice(1).map(({ p0 }) => {
    const share = dot(subtract(p0, start), subtract(end, start)) / dot(subtract(end, start), subtract(end, start))
    const across = to.x === from.x ? share : (p0.x - from.x) / (to.x - from.x)
    return between(from, to, across)
  })
  const points = [from, ...joints, to]
  return points.slice(1).map((p, i) => straight(points[i] as Point, p))
}

/** The line with its end taken to the moved outline; undefined where its end is not on a seam that moved. */
function followEnd(
  path: Path,
  oldSeams: readonly Seam[],
  change: Pick<OutlineChange, 'seams' | 'maps' | 'corners'>,
  drawnEnd: Point,
): Path | undefined {
  const end = endOf(path)
  const corner = change.corners.find(({ from }) => distance(from, drawnEnd) < ON_SEAM)
  if (corner) return withEnd(path, corner.to)
  for (const old of oldSeams) {
    const move = change.maps.get(old.id)
    const now = move && change.seams.find((seam) => seam.id === old.id)
    if (!now) continue
    const place = placeOn(old, drawnEnd)
    if (!place) continue
    const along = move(place.along)
    if (typeof along !== 'number') continue
    const moved = add(end, subtract(place.at, drawnEnd))
    if (distance(pointOnSeam(now, along), moved) < 1e-9) continue
    const target = crossing(now, along, end, tangentAt(lastCubic(path), 1))
    if (target) return withEnd(path, target)
  }
  return undefined
}

function withEnd(path: Path, target: Point): Path {
  const end = endOf(path)
  if (distance(end, target) < 1e-9) return path
  // Also the last of several: a line across a piece that was opened has a joint on its center.
  const last = lastCubic(path)
  if (isLine(last)) return [...path.slice(0, -1), straight(last.p0, target)]
  const length = pathLength(path)
  const beyond = dot(subtract(target, end), directionAlong(path, length))
  if (beyond >= 0) return [...path, straight(end, target)]
  const cut = length - magnitude(subtract(target, end))
  if (!(cut > 0)) return path
  const kept = cutPath(path, 0, cut)
  const shortened = kept[kept.length - 1]
  return shortened ? [...kept.slice(0, -1), { ...shortened, p3: target }] : path
}

/** Where the straight line through `from` in a direction meets the seam, near `guess` mm along it. */
function crossing(seam: Seam, guess: number, from: Point, direction: Point): Point | undefined {
  const length = seamLength(seam)
  let along = Math.min(Math.max(guess, 0), length)
  let { at: found, direction: way } = frameOnSeam(seam, along)
  for (let i = 0; i < 30; i++) {
    const off = cross(direction, subtract(found, from))
    if (Math.abs(off) < 1e-9) break
    const rate = cross(direction, way)
    if (Math.abs(rate) < 0.05) return undefined
    along = Math.min(Math.max(along - off / rate, 0), length)
    const next = frameOnSeam(seam, along)
    found = next.at
    way = next.direction
  }
  // On the line exactly, so that a line square to the grain stays so.
  return add(from, scale(direction, dot(subtract(found, from), direction)))
}

/** Where a point lies on the seam, mm of sewn length, and the point of the seam there; undefined where it lies on it nowhere. */
function placeOn(seam: Seam, at: Point): { readonly along: number; readonly at: Point } | undefined {
  let found: { readonly part: number; readonly index: number; readonly t: number; readonly at: Point } | undefined
  let nearest = ON_SEAM
  for (const [part, path] of seam.parts.entries()) {
    for (const [index, c] of path.entries()) {
      if (!cubicMayReach(c, at, ON_SEAM)) continue
      const { distance, ...place } = nearestOnCubic(c, at)
      if (distance > nearest || (found && distance === nearest)) continue
      found = { part, index, ...place }
      nearest = distance
    }
  }
  if (!found) return undefined
  return { along: partStart(seam, found.part) + alongOf(seam.parts[found.part] as Path, found), at: found.at }
}
