import type { Cubic } from '../geometry/cubic.ts'
import { pointAt } from '../geometry/cubic.ts'
import { nearestParameter } from '../geometry/nearest.ts'
import type { Path } from '../geometry/path.ts'
import { distance, type Point } from '../geometry/point.ts'

/** Where a line moved most: the point that it was at, the point that it is at now, and how far apart they are, mm. */
export interface FarthestMove {
  readonly from: Point
  readonly to: Point
  readonly distance: number
}

/** Places on a cubic at which the distance is looked at before the largest is refined. */
const STEPS = 16

/** Halvings of a step until the place is known to a thousandth of it: the distance is flat there. */
const REFINEMENTS = 16

const GOLDEN = (Math.sqrt(5) - 1) / 2

/**
 * The largest distance between two lines as they lie on the table: of any point of one to the nearest point of the
 * other, whichever way is larger (Hausdorff). Lines are lists of paths, such as the parts of a seam. Distances are
 * right to rounding; the largest is found to about 1e-3 mm where a cubic holds one peak between two sixteenths.
 * Of equal ones that of the first point along the line as it is now. Throws on a line without cubics.
 */
export function farthestMove(before: readonly Path[], after: readonly Path[]): FarthestMove {
  const old = before.flat()
  const now = after.flat()
  const [a] = old
  const [b] = now
  if (!a || !b) throw new RangeError('a line needs at least one cubic')
  const known = new Set(old.map(keyOf))
  const changed = now.filter((c) => !known.has(keyOf(c)))
  const left = new Set(now.map(keyOf))
  const gone = old.filter((c) => !left.has(keyOf(c)))
  if (changed.length === 0 && gone.length === 0) return { from: b.p0, to: b.p0, distance: 0 }
  const there = farthestOf(changed, old)
  const back = farthestOf(gone, now)
  if (there && (!back || there.distance >= back.distance - 1e-9)) {
    return { from: there.foot, to: there.point, distance: there.distance }
  }
  return back ? { from: back.point, to: back.foot, distance: back.distance } : { from: b.p0, to: b.p0, distance: 0 }
}

/**
 * The farthest that each stretch of a line moved: a stretch lies between places that stayed within `tolerance` mm.
 * In the order of the line as it is now; see `farthestMove` for the accuracy.
 */
export function stretchMoves(before: readonly Path[], after: readonly Path[], tolerance: number): FarthestMove[] {
  const old = before.flat()
  const known = new Set(old.map(keyOf))
  return after.flatMap((part) => {
    const peaks: Peak[] = []
    let open = false
    for (const c of part) {
      if (known.has(keyOf(c))) {
        open = false
        continue
      }
      for (let k = 0; k <= STEPS; k++) {
        const found = { ...farthestAt(c, k / STEPS, old), c, t: k / STEPS }
        const last = peaks[peaks.length - 1]
        if (found.distance < tolerance) open = false
        else if (!open || !last) {
          peaks.push(found)
          open = true
        } else if (found.distance > last.distance) peaks[peaks.length - 1] = found
      }
    }
    return peaks.map(({ c, t, ...most }) => {
      const top = refined(c, t, old, most)
      return { from: top.foot, to: top.point, distance: top.distance }
    })
  })
}

interface Peak extends Farthest {
  readonly c: Cubic
  readonly t: number
}

interface Farthest {
  readonly point: Point
  /** The nearest point of the other line. */
  readonly foot: Point
  readonly distance: number
}

function farthestOf(cubics: readonly Cubic[], other: Path): Farthest | undefined {
  let best: Farthest | undefined
  for (const c of cubics) {
    let top = 0
    let most = farthestAt(c, 0, other)
    for (let k = 1; k <= STEPS; k++) {
      const found = farthestAt(c, k / STEPS, other)
      if (found.distance > most.distance) {
        most = found
        top = k / STEPS
      }
    }
    // No point between two places looked at is farther than the nearer of them by more than the way to it.
    if (best && most.distance + speed(c) / STEPS <= best.distance) continue
    most = refined(c, top, other, most)
    if (!best || most.distance > best.distance + 1e-9) best = most
  }
  return best
}

function farthestAt(c: Cubic, t: number, other: Path): Farthest {
  const point = pointAt(c, t)
  const foot = nearestParameter(other, point)
  return { point, foot: foot.at, distance: foot.distance }
}

/** The farthest within a step of a place that was looked at; the place itself where nothing near it is farther. */
function refined(c: Cubic, t: number, other: Path, most: Farthest): Farthest {
  const found = peak((u) => farthestAt(c, u, other), Math.max(0, t - 1 / STEPS), Math.min(1, t + 1 / STEPS))
  return found.distance > most.distance ? found : most
}

/** The largest speed of a cubic, mm for the whole parameter: three times its longest control leg. */
function speed(c: Cubic): number {
  return 3 * Math.max(distance(c.p0, c.p1), distance(c.p1, c.p2), distance(c.p2, c.p3))
}

/** The largest between two parameters by golden sections. */
function peak(at: (t: number) => Farthest, from: number, to: number): Farthest {
  let [low, high] = [from, to]
  let [m, n] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)]
  let [atM, atN] = [at(m), at(n)]
  for (let k = 0; k < REFINEMENTS; k++) {
    if (atM.distance > atN.distance) {
      high = n
      ;[n, atN] = [m, atM]
      m = high - GOLDEN * (high - low)
      atM = at(m)
    } else {
      low = m
      ;[m, atM] = [n, atN]
      n = low + GOLDEN * (high - low)
      atN = at(n)
    }
  }
  return atM.distance > atN.distance ? atM : atN
}

/** Equal for cubics with the same control points, whichever way they run. */
function keyOf(c: Cubic): string {
  const points = [c.p0, c.p1, c.p2, c.p3].map((p) => `${p.x},${p.y}`)
  const reversed = [...points].reverse()
  return [points.join(' '), reversed.join(' ')].sort()[0] as string
}
