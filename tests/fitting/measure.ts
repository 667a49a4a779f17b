// Measures stitching lines by dense sampling: shares no arithmetic with src/.
import type { Path } from '../../src/geometry/path.ts'
import type { Piece, Seam } from '../../src/pattern/piece.ts'

export interface XY {
  readonly x: number
  readonly y: number
}

/** De Casteljau. */
function at(c: Path[number], t: number): XY {
  const mix = (a: XY, b: XY): XY => ({ x: a.x * (1 - t) + b.x * t, y: a.y * (1 - t) + b.y * t })
  const [a, b, d] = [mix(c.p0, c.p1), mix(c.p1, c.p2), mix(c.p2, c.p3)]
  return mix(mix(a, b), mix(b, d))
}

/** A path as a fine polyline with the chord sums up to each point; 1,500 points on a cubic: 1e-5 mm on a cap. */
function polylineOf(path: Path, steps = 1500): { points: XY[]; sums: number[] } {
  const points: XY[] = []
  const sums: number[] = []
  for (const c of path) {
    for (let i = points.length === 0 ? 0 : 1; i <= steps; i++) {
      const p = at(c, i / steps)
      const last = points[points.length - 1]
      sums.push(last ? (sums[sums.length - 1] as number) + Math.hypot(p.x - last.x, p.y - last.y) : 0)
      points.push(p)
    }
  }
  return { points, sums }
}

/** Points along a path, 200 on a cubic. */
export function densePoints(path: Path): XY[] {
  return polylineOf(path, 200).points
}

export function lengthOf(seam: Seam): number {
  return seam.parts.reduce((sum, part) => sum + (polylineOf(part).sums.at(-1) as number), 0)
}

/** The point and the outward normal (right of the direction) at a chord sum along a part. */
export function frameAt(path: Path, along: number): { point: XY; normal: XY } {
  const { points, sums } = polylineOf(path)
  let i = sums.findIndex((s) => s >= along)
  if (i < 0) i = sums.length - 1
  i = Math.max(1, i)
  const share = (along - (sums[i - 1] as number)) / ((sums[i] as number) - (sums[i - 1] as number))
  const a = points[i - 1] as XY
  const b = points[i] as XY
  const length = Math.hypot(b.x - a.x, b.y - a.y)
  return {
    point: { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share },
    normal: { x: (b.y - a.y) / length, y: -(b.x - a.x) / length },
  }
}

/** How far along the normal of the old path at `along` the new path lies; NaN where the normal does not meet it. */
export function shiftAt(old: Path, along: number, now: Path): number {
  const { point, normal } = frameAt(old, along)
  const { points } = polylineOf(now, 1000)
  let best = Number.NaN
  const side = (p: XY) => (p.x - point.x) * -normal.y + (p.y - point.y) * normal.x
  const out = (p: XY) => (p.x - point.x) * normal.x + (p.y - point.y) * normal.y
  for (let i = 0; i < points.length; i++) {
    const b = points[i] as XY
    const a = points[Math.max(0, i - 1)] as XY
    const [sa, sb] = [side(a), side(b)]
    // An end that lies on the normal itself counts as met.
    const met =
      sa === 0 || sb === 0 || sa > 0 !== sb > 0 || ((i === 0 || i === points.length - 1) && Math.abs(sb) < 0.02)
    if (!met) continue
    const share = sa === sb ? 0 : sa / (sa - sb)
    const distance = out(a) + (out(b) - out(a)) * share
    if (Number.isNaN(best) || Math.abs(distance) < Math.abs(best)) best = distance
  }
  return best
}

/** The largest distance from points of one path to the other, by dense samples of both. */
export function farthest(one: Path, other: Path): number {
  const a = polylineOf(one, 40).points
  const b = polylineOf(other, 300).points
  return Math.max(
    ...a.map((p) => {
      let least = Number.POSITIVE_INFINITY
      for (let i = 1; i < b.length; i++) least = Math.min(least, toSegment(p, b[i - 1] as XY, b[i] as XY))
      return least
    }),
  )
}

function toSegment(p: XY, a: XY, b: XY): number {
  const dx = b.x - a.x
  const dy = b.y - a.y
  const square = dx * dx + dy * dy
  const t = square === 0 ? 0 : Math.min(1, Math.max(0, ((p.x - a.x) * dx + (p.y - a.y) * dy) / square))
  return Math.hypot(p.x - a.x - t * dx, p.y - a.y - t * dy)
}

export function seam(piece: Piece, id: string): Seam {
  const found = piece.seams.find((s) => s.id === id)
  if (!found) throw new Error(`no ${id} on ${piece.id}`)
  return found
}

export function cubics(piece: Piece, id: string): Path {
  return seam(piece, id).parts.flat()
}

/** Gaps between neighbouring seams and parts where no dart opens, and the signed area of the outline. */
export function outlineOf(piece: Piece): { gaps: number; area: number } {
  const starts = piece.seams.map((s) => (s.parts[0] as Path)[0]?.p0 as XY)
  let gaps = 0
  const points: XY[] = []
  piece.seams.forEach((s, i) => {
    const end = s.parts.at(-1)?.at(-1)?.p3 as XY
    const next = starts[(i + 1) % starts.length] as XY
    gaps = Math.max(gaps, Math.hypot(end.x - next.x, end.y - next.y))
    for (const part of s.parts) points.push(...polylineOf(part, 50).points)
  })
  const area = points.reduce((sum, p, i) => {
    const q = points[(i + 1) % points.length] as XY
    return sum + (p.x * q.y - q.x * p.y) / 2
  }, 0)
  return { gaps, area }
}

/** The largest turn of direction between neighbouring cubics of a path, radians. */
export function largestCorner(path: Path): number {
  let most = 0
  for (let i = 1; i < path.length; i++) {
    const a = path[i - 1] as Path[number]
    const b = path[i] as Path[number]
    const into = { x: a.p3.x - a.p2.x, y: a.p3.y - a.p2.y }
    const out = { x: b.p1.x - b.p0.x, y: b.p1.y - b.p0.y }
    most = Math.max(most, Math.abs(Math.atan2(into.x * out.y - into.y * out.x, into.x * out.x + into.y * out.y)))
  }
  return most
}

/** How often the outline of a piece crosses itself, dart mouths bridged: every pair of fine chords is looked at. */
export function crossingsOf(piece: Piece): number {
  const points: XY[] = []
  for (const s of piece.seams) for (const part of s.parts) points.push(...polylineOf(part, 12).points)
  // Neighbours share a point; the same point twice, where seams meet, makes a chord of no length.
  const round = points.filter((p, i) => {
    const before = points[(i + points.length - 1) % points.length] as XY
    return Math.hypot(p.x - before.x, p.y - before.y) > 1e-6
  })
  const n = round.length
  let count = 0
  for (let i = 0; i < n; i++) {
    const [a, b] = [round[i] as XY, round[(i + 1) % n] as XY]
    for (let k = i + 2; k < n; k++) {
      if (i === 0 && k === n - 1) continue
      const [c, d] = [round[k] as XY, round[(k + 1) % n] as XY]
      if (Math.min(a.x, b.x) > Math.max(c.x, d.x) || Math.max(a.x, b.x) < Math.min(c.x, d.x)) continue
      if (turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0) count++
    }
  }
  return count
}

function turn(a: XY, b: XY, p: XY): number {
  return (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)
}

/** How far from the center a seam of a half piece lies at the height y: the last crossing of its fine polyline; NaN where it does not reach. */
function levelWidth(path: Path, y: number): number {
  const { points } = polylineOf(path, 400)
  let width = Number.NaN
  for (let i = 1; i < points.length; i++) {
    const a = points[i - 1] as XY
    const b = points[i] as XY
    if (a.y > y === b.y > y) continue
    width = Math.abs(a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y))
  }
  return width
}

/** By how much one path lies farther from the center than another where the difference is largest, on one level; signed, mm. */
export function mostWider(old: Path, now: Path): number {
  const [low, high] = [old[0]?.p0.y as number, old.at(-1)?.p3.y as number]
  let most = 0
  for (let i = 1; i < 200; i++) {
    const y = low + ((high - low) * i) / 200
    const wider = levelWidth(now, y) - levelWidth(old, y)
    if (Math.abs(wider) > Math.abs(most)) most = wider
  }
  return most
}
