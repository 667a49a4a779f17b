import type { Cubic } from './cubic.ts'
import type { Point } from './point.ts'

/** Ordered samples in flat arrays (plain ones: typed ones of this size cost more to make than they save), and at each the length of the polyline from the first, mm. */
export interface SampleRun {
  readonly xs: ArrayLike<number>
  readonly ys: ArrayLike<number>
  readonly lengths: ArrayLike<number>
}

/** One cubic through a stretch of samples: `parameters[k]` belongs to sample from + k. */
export interface CubicFit {
  readonly cubic: Cubic
  readonly parameters: readonly number[]
}

/** Where a fit begins: the lengths of its handles, mm, and at which parameter of the cubic a sample of the run may be. */
export interface FitGuess {
  readonly start: number
  readonly end: number
  readonly parameter: (sample: number) => number
}

/** The largest miss found, mm, and the fit where it is within the tolerance. */
export interface FitAttempt {
  readonly error: number
  readonly fit?: CubicFit
}

// The handles are found on at most this many of the samples; the error is then measured on all of them.
const SAMPLES_USED = 20
const ROUNDS = 8
// A fit this much better than asked is good enough to stop at.
const GOAL = 1 / 8
// The largest miss is more than the mean one; the equations are linear where the truth is not quite.
const HOPELESS = 1.5
// Steps longer than this share of the length are no small changes, of which alone the equations tell the truth.
const SMALL = 1 / 40
// On a nearly straight stretch the samples hardly tell the handles, and what is best for their noise may be a handle of
// almost no length, which spikes the curvature at its end. So a handle a whole third off the usual third of the length
// counts as much as this share of the tolerance at every sample: where the curve turns that is nothing. More makes more
// pieces, less lets the curvature rise: at a quarter there are fewest (5,130 for 3,000 runs, 5,140 without).
const SLACK = 1 / 4
// Parameters nearer than this to the foot are the foot; a Newton step squares what is left, so one before is enough.
const FOOT_DONE = 1e-13
const NEWTON_DONE = 1e-8
// And no handle is shorter than this share of the length.
const SHORTEST = 0.15

/**
 * The cubic from sample `from` to sample `to` with the given unit end directions whose two handle lengths are the
 * least-squares solution, drawn toward the guess (thirds of the length where there is none) where the samples hardly
 * tell: Gauss–Newton on the distances square to the curve, so it settles in a few rounds. Without a fit where a sample
 * misses by more than `tolerance` mm, or where the samples do not run along the curve in order (then the error is
 * infinite): such a stretch must be split. Cost: about 3 µs for 16 samples. Never throws: there is no fit where a
 * coordinate is not a number.
 */
export function fitCubic(
  run: SampleRun,
  from: number,
  to: number,
  start: Point,
  end: Point,
  tolerance: number,
  guess?: FitGuess,
): FitAttempt {
  const { xs, ys, lengths } = run
  const x0 = xs[from] as number
  const y0 = ys[from] as number
  const x3 = xs[to] as number
  const y3 = ys[to] as number
  const base = lengths[from] as number
  const whole = (lengths[to] as number) - base
  const third = whole / 3
  const least = whole * SHORTEST
  const a0 = guess ? Math.min(Math.max(guess.start, least), whole) : third
  const b0 = guess ? Math.min(Math.max(guess.end, least), whole) : third
  let a = a0
  let b = b0
  const inside = to - from - 1
  const goal = tolerance * GOAL
  const slack = tolerance * SLACK
  if (inside > 0) {
    const used = Math.min(inside, SAMPLES_USED)
    // Plain arrays: making typed ones would take as long as a round of the fit.
    const index: number[] = []
    const u: number[] = []
    for (let k = 0; k < used; k++) {
      const i = from + Math.round(((k + 1) * (to - from)) / (used + 1))
      index.push(i)
      u.push(guess ? guess.parameter(i) : ((lengths[i] as number) - base) / whole)
    }
    let previous = Number.POSITIVE_INFINITY
    for (let round = 0; round < ROUNDS; round++) {
      // Residual r = (sample − curve)·normal; moving a handle moves the curve by its weight times its direction.
      let aa = 0
      let ab = 0
      let bb = 0
      let ar = 0
      let br = 0
      let rr = 0
      let worst = 0
      const x1 = x0 + a * start.x
      const y1 = y0 + a * start.y
      const x2 = x3 - b * end.x
      const y2 = y3 - b * end.y
      const powers = powersOf(x0, y0, x1, y1, x2, y2, x3, y3)
      for (let k = 0; k < used; k++) {
        const px = xs[index[k] as number] as number
        const py = ys[index[k] as number] as number
        const t = footParameter(powers, px, py, u[k] as number, 3)
        u[k] = t
        const s = 1 - t
        const w0 = s * s * s
        const w1 = 3 * s * s * t
        const w2 = 3 * s * t * t
        const w3 = t * t * t
        const dx = 3 * (s * s * (x1 - x0) + 2 * s * t * (x2 - x1) + t * t * (x3 - x2))
        const dy = 3 * (s * s * (y1 - y0) + 2 * s * t * (y2 - y1) + t * t * (y3 - y2))
        const speed = Math.sqrt(dx * dx + dy * dy)
        if (speed === 0) continue
        const nx = -dy / speed
        const ny = dx / speed
        const rx = px - (w0 * x0 + w1 * x1 + w2 * x2 + w3 * x3)
        const ry = py - (w0 * y0 + w1 * y1 + w2 * y2 + w3 * y3)
        const r = rx * nx + ry * ny
        const ja = w1 * (start.x * nx + start.y * ny)
        const jb = -w2 * (end.x * nx + end.y * ny)
        aa += ja * ja
        ab += ja * jb
        bb += jb * jb
        ar += ja * r
        br += jb * r
        rr += r * r
        worst = Math.max(worst, Math.abs(r))
      }
      if (worst <= goal) break
      if (round > 3 && worst > previous * 0.95) break
      previous = worst
      const ridge = used * (slack / third) * (slack / third)
      const det = (aa + ridge) * (bb + ridge) - ab * ab
      const ga = ar + ridge * (a0 - a)
      const gb = br + ridge * (b0 - b)
      let da = ((bb + ridge) * ga - ab * gb) / det
      let db = ((aa + ridge) * gb - ab * ga) / det
      const largest = Math.max(Math.abs(da), Math.abs(db))
      // What the best handles leave, by the same equations: where even the mean miss is too large, no handles will do.
      const square = rr - 2 * (da * ar + db * br) + da * da * aa + 2 * da * db * ab + db * db * bb
      const left = Math.sqrt(Math.max(0, square) / used)
      if (round > 1 && largest <= whole * SMALL && left > HOPELESS * tolerance)
        return { error: Math.max(left, Math.min(worst, 2 * left)) }
      const limit = whole / 4
      if (largest > limit) {
        da *= limit / largest
        db *= limit / largest
      }
      a = Math.min(Math.max(a + da, least), whole)
      b = Math.min(Math.max(b + db, least), whole)
      if (largest < goal * 1e-3) break
    }
  }
  const cubic: Cubic = {
    p0: { x: x0, y: y0 },
    p1: { x: x0 + a * start.x, y: y0 + a * start.y },
    p2: { x: x3 - b * end.x, y: y3 - b * end.y },
    p3: { x: x3, y: y3 },
  }
  return measured(run, from, to, cubic, tolerance)
}

/** The fit with every sample's place on the cubic, as far as the tolerance holds. */
function measured(run: SampleRun, from: number, to: number, c: Cubic, tolerance: number): FitAttempt {
  const { xs, ys, lengths } = run
  const base = lengths[from] as number
  const whole = (lengths[to] as number) - base
  const powers = powersOf(c.p0.x, c.p0.y, c.p1.x, c.p1.y, c.p2.x, c.p2.y, c.p3.x, c.p3.y)
  const parameters = [0]
  let error = 0
  let shift = 0
  for (let i = from + 1; i < to; i++) {
    // Neighbours sit off their share of the length by nearly the same amount: start from there.
    const share = ((lengths[i] as number) - base) / whole
    const guess = Math.min(1, Math.max(0, share + shift))
    const px = xs[i] as number
    const py = ys[i] as number
    const t = footParameter(powers, px, py, guess, 8)
    if (t < (parameters[i - from - 1] as number)) return { error: Number.POSITIVE_INFINITY }
    shift = t - share
    parameters.push(t)
    const s = 1 - t
    const dx = px - (s * s * s * c.p0.x + 3 * s * s * t * c.p1.x + 3 * s * t * t * c.p2.x + t * t * t * c.p3.x)
    const dy = py - (s * s * s * c.p0.y + 3 * s * s * t * c.p1.y + 3 * s * t * t * c.p2.y + t * t * t * c.p3.y)
    error = Math.max(error, Math.sqrt(dx * dx + dy * dy))
    if (error > 2 * tolerance) return { error }
  }
  parameters.push(1)
  return error <= tolerance ? { error, fit: { cubic: c, parameters } } : { error }
}

/** The cubic as ((a t + b) t + c) t + p0, by coordinates. */
interface Powers {
  readonly ax: number
  readonly ay: number
  readonly bx: number
  readonly by: number
  readonly cx: number
  readonly cy: number
  readonly x0: number
  readonly y0: number
}

function powersOf(
  x0: number,
  y0: number,
  x1: number,
  y1: number,
  x2: number,
  y2: number,
  x3: number,
  y3: number,
): Powers {
  const cx = 3 * (x1 - x0)
  const cy = 3 * (y1 - y0)
  const bx = 3 * (x2 - 2 * x1 + x0)
  const by = 3 * (y2 - 2 * y1 + y0)
  return { ax: x3 - x0 - cx - bx, ay: y3 - y0 - cy - by, bx, by, cx, cy, x0, y0 }
}

/** The parameter of the point of the cubic nearest to (px, py) near the guess t, by at most `steps` Newton steps. */
function footParameter(c: Powers, px: number, py: number, guess: number, steps: number): number {
  const { ax, ay, bx, by, cx, cy } = c
  const ox = c.x0 - px
  const oy = c.y0 - py
  let t = guess
  for (let step = 0; step < steps; step++) {
    const dx = ((ax * t + bx) * t + cx) * t + ox
    const dy = ((ay * t + by) * t + cy) * t + oy
    const vx = (3 * ax * t + 2 * bx) * t + cx
    const vy = (3 * ay * t + 2 * by) * t + cy
    const speed2 = vx * vx + vy * vy
    const bend = dx * (6 * ax * t + 2 * bx) + dy * (6 * ay * t + 2 * by)
    // Beyond the center of curvature Newton would run to the farthest point: fall back to the tangent's foot.
    const newton = speed2 + bend > 0.1 * speed2
    const slope = newton ? speed2 + bend : speed2
    if (slope === 0) return t
    const next = Math.min(1, Math.max(0, t - (dx * vx + dy * vy) / slope))
    const change = Math.abs(next - t)
    t = next
    if (change < (newton ? NEWTON_DONE : FOOT_DONE)) break
  }
  return t
}
