import { area } from './area.ts'
import { bounds } from './bounds.ts'
import { windingNumber } from './contains.ts'
import { type Crossings, selfCrossings } from './crossings.ts'
import { type Cubic, pointAt } from './cubic.ts'
import { SAME_POINT } from './defaults.ts'
import { endOf, type Path, startOf } from './path.ts'
import { type PathParameter, tangentAt } from './path-length.ts'
import { pathBetween, pathFrom } from './path-part.ts'
import { distance, type Point } from './point.ts'

/** A place where the path is cut, and the number of the crossing it belongs to. */
interface Cut {
  readonly place: PathParameter
  readonly node: number
}

/** The loops of an open path that go: those smaller than `small` mm across, or valid over less than `share` of their length. */
export interface LoopRules {
  readonly small: number
  readonly share: number
}

/**
 * An open path without the loops it makes with itself (`found`, its own crossings): where it comes to a crossing and
 * goes on into a loop that is too small or not valid enough, it leaves along the crossing's other branch. Its first and
 * last point stay.
 */
export function trimOpen(path: Path, found: Crossings, valid: (p: Point) => boolean, loops: LoopRules): Path {
  const cuts = cutsOf(path, found)
  const kept: Cubic[] = []
  let at: PathParameter = { index: 0, t: 0 }
  for (let k = 0; k < cuts.length; ) {
    const cut = cuts[k] as Cut
    append(kept, pathBetween(path, at, cut.place))
    at = cut.place
    k++
    const other = cuts.findIndex((c, i) => i >= k && c.node === cut.node)
    if (other < 0) continue
    const back = (cuts[other] as Cut).place
    const loop = pathBetween(path, at, back)
    if (!isSmall(loop, loops.small) && validShare(loop, valid) >= loops.share) continue
    at = back
    k = other + 1
  }
  append(kept, pathFrom(path, at))
  const first = kept[0]
  if (first) kept[0] = { ...first, p0: startOf(path) }
  const last = kept[kept.length - 1]
  if (last) kept[kept.length - 1] = { ...last, p3: endOf(path) }
  return kept
}

/**
 * The outer boundary of what a closed path winds anticlockwise about: loops that run clockwise or lie inside are
 * cut away, the largest boundary is kept. A path without crossings is returned as it is.
 */
export function trimClosed(path: Path): Path {
  const found = selfCrossings(path)
  if (found.crossings.every((c) => c.kind === 'touch') && found.overlaps.length === 0) return path
  const cuts = cutsOf(path, found)
  if (cuts.length < 2) return path
  const arcs: { from: number; to: number; path: Cubic[] }[] = []
  cuts.forEach((cut, k) => {
    const next = cuts[(k + 1) % cuts.length] as Cut
    const part = pathBetween(path, cut.place, next.place)
    if (part.length > 0 && isBoundary(part, path)) arcs.push({ from: cut.node, to: next.node, path: part })
  })
  let best: Path | undefined
  while (arcs.length > 0) {
    const first = arcs.shift() as { from: number; to: number; path: Cubic[] }
    const loop = [...first.path]
    let node = first.to
    while (node !== first.from) {
      const next = arcs.findIndex((arc) => arc.from === node)
      if (next < 0) break
      const [arc] = arcs.splice(next, 1) as [{ from: number; to: number; path: Cubic[] }]
      append(loop, arc.path)
      node = arc.to
    }
    if (node === first.from && (!best || area(loop) > area(best))) best = loop
  }
  if (!best) return path
  return closedExactly(best)
}

/** The places of all crossings, and of the ends of overlaps, in the order of the path; one node for each point. */
function cutsOf(path: Path, { crossings, overlaps }: Crossings): Cut[] {
  const nodes: Point[] = []
  const cuts: (Cut & { at: number })[] = []
  const add = (place: PathParameter, at: Point) => {
    let node = nodes.findIndex((n) => distance(n, at) <= 10 * SAME_POINT)
    if (node < 0) node = nodes.push(at) - 1
    const position = place.index + place.t
    if (!cuts.some((c) => c.node === node && Math.abs(c.at - position) < 1e-9)) cuts.push({ place, node, at: position })
  }
  for (const { a, b, at } of crossings) {
    add(a, at)
    add(b, at)
  }
  for (const { a, b } of overlaps) {
    for (const place of [...a, ...b]) add(place, pointAt(path[place.index] as Cubic, place.t))
  }
  cuts.sort((m, n) => m.at - n.at)
  return cuts
}

/** Whether an arc has the inside on its left only. */
function isBoundary(arc: Path, whole: Path): boolean {
  const c = longest(arc)
  // Too short to have sides: rounding between two crossings at one point.
  if (distance(c.p0, c.p3) < SAME_POINT / 100) return false
  const p = pointAt(c, 0.5)
  const t = tangentAt(c, 0.5)
  const step = Math.min(1e-4, distance(c.p0, c.p3) / 100)
  const left = windingNumber(whole, { x: p.x - t.y * step, y: p.y + t.x * step })
  const right = windingNumber(whole, { x: p.x + t.y * step, y: p.y - t.x * step })
  return left >= 1 && right <= 0
}

function isSmall(loop: Path, small: number): boolean {
  if (loop.length === 0) return true
  const { left, right, bottom, top } = bounds(loop)
  return Math.hypot(right - left, top - bottom) < small
}

function longest(arc: Path): Cubic {
  return arc.reduce((a, b) => (distance(b.p0, b.p3) > distance(a.p0, a.p3) ? b : a))
}

/** How much of a loop's length is valid, by samples. */
function validShare(loop: Path, valid: (p: Point) => boolean): number {
  let good = 0
  let count = 0
  for (const c of loop) {
    const weight = distance(c.p0, c.p3)
    for (const t of [0.2, 0.5, 0.8]) {
      count += weight
      if (valid(pointAt(c, t))) good += weight
    }
  }
  return good / count
}

function append(path: Cubic[], more: readonly Cubic[]): void {
  for (const c of more) {
    const before = path[path.length - 1]
    path.push(before ? { ...c, p0: before.p3 } : c)
  }
}

function closedExactly(path: Path): Path {
  const last = path[path.length - 1] as Cubic
  return endOf(path) === startOf(path) ? path : [...path.slice(0, -1), { ...last, p3: startOf(path) }]
}
