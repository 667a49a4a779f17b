import { type Cubic, line, pointAt } from './cubic.ts'
import { SAME_POINT } from './defaults.ts'
import { lineCrossings } from './line-crossings.ts'
import { isClosed, movePath, type Path } from './path.ts'
import type { PathParameter } from './path-length.ts'
import { pathBetween } from './path-part.ts'
import { cross, distance, equalPoints, type Point, subtract } from './point.ts'
import type { Move } from './transform.ts'

/**
 * The path slashed along the endless straight line through `from` and `to`: what lies left of the line, looking from
 * `from` to `to`, is passed through `move`, the rest stays, and where the two come apart straight lines join them. A
 * closed path stays closed. A stretch on the line stays. The cuts are exact to rounding; cubics that are not cut and do
 * not move are the same objects. Cost: a few µs a cubic. Throws when the points coincide or the path is empty.
 */
export function moveBeyond(path: Path, from: Point, to: Point, move: Move): Path {
  const along = subtract(to, from)
  const left = (p: Point) => cross(along, subtract(p, from))
  const closed = isClosed(path)
  const places: PathParameter[] = [
    { index: 0, t: 0 },
    ...lineCrossings(path, from, to),
    { index: path.length - 1, t: 1 },
  ]
  const result: Cubic[] = []
  for (let k = 1; k < places.length; k++) {
    const part = pathBetween(path, places[k - 1] as PathParameter, places[k] as PathParameter)
    if (part.length > 0) append(result, liesLeft(part, left) ? movePath(part, move) : part)
  }
  const first = result[0]
  const last = result[result.length - 1]
  if (closed && first && last) {
    if (distance(last.p3, first.p0) > SAME_POINT) result.push(line(last.p3, first.p0))
    else if (!equalPoints(last.p3, first.p0)) result[result.length - 1] = { ...last, p3: first.p0 }
  }
  return result
}

/** Which side a part that does not cross the line is on, by the sample farthest from it. */
function liesLeft(part: Path, left: (p: Point) => number): boolean {
  let farthest = 0
  for (const c of part) {
    for (const t of [0.25, 0.5, 0.75, 1]) {
      const off = left(pointAt(c, t))
      if (Math.abs(off) > Math.abs(farthest)) farthest = off
    }
  }
  return farthest > 0
}

function append(result: Cubic[], part: readonly Cubic[]): void {
  const [first, ...rest] = part as [Cubic, ...Cubic[]]
  const before = result[result.length - 1]
  if (before && distance(before.p3, first.p0) > SAME_POINT) result.push(line(before.p3, first.p0), first)
  else result.push(before && !equalPoints(before.p3, first.p0) ? { ...first, p0: before.p3 } : first)
  result.push(...rest)
}
