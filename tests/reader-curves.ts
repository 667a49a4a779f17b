// The arithmetic of the independent reader: paths as text to cubics, their lengths and nearest points. It shares no
// line with src/, so that a mistake there cannot hide here.

export type Pt = readonly [x: number, y: number]
/** One cubic: four points. A line has its handles at the thirds. */
export type Curve = readonly [Pt, Pt, Pt, Pt]

const TOKEN = /[\s,]*(?:([A-Za-z])|(-?\d+(?:\.\d+)?)(?![\w.]))/y

/** The curves of a path that may use absolute M, L, C and Z only, and one M at its start. Throws on anything else. */
export function curvesOf(path: string): Curve[] {
  const curves: Curve[] = []
  let at: Pt | undefined
  let first: Pt | undefined
  let read = 0
  const end = path.trimEnd().length
  const next = (): RegExpExecArray => {
    TOKEN.lastIndex = read
    const token = TOKEN.exec(path)
    if (!token) throw new Error(`"${path.slice(read, read + 12)}" is neither a plain number nor a command in "${path}"`)
    read = TOKEN.lastIndex
    return token
  }
  const number = (): number => {
    const token = next()
    if (token[2] === undefined) throw new Error(`"${token[1]}" is no number in "${path}"`)
    return Number(token[2])
  }
  const pt = (): Pt => [number(), number()]
  while (read < end) {
    const command = next()[1]
    if (command === 'M' && at === undefined) {
      at = pt()
      first = at
    } else if (command === 'L' && at) {
      const to = pt()
      curves.push(straight(at, to))
      at = to
    } else if (command === 'C' && at) {
      const curve: Curve = [at, pt(), pt(), pt()]
      curves.push(curve)
      at = curve[3]
    } else if (command === 'Z' && at && first && read >= end) {
      if (gap(at, first) > 1e-9) curves.push(straight(at, first))
    } else throw new Error(`"${command}" is not expected in "${path}"`)
  }
  if (curves.length === 0) throw new Error(`nothing is drawn by "${path}"`)
  return curves
}

function straight(a: Pt, b: Pt): Curve {
  const third = (k: number): Pt => [a[0] + ((b[0] - a[0]) * k) / 3, a[1] + ((b[1] - a[1]) * k) / 3]
  return [a, third(1), third(2), b]
}

export function gap(a: Pt, b: Pt): number {
  return Math.sqrt((a[0] - b[0]) ** 2 + (a[1] - b[1]) ** 2)
}

function onCurve([a, b, c, d]: Curve, t: number): Pt {
  const u = 1 - t
  const [i, j, k, l] = [u * u * u, 3 * u * u * t, 3 * u * t * t, t * t * t]
  return [i * a[0] + j * b[0] + k * c[0] + l * d[0], i * a[1] + j * b[1] + k * c[1] + l * d[1]]
}

function speed([a, b, c, d]: Curve, t: number): number {
  const u = 1 - t
  const [i, j, k] = [3 * u * u, 6 * u * t, 3 * t * t]
  const x = i * (b[0] - a[0]) + j * (c[0] - b[0]) + k * (d[0] - c[0])
  const y = i * (b[1] - a[1]) + j * (c[1] - b[1]) + k * (d[1] - c[1])
  return Math.sqrt(x * x + y * y)
}

/** The smallest radius met on 32 looks along the curve, mm. */
export function smallestRadius([a, b, c, d]: Curve): number {
  const at = (p: Pt, i: number) => p[i] as number
  let least = Infinity
  for (let k = 0; k <= 32; k++) {
    const [t, u] = [k / 32, 1 - k / 32]
    const [vx, vy] = [0, 1].map(
      (i) => 3 * (u * u * (at(b, i) - at(a, i)) + 2 * u * t * (at(c, i) - at(b, i)) + t * t * (at(d, i) - at(c, i))),
    ) as [number, number]
    const [wx, wy] = [0, 1].map(
      (i) => 6 * (u * (at(c, i) - 2 * at(b, i) + at(a, i)) + t * (at(d, i) - 2 * at(c, i) + at(b, i))),
    ) as [number, number]
    least = Math.min(least, Math.hypot(vx, vy) ** 3 / Math.abs(vx * wy - vy * wx))
  }
  return least
}

/** Arc length by Simpson's rule on 128 intervals. */
function curveLength(curve: Curve, until = 1): number {
  const n = 128
  let sum = speed(curve, 0) + speed(curve, until)
  for (let i = 1; i < n; i++) sum += speed(curve, (i / n) * until) * (i % 2 ? 4 : 2)
  return (sum * until) / n / 3
}

export function lengthOf(curves: readonly Curve[]): number {
  return curves.reduce((sum, curve) => sum + curveLength(curve), 0)
}

/** The point `along` mm from the start of curves that are run through one after the other (darts closed). */
export function pointAt(curves: readonly Curve[], along: number): Pt {
  let rest = along
  for (const [i, curve] of curves.entries()) {
    const length = curveLength(curve)
    if (rest > length && i < curves.length - 1) {
      rest -= length
      continue
    }
    let low = 0
    let high = 1
    for (let k = 0; k < 50; k++) {
      const t = (low + high) / 2
      if (curveLength(curve, t) < rest) low = t
      else high = t
    }
    return onCurve(curve, (low + high) / 2)
  }
  throw new Error('no curves')
}

/** A place on curves near p: how far off it is, which is never less than the distance, and how far along. */
export function placeOn(curves: readonly Curve[], p: Pt): { readonly off: number; readonly along: number } {
  let best = { off: Infinity, along: 0 }
  let before = 0
  for (const curve of curves) {
    const { off, t } = nearestOn(curve, p)
    if (off < best.off) best = { off, along: before + curveLength(curve, t) }
    before += curveLength(curve)
  }
  return best
}

function nearestOn(curve: Curve, p: Pt): { readonly off: number; readonly t: number } {
  const N = 48
  const offAt = (t: number) => gap(onCurve(curve, t), p)
  let rough = 0
  for (let i = 1; i <= N; i++) if (offAt(i / N) < offAt(rough)) rough = i / N
  let [low, high] = [Math.max(0, rough - 1 / N), Math.min(1, rough + 1 / N)]
  for (let k = 0; k < 40; k++) {
    const [a, b] = [low + (high - low) / 3, high - (high - low) / 3]
    if (offAt(a) < offAt(b)) high = b
    else low = a
  }
  const fine = (low + high) / 2
  const t = offAt(fine) < offAt(rough) ? fine : rough
  return { off: offAt(t), t }
}

/** Points along curves, `n` to a curve; gaps stay as straight chords. */
export function sampled(curves: readonly Curve[], n: number): Pt[] {
  return curves.flatMap((curve) => Array.from({ length: n + 1 }, (_, i) => onCurve(curve, i / n)))
}

/**
 * Points along curves so close that the chords between them lie within `error` mm of the curves: a cubic is off its
 * chords by at most 1/8 · (1/n)² · its greatest second derivative, which its control points bound.
 */
export function flattened(curves: readonly Curve[], error: number): Pt[] {
  const points: Pt[] = []
  for (const curve of curves) {
    const [a, b, c, d] = curve
    const bend = (p: Pt, q: Pt, r: Pt) => gap([p[0] - q[0], p[1] - q[1]], [q[0] - r[0], q[1] - r[1]])
    const most = 6 * Math.max(bend(a, b, c), bend(b, c, d))
    const n = Math.max(1, Math.ceil(Math.sqrt(most / (8 * error))))
    for (let i = 0; i <= n; i++) points.push(onCurve(curve, i / n))
  }
  return points
}
