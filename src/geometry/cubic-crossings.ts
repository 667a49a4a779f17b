import { type Cubic, derivativeAt, pointAt, splitCubic } from './cubic.ts'
import { SAME_POINT } from './defaults.ts'
import { type Cone, coneOf, maybeParallel, opposite, partForGood } from './direction-cone.ts'
import { clamp, liesOn, type Powers, powersOf, type Stretch } from './lies-on.ts'
import { nearestOnCubic } from './nearest.ts'
import { cross, distance, dot, magnitude } from './point.ts'
import { boxesApart, extent, linesApart, sideBySide } from './separation.ts'

/** One meeting of two cubics: the parameters on both, and whether they only touch there. */
export interface CubicMeeting {
  readonly a: number
  readonly b: number
  readonly touch: boolean
}

/** A stretch over which two cubics lie on each other: a rising; b falling where they run against each other. */
export interface CubicOverlap {
  readonly a: readonly [number, number]
  readonly b: readonly [number, number]
}

export interface CubicCrossings {
  readonly meetings: readonly CubicMeeting[]
  readonly overlaps: readonly CubicOverlap[]
}

// A common stretch shorter than this is a touch: tangent curves stay within SAME_POINT of each other for a while.
const SHORTEST_OVERLAP = 1
// Nearly straight enough for the common stretch to be judged by five of its points.
const STRAIGHT = 0.3

// Parts this small on a common end are that meeting and no other: curves that leave it in the same direction stay
// within SAME_POINT of each other longer than this.
const CLOSE_TO_END = 1e-3

// Some hundred times what a crossing or a touch needs. Only curves that run side by side for long, hardly farther apart
// than SAME_POINT, come this far: what is then still undecided, parts of a few hundredths of a mm, counts as touching.
const MOST_LOOKS = 50_000

/**
 * Where two cubics meet, within SAME_POINT: crossings, touches, common ends and common stretches, each once. By
 * halving until the direction cones of two parts are disjoint (then they meet at most once, and Newton finds it
 * to rounding), until their boxes or fat lines part, or until one lies on the other. Cost: some ten
 * microseconds a crossing; thousands of halvings for curves that run side by side just over SAME_POINT apart.
 */
export function cubicCrossings(a: Cubic, b: Cubic): CubicCrossings {
  const search = new Search(a, b)
  search.ends()
  search.meet({ c: a, from: 0, to: 1 }, { c: b, from: 0, to: 1 })
  return search.result()
}

class Search {
  private readonly meetings: { a: number; b: number; touch: boolean }[] = []
  private readonly common: { a: [number, number]; b: [number, number] }[] = []
  private looks = 0
  private readonly slackA: number
  private readonly slackB: number
  private readonly a: Cubic
  private readonly b: Cubic
  private readonly powersA: Powers
  private readonly powersB: Powers

  constructor(a: Cubic, b: Cubic) {
    this.a = a
    this.b = b
    this.powersA = powersOf(a)
    this.powersB = powersOf(b)
    this.slackA = slack(a)
    this.slackB = slack(b)
  }

  /** Ends that lie on each other are meetings, whatever else happens there. */
  ends(): void {
    for (const s of [0, 1]) {
      for (const t of [0, 1]) {
        if (distance(s ? this.a.p3 : this.a.p0, t ? this.b.p3 : this.b.p0) <= SAME_POINT) {
          this.meetings.push({ a: s, b: t, touch: false })
        }
      }
    }
  }

  meet(p: Stretch, q: Stretch): void {
    if (boxesApart(p.c, q.c) || linesApart(p.c, q.c) || linesApart(q.c, p.c)) return
    const sizeP = extent(p.c)
    const sizeQ = extent(q.c)
    const cp = coneOf(p.c)
    const cq = coneOf(q.c)
    if (this.partFromEnd(p, q, cp, cq, Math.max(sizeP, sizeQ))) return
    if (!maybeParallel(cp, cq) && this.cross(p, q)) return
    if (cp.spread < STRAIGHT && cq.spread < STRAIGHT && sideBySide(p.c, q.c) && this.lies(p, q)) return
    if (!(sizeP > SAME_POINT || sizeQ > SAME_POINT) || ++this.looks > MOST_LOOKS) {
      this.common.push({ a: [p.from, p.to], b: [q.from, q.to] })
      return
    }
    if (sizeP >= sizeQ) for (const half of halves(p)) this.meet(half, q)
    else for (const half of halves(q)) this.meet(p, half)
  }

  /** Whether two parts with a common end run away from each other, or are too short to tell: they meet nowhere else. */
  private partFromEnd(p: Stretch, q: Stretch, cp: Cone, cq: Cone, largest: number): boolean {
    for (const known of this.meetings) {
      const start = known.a === p.from && p.from === 0
      const end = known.a === p.to && p.to === 1
      const startQ = known.b === q.from && q.from === 0
      const endQ = known.b === q.to && q.to === 1
      if (!(start || end) || !(startQ || endQ)) continue
      if (largest < CLOSE_TO_END) return true
      if (partForGood(end && !start ? opposite(cp) : cp, endQ && !startQ ? opposite(cq) : cq)) return true
    }
    return false
  }

  /** Newton on the whole curves from the crossing of the chords; true where the parts' only meeting is settled. */
  private cross(p: Stretch, q: Stretch): boolean {
    const rx = p.c.p3.x - p.c.p0.x
    const ry = p.c.p3.y - p.c.p0.y
    const sx = q.c.p3.x - q.c.p0.x
    const sy = q.c.p3.y - q.c.p0.y
    const det = rx * sy - ry * sx
    if (det === 0) return false
    const gx = q.c.p0.x - p.c.p0.x
    const gy = q.c.p0.y - p.c.p0.y
    let t = p.from + (p.to - p.from) * clamp((gx * sy - gy * sx) / det)
    let u = q.from + (q.to - q.from) * clamp((gx * ry - gy * rx) / det)
    const { powersA: a, powersB: b } = this
    for (let i = 0; i < 12; i++) {
      const dx = ((a.ax * t + a.bx) * t + a.vx) * t + a.x - (((b.ax * u + b.bx) * u + b.vx) * u + b.x)
      const dy = ((a.ay * t + a.by) * t + a.vy) * t + a.y - (((b.ay * u + b.by) * u + b.vy) * u + b.y)
      const ax = (3 * a.ax * t + 2 * a.bx) * t + a.vx
      const ay = (3 * a.ay * t + 2 * a.by) * t + a.vy
      const bx = (3 * b.ax * u + 2 * b.bx) * u + b.vx
      const by = (3 * b.ay * u + 2 * b.by) * u + b.vy
      const turn = ax * by - ay * bx
      if (turn === 0) return false
      const dt = -(dx * by - dy * bx) / turn
      const du = -(dx * ay - dy * ax) / turn
      t += dt
      u += du
      // The parts' only meeting lies elsewhere, or nowhere.
      if (!(Math.abs(t - p.from) < 2 && Math.abs(u - q.from) < 2)) return false
      if (Math.abs(dt) < 1e-15 && Math.abs(du) < 1e-15) break
    }
    if (t < p.from - this.slackA || t > p.to + this.slackA || u < q.from - this.slackB || u > q.to + this.slackB)
      return false
    t = clamp(t)
    u = clamp(u)
    if (distance(pointAt(this.a, t), pointAt(this.b, u)) > SAME_POINT) return false
    this.add(t, u, false)
    return true
  }

  /** Whether one part lies on the other curve as a whole; then it is noted. */
  private lies(p: Stretch, q: Stretch): boolean {
    const onB = liesOn(p.c, this.powersB, q)
    if (onB) {
      this.common.push({ a: [p.from, p.to], b: onB })
      return true
    }
    const onA = liesOn(q.c, this.powersA, p)
    if (!onA) return false
    this.common.push(onA[0] <= onA[1] ? { a: onA, b: [q.from, q.to] } : { a: [onA[1], onA[0]], b: [q.to, q.from] })
    return true
  }

  private add(a: number, b: number, touch: boolean): void {
    for (const known of this.meetings) {
      if (Math.abs(known.a - a) <= 4 * this.slackA && Math.abs(known.b - b) <= 4 * this.slackB) return
    }
    this.meetings.push({ a, b, touch })
  }

  result(): CubicCrossings {
    const overlaps: CubicOverlap[] = []
    for (const span of this.merged()) {
      const from = pointAt(this.a, span.a[0])
      const to = pointAt(this.a, span.a[1])
      const whole =
        (span.a[0] === 0 || span.b[0] === 0 || span.b[0] === 1) &&
        (span.a[1] === 1 || span.b[1] === 0 || span.b[1] === 1)
      if (distance(from, to) > (whole ? 100 * SAME_POINT : SHORTEST_OVERLAP)) overlaps.push(span)
      else this.touchAt(span)
    }
    // The ends of a common stretch, and what was found on it, are no meetings of their own.
    const meetings = this.meetings.filter(
      (m) => !overlaps.some((o) => m.a >= o.a[0] - 4 * this.slackA && m.a <= o.a[1] + 4 * this.slackA),
    )
    meetings.sort((m, n) => m.a - n.a || m.b - n.b)
    return { meetings, overlaps }
  }

  private touchAt(span: CubicOverlap): void {
    // A meeting already known on the stretch is this one.
    const lowB = Math.min(span.b[0], span.b[1]) - 4 * this.slackB
    const highB = Math.max(span.b[0], span.b[1]) + 4 * this.slackB
    const known = this.meetings.some(
      (m) => m.a >= span.a[0] - 4 * this.slackA && m.a <= span.a[1] + 4 * this.slackA && m.b >= lowB && m.b <= highB,
    )
    if (known) return
    let t = (span.a[0] + span.a[1]) / 2
    // The point of the stretch where the curves are parallel: their distance has its least value there.
    for (let i = 0; i < 20; i++) {
      const slope = (at: number) => {
        const u = nearestOnCubic(this.b, pointAt(this.a, at)).t
        const da = derivativeAt(this.a, at)
        const db = derivativeAt(this.b, u)
        return cross(da, db) / (magnitude(da) * magnitude(db))
      }
      const h = Math.max((span.a[1] - span.a[0]) / 4, 1e-6)
      const rate = (slope(clamp(t + h)) - slope(clamp(t - h))) / (clamp(t + h) - clamp(t - h))
      const next = t - slope(t) / rate
      if (Number.isNaN(next)) break
      const kept = Math.min(Math.max(next, span.a[0]), span.a[1])
      const change = Math.abs(kept - t)
      t = kept
      if (change < 1e-12) break
    }
    this.add(t, nearestOnCubic(this.b, pointAt(this.a, t)).t, true)
  }

  /** Neighbouring common parts as one. */
  private merged(): { a: [number, number]; b: [number, number] }[] {
    this.common.sort((m, n) => m.a[0] - n.a[0])
    const spans: { a: [number, number]; b: [number, number] }[] = []
    for (const part of this.common) {
      const joined = spans.find(
        (s) =>
          part.a[0] <= s.a[1] + 4 * this.slackA &&
          Math.min(part.b[0], part.b[1]) <= Math.max(s.b[0], s.b[1]) + 4 * this.slackB &&
          Math.max(part.b[0], part.b[1]) >= Math.min(s.b[0], s.b[1]) - 4 * this.slackB,
      )
      if (!joined) {
        spans.push({ a: [...part.a], b: [...part.b] })
        continue
      }
      const db = dot(
        derivativeAt(this.a, (part.a[0] + part.a[1]) / 2),
        derivativeAt(this.b, (part.b[0] + part.b[1]) / 2),
      )
      joined.a[1] = Math.max(joined.a[1], part.a[1])
      const low = Math.min(...joined.b, ...part.b)
      const high = Math.max(...joined.b, ...part.b)
      joined.b = db >= 0 ? [low, high] : [high, low]
    }
    return spans
  }
}

function halves(span: Stretch): [Stretch, Stretch] {
  const [left, right] = splitCubic(span.c, 0.5)
  const middle = (span.from + span.to) / 2
  return [
    { c: left, from: span.from, to: middle },
    { c: right, from: middle, to: span.to },
  ]
}

/** SAME_POINT as a step of the parameter. */
function slack(c: Cubic): number {
  const reach = distance(c.p0, c.p1) + distance(c.p1, c.p2) + distance(c.p2, c.p3)
  return reach > 0 ? Math.min(0.5, SAME_POINT / reach) : 0.5
}
