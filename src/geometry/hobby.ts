import { cos, sin } from '../base/trig.ts'
import type { Cubic } from './cubic.ts'
import type { Path } from './path.ts'
import { angleOf, distance, heading, type Point, subtract } from './point.ts'

/** A point that the spline runs through. Directions are free unless given. */
export interface Knot {
  readonly at: Point
  /** Direction of travel through the knot, any length above zero. */
  readonly direction?: Point
  /** Tension on both sides of the knot, default 1, at least 3/4; higher is tighter. */
  readonly tension?: number
}

export interface HobbyOptions {
  readonly closed?: boolean
  /** Curl at free ends: 1 (default) ends nearly in an arc of a circle, 0 ends straight. */
  readonly curl?: number
  /**
   * Keeps each cubic whose ends turn the same way inside the triangle of its chord and end tangents, where handles
   * of the published length would reach beyond it and bend the curve back: METAFONT's tension "at least".
   */
  readonly bounded?: boolean
}

/**
 * A fair curve through the knots: cubics whose mock curvature is continuous at every knot without a given direction,
 * with the handles of the published formulas over each tension, and exactly the directions given. Exact to rounding.
 * Source: J. D. Hobby, "Smooth, easily computed interpolating splines", Discrete & Computational Geometry 1 (1986).
 * Cost: about 0.5 µs a knot. Throws when two neighbouring knots coincide or fewer than two (closed: three) are given.
 */
export function hobbySpline(knots: readonly Knot[], options: HobbyOptions = {}): Path {
  const curl = options.curl ?? 1
  const bounded = options.bounded ?? false
  if (options.closed) return closedSpline(knots, bounded)
  if (knots.length < 2) throw new RangeError('a spline needs at least two knots')
  const path: Cubic[] = []
  let from = 0
  // A given direction separates the spline into independent runs.
  for (let to = 1; to < knots.length; to++) {
    if (to < knots.length - 1 && (knots[to] as Knot).direction === undefined) continue
    path.push(...openRun(knots.slice(from, to + 1), curl, bounded))
    from = to
  }
  return path
}

function openRun(knots: readonly Knot[], curl: number, bounded: boolean): Cubic[] {
  const n = knots.length - 1
  const { lengths, angles, turns } = chords(knots, false)
  const tension = knots.map((k) => k.tension ?? 1)
  // Row k: below·θ(k−1) + at·θ(k) + above·θ(k+1) = right.
  const below: number[] = []
  const at: number[] = []
  const above: number[] = []
  const right: number[] = []
  const row = (before: number, own: number, after: number, sum: number) => {
    below.push(before)
    at.push(own)
    above.push(after)
    right.push(sum)
  }
  const first = (knots[0] as Knot).direction
  const last = (knots[n] as Knot).direction
  if (n === 1 && !first && !last) {
    // Nothing bends it: the two end equations are one, and the straight line answers both.
    return [piece(knots[0] as Knot, knots[1] as Knot, angles[0] as number, 0, 0, bounded)]
  }
  if (first) {
    row(0, 1, 0, wrap(angleOf(first) - (angles[0] as number)))
  } else {
    const [own, other] = endRow(tension[0] as number, tension[1] as number, curl)
    row(0, own, other, -other * (turns[1] ?? 0))
  }
  for (let k = 1; k < n; k++) {
    const before = 1 / (tension[k - 1] as number)
    const here = 1 / (tension[k] as number)
    const after = 1 / (tension[k + 1] as number)
    const lengthIn = lengths[k - 1] as number
    const lengthOut = lengths[k] as number
    const inSide = before / (here * here * lengthIn)
    const outSide = after / (here * here * lengthOut)
    const inFree = (3 - before) / (here * here * lengthIn)
    const outFree = (3 - after) / (here * here * lengthOut)
    row(inSide, inFree + outFree, outSide, -inFree * (turns[k] as number) - outSide * (turns[k + 1] ?? 0))
  }
  if (last) {
    row(0, 1, 0, wrap(angleOf(last) - (angles[n - 1] as number)))
  } else {
    const [own, other] = endRow(tension[n] as number, tension[n - 1] as number, curl)
    row(other, own, 0, 0)
  }
  const theta = solveTridiagonal(below, at, above, right)
  const path: Cubic[] = []
  for (let k = 0; k < n; k++) {
    const out = theta[k] as number
    const turn = k + 1 < n ? (turns[k + 1] as number) : 0
    path.push(
      piece(
        knots[k] as Knot,
        knots[k + 1] as Knot,
        angles[k] as number,
        out,
        -turn - (theta[k + 1] as number),
        bounded,
      ),
    )
  }
  return path
}

/** The equation of a free end: of its own θ and of its neighbour's. */
function endRow(tensionHere: number, tensionBeside: number, curl: number): [number, number] {
  const a = 1 / tensionHere
  const b = 1 / tensionBeside
  const aaa = a * a * a
  const bbb = b * b * b
  return [aaa * curl + 3 * b * b - bbb, 3 * a * a * curl - aaa * curl + bbb]
}

function closedSpline(knots: readonly Knot[], bounded: boolean): Path {
  if (knots.length < 3) throw new RangeError('a closed spline needs at least three knots')
  const n = knots.length
  const fixed = knots.findIndex((k) => k.direction !== undefined)
  if (fixed >= 0) {
    const turned = [...knots.slice(fixed), ...knots.slice(0, fixed + 1)]
    const path = hobbySpline(turned, { bounded })
    // Start again at the knot that was given first.
    const shift = (n - fixed) % n
    return [...path.slice(shift), ...path.slice(0, shift)]
  }
  const { lengths, angles, turns } = chords(knots, true)
  const rows: number[][] = []
  const right: number[] = []
  for (let k = 0; k < n; k++) {
    const prev = (k + n - 1) % n
    const next = (k + 1) % n
    const before = 1 / ((knots[prev] as Knot).tension ?? 1)
    const here = 1 / ((knots[k] as Knot).tension ?? 1)
    const after = 1 / ((knots[next] as Knot).tension ?? 1)
    const lengthIn = lengths[prev] as number
    const lengthOut = lengths[k] as number
    const row = new Array<number>(n).fill(0)
    row[prev] = (row[prev] as number) + before / (here * here * lengthIn)
    row[k] = (row[k] as number) + (3 - before) / (here * here * lengthIn) + (3 - after) / (here * here * lengthOut)
    row[next] = (row[next] as number) + after / (here * here * lengthOut)
    rows.push(row)
    right.push(
      (-(3 - before) / (here * here * lengthIn)) * (turns[k] as number) -
        (after / (here * here * lengthOut)) * (turns[next] as number),
    )
  }
  const theta = solveDense(rows, right)
  return knots.map((knot, k) => {
    const next = (k + 1) % n
    return piece(
      knot,
      knots[next] as Knot,
      angles[k] as number,
      theta[k] as number,
      -(turns[next] as number) - (theta[next] as number),
      bounded,
    )
  })
}

/** Chord lengths and directions, and at each knot the turn from the chord before to the chord after. */
function chords(knots: readonly Knot[], closed: boolean) {
  const n = knots.length
  const count = closed ? n : n - 1
  const lengths: number[] = []
  const angles: number[] = []
  for (let k = 0; k < count; k++) {
    const a = (knots[k] as Knot).at
    const b = (knots[(k + 1) % n] as Knot).at
    const length = distance(a, b)
    if (!(length > 0)) throw new RangeError(`knots ${k} and ${(k + 1) % n} of a spline lie on each other`)
    lengths.push(length)
    angles.push(angleOf(subtract(b, a)))
  }
  const turns = closed ? [] : [0]
  for (let k = closed ? 0 : 1; k < count; k++) {
    turns.push(wrap((angles[k] as number) - (angles[(k + count - 1) % count] as number)))
  }
  if (!closed) turns.push(0)
  return { lengths, angles, turns }
}

/** The cubic that leaves a at θ to its chord and enters b at φ. */
function piece(a: Knot, b: Knot, angle: number, theta: number, phi: number, bounded: boolean): Cubic {
  const length = distance(a.at, b.at)
  const st = sin(theta)
  const ct = cos(theta)
  const sp = sin(phi)
  const cp = cos(phi)
  // How far the end tangents run, in chords, until they meet; endless where they do not meet on the curve's side.
  const sine = bounded ? sin(theta + phi) : 0
  const from = sp / sine
  const to = st / sine
  const meet = bounded && from > 0 && to > 0
  const out = Math.min(velocity(st, ct, sp, cp) / (a.tension ?? 1), meet ? from : Number.POSITIVE_INFINITY) * length
  const into = Math.min(velocity(sp, cp, st, ct) / (b.tension ?? 1), meet ? to : Number.POSITIVE_INFINITY) * length
  const leave = heading(angle + theta)
  const enter = heading(angle - phi)
  return {
    p0: a.at,
    p1: { x: a.at.x + out * leave.x, y: a.at.y + out * leave.y },
    p2: { x: b.at.x - into * enter.x, y: b.at.y - into * enter.y },
    p3: b.at,
  }
}

/** Hobby's handle length for unit chord and tension, ρ(θ, φ) / 3, by the sines and cosines of both angles. */
function velocity(st: number, ct: number, sp: number, cp: number): number {
  const alpha = Math.SQRT2 * (st - sp / 16) * (sp - st / 16) * (ct - cp)
  const root5 = Math.sqrt(5)
  return (2 + alpha) / (3 * (1 + 0.5 * (root5 - 1) * ct + 0.5 * (3 - root5) * cp))
}

function wrap(angle: number): number {
  if (angle > Math.PI) return angle - 2 * Math.PI
  if (angle <= -Math.PI) return angle + 2 * Math.PI
  return angle
}

function solveTridiagonal(below: number[], at: number[], above: number[], right: number[]): number[] {
  const n = at.length
  const c = above.slice()
  const d = right.slice()
  for (let k = 0; k < n; k++) {
    const factor = k === 0 ? 0 : (below[k] as number)
    const pivot = (at[k] as number) - factor * (k === 0 ? 0 : (c[k - 1] as number))
    c[k] = (c[k] as number) / pivot
    d[k] = ((d[k] as number) - factor * (k === 0 ? 0 : (d[k - 1] as number))) / pivot
  }
  for (let k = n - 2; k >= 0; k--) d[k] = (d[k] as number) - (c[k] as number) * (d[k + 1] as number)
  return d
}

/** Gaussian elimination with partial pivoting; closed splines are short. */
function solveDense(rows: number[][], right: number[]): number[] {
  const n = rows.length
  const m = rows.map((row, k) => [...row, right[k] as number])
  for (let k = 0; k < n; k++) {
    let best = k
    for (let r = k + 1; r < n; r++) if (Math.abs(m[r]?.[k] as number) > Math.abs(m[best]?.[k] as number)) best = r
    const pivotRow = m[best] as number[]
    m[best] = m[k] as number[]
    m[k] = pivotRow
    for (let r = k + 1; r < n; r++) {
      const row = m[r] as number[]
      const factor = (row[k] as number) / (pivotRow[k] as number)
      for (let col = k; col <= n; col++) row[col] = (row[col] as number) - factor * (pivotRow[col] as number)
    }
  }
  const solution = new Array<number>(n).fill(0)
  for (let k = n - 1; k >= 0; k--) {
    const row = m[k] as number[]
    let sum = row[n] as number
    for (let col = k + 1; col < n; col++) sum -= (row[col] as number) * (solution[col] as number)
    solution[k] = sum / (row[k] as number)
  }
  return solution
}
