// Reads pattern.json as any other program would: from its text and the contract alone. It shares no line with
// src/, neither types nor arithmetic, so that a mistake there cannot hide here.

export type Pt = readonly [x: number, y: number]
/** One cubic: four points. A line has its handles at the thirds. */
type Curve = readonly [Pt, Pt, Pt, Pt]

interface RawPart {
  piece: string
  seam: string
  reversed: boolean
  from?: number
  to?: number
}
interface RawSeam {
  id: string
  parts: string[]
  allowance: number
}
interface RawPiece {
  id: string
  name: string
  side: string
  cut: number
  seams: RawSeam[]
  cutLine: string
  darts: { id: string; seam: string; mouth: [Pt, Pt]; point: Pt }[]
  notches: { id: string; seam: string; at: Pt; marks: number }[]
  lines: { id: string; path: string }[]
}
export interface RawPattern {
  scyewright: string
  performer: string
  production: string
  version: string
  unit: string
  up: string
  pieces: RawPiece[]
  joins: { id: string; a: RawPart[]; b: RawPart[]; ease: { min: number; target: number; max: number } }[]
}

const NUMBER = '-?\\d+(?:\\.\\d+)?'

/** The curves of a path that may use absolute M, L, C and Z only, and one M at its start. Throws on anything else. */
function curvesOf(path: string): Curve[] {
  const tokens = path
    .trim()
    .split(/[\s,]+(?=[A-Za-z])|(?<=[A-Za-z])[\s,]*|[\s,]+/)
    .filter((t) => t !== '')
  const curves: Curve[] = []
  let at: Pt | undefined
  let first: Pt | undefined
  let i = 0
  const number = () => {
    const token = tokens[i++]
    if (token === undefined || !new RegExp(`^${NUMBER}$`).test(token))
      throw new Error(`"${token}" is no plain number in "${path}"`)
    return Number(token)
  }
  const pt = (): Pt => [number(), number()]
  while (i < tokens.length) {
    const command = tokens[i++]
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
    } else if (command === 'Z' && at && first && i === tokens.length) {
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

function gap(a: Pt, b: Pt): number {
  return Math.sqrt((a[0] - b[0]) ** 2 + (a[1] - b[1]) ** 2)
}

function onCurve([a, b, c, d]: Curve, t: number): Pt {
  const u = 1 - t
  const mix = (k: 0 | 1) => u ** 3 * a[k] + 3 * u * u * t * b[k] + 3 * u * t * t * c[k] + t ** 3 * d[k]
  return [mix(0), mix(1)]
}

function speed([a, b, c, d]: Curve, t: number): number {
  const u = 1 - t
  const mix = (k: 0 | 1) => 3 * (u * u * (b[k] - a[k]) + 2 * u * t * (c[k] - b[k]) + t * t * (d[k] - c[k]))
  return Math.sqrt(mix(0) ** 2 + mix(1) ** 2)
}

/** Arc length by Simpson's rule on 128 intervals. */
function curveLength(curve: Curve, until = 1): number {
  const n = 128
  let sum = speed(curve, 0) + speed(curve, until)
  for (let i = 1; i < n; i++) sum += speed(curve, (i / n) * until) * (i % 2 ? 4 : 2)
  return (sum * until) / n / 3
}

function lengthOf(curves: readonly Curve[]): number {
  return curves.reduce((sum, curve) => sum + curveLength(curve), 0)
}

/** The point `along` mm from the start of curves that are run through one after the other (darts closed). */
function pointAt(curves: readonly Curve[], along: number): Pt {
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

/** Points along curves, `n` to a curve; gaps stay as straight chords. */
function sampled(curves: readonly Curve[], n: number): Pt[] {
  return curves.flatMap((curve) => Array.from({ length: n + 1 }, (_, i) => onCurve(curve, i / n)))
}

function pieceNamed(pattern: RawPattern, id: string): RawPiece {
  const piece = pattern.pieces.find((p) => p.id === id)
  if (!piece) throw new Error(`no piece ${id}`)
  return piece
}

function seamCurves(piece: RawPiece, id: string): Curve[] {
  const seam = piece.seams.find((s) => s.id === id)
  if (!seam) throw new Error(`no seam ${id} on ${piece.id}`)
  return seam.parts.flatMap(curvesOf)
}

function outlineCurves(piece: RawPiece): Curve[] {
  return piece.seams.flatMap((seam) => seam.parts.flatMap(curvesOf))
}

function signedArea(points: readonly Pt[]): number {
  let twice = 0
  points.forEach((p, i) => {
    const q = points[(i + 1) % points.length] as Pt
    twice += p[0] * q[1] - q[0] * p[1]
  })
  return twice / 2
}

function isWithin(points: readonly Pt[], [x, y]: Pt): boolean {
  let inside = false
  points.forEach((p, i) => {
    const q = points[(i + 1) % points.length] as Pt
    if (p[1] > y !== q[1] > y && x < p[0] + ((y - p[1]) / (q[1] - p[1])) * (q[0] - p[0])) inside = !inside
  })
  return inside
}

/** Pairs of edges, of a closed polygon with itself or of two, that cross properly. */
function crossings(one: readonly Pt[], other?: readonly Pt[]): Pt[] {
  const edges = (points: readonly Pt[]) =>
    points.map((p, i) => [p, points[(i + 1) % points.length] as Pt] as const).filter(([p, q]) => gap(p, q) > 1e-7)
  const as = edges(one)
  const bs = other ? edges(other) : as
  const side = (p: Pt, q: Pt, r: Pt) => (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])
  const found: Pt[] = []
  as.forEach(([p, q], i) => {
    bs.forEach(([r, s], j) => {
      if (!other && (j <= i + 1 || (i === 0 && j === bs.length - 1))) return
      if (Math.max(p[0], q[0]) < Math.min(r[0], s[0]) || Math.max(r[0], s[0]) < Math.min(p[0], q[0])) return
      if (Math.max(p[1], q[1]) < Math.min(r[1], s[1]) || Math.max(r[1], s[1]) < Math.min(p[1], q[1])) return
      if (side(p, q, r) * side(p, q, s) < -1e-9 && side(r, s, p) * side(r, s, q) < -1e-9) found.push(p)
    })
  })
  return found
}

function distanceToChain(points: readonly Pt[], p: Pt): number {
  let least = Infinity
  for (let i = 1; i < points.length; i++) {
    const a = points[i - 1] as Pt
    const b = points[i] as Pt
    const size = (b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2
    const t = size === 0 ? 0 : ((p[0] - a[0]) * (b[0] - a[0]) + (p[1] - a[1]) * (b[1] - a[1])) / size
    const k = Math.min(1, Math.max(0, t))
    least = Math.min(least, gap(p, [a[0] + k * (b[0] - a[0]), a[1] + k * (b[1] - a[1])]))
  }
  return least
}

/** The point `along` mm of sewn length from the start of one side of a join. */
export function pointOnSide(pattern: RawPattern, parts: readonly RawPart[], along: number): Pt {
  let rest = along
  for (const [i, part] of parts.entries()) {
    const curves = seamCurves(pieceNamed(pattern, part.piece), part.seam)
    const from = part.from ?? 0
    const to = part.to ?? lengthOf(curves)
    if (rest > to - from && i < parts.length - 1) rest -= to - from
    else return pointAt(curves, part.reversed ? to - rest : from + rest)
  }
  throw new Error('a side of a join is empty')
}

export function sideLength(pattern: RawPattern, parts: readonly RawPart[]): number {
  return parts.reduce((sum, part) => {
    const whole = lengthOf(seamCurves(pieceNamed(pattern, part.piece), part.seam))
    return sum + (part.to ?? whole) - (part.from ?? 0)
  }, 0)
}

/** Turns between changes of direction along curves, degrees; what turns less than half a degree is not seen. */
function bendsOf(curves: readonly Curve[]): number[] {
  const points = sampled(curves, 200).filter((p, i, all) => i === 0 || gap(p, all[i - 1] as Pt) > 1e-6)
  const runs: number[] = []
  const add = (turn: number) => {
    const last = runs[runs.length - 1]
    if (last !== undefined && last > 0 === turn > 0) runs[runs.length - 1] = last + turn
    else if (turn !== 0) runs.push(turn)
  }
  for (let i = 2; i < points.length; i++) {
    const [a, b, c] = [points[i - 2], points[i - 1], points[i]] as [Pt, Pt, Pt]
    const turn = Math.atan2(c[1] - b[1], c[0] - b[0]) - Math.atan2(b[1] - a[1], b[0] - a[0])
    add((((turn + 3 * Math.PI) % (2 * Math.PI)) - Math.PI) * (180 / Math.PI))
  }
  const seen = runs.filter((turn) => Math.abs(turn) > 0.5)
  runs.length = 0
  seen.forEach(add)
  return runs
}

/** Largest distance left between two rows of points after the best rigid motion of the second, reflection allowed. */
export function incongruence(one: readonly Pt[], other: readonly Pt[]): number {
  const middle = (points: readonly Pt[]): Pt => [
    points.reduce((s, p) => s + p[0], 0) / points.length,
    points.reduce((s, p) => s + p[1], 0) / points.length,
  ]
  const [m, n] = [middle(one), middle(other)]
  const worst = [1, -1].map((mirror) => {
    let c = 0
    let s = 0
    one.forEach((p, i) => {
      const q = other[i] as Pt
      const [px, py, qx, qy] = [p[0] - m[0], p[1] - m[1], (q[0] - n[0]) * mirror, q[1] - n[1]]
      c += qx * px + qy * py
      s += qx * py - qy * px
    })
    const size = Math.sqrt(c * c + s * s)
    return Math.max(
      ...one.map((p, i) => {
        const q = other[i] as Pt
        const [qx, qy] = [(q[0] - n[0]) * mirror, q[1] - n[1]]
        return gap([p[0] - m[0], p[1] - m[1]], [(c * qx - s * qy) / size, (s * qx + c * qy) / size])
      }),
    )
  })
  return Math.min(...worst)
}

/** Everything in a pattern that breaks the contract or cannot be cut and sewn, in words; empty when all is well. */
export function complaints(pattern: RawPattern): string[] {
  const found: string[] = []
  const say = (...words: (string | number)[]) => found.push(words.join(' '))
  if (pattern.scyewright !== 'pattern/1' || pattern.unit !== 'mm' || pattern.up !== 'y')
    say('not a pattern/1 in mm, y up')
  for (const piece of pattern.pieces) {
    checkOutline(piece, say)
    checkDarts(piece, say)
    checkNotches(piece, say)
    checkCutLine(piece, say)
    if (!piece.lines.some((line) => line.id === 'grain')) say(piece.id, 'has no grain')
  }
  for (const join of pattern.joins) {
    const ease = sideLength(pattern, join.a) - sideLength(pattern, join.b)
    const { min, target, max } = join.ease
    if (!(min <= target && target <= max)) say(join.id, 'declares', min, target, max)
    if (ease < min - 0.01 || ease > max + 0.01) say(join.id, 'has ease', ease.toFixed(3), 'declared', min, 'to', max)
  }
  for (const piece of pattern.pieces.filter((p) => p.id.startsWith('sleeve'))) checkSleeve(piece, say)
  return found
}

type Say = (...words: (string | number)[]) => void

function checkOutline(piece: RawPiece, say: Say): void {
  piece.seams.forEach((seam, i) => {
    const curves = seam.parts.map(curvesOf)
    const next = piece.seams[(i + 1) % piece.seams.length] as RawSeam
    const end = curves.at(-1)?.at(-1)?.[3] as Pt
    const start = curvesOf(next.parts[0] as string)[0]?.[0] as Pt
    if (gap(end, start) > 0.001) say(piece.id, seam.id, 'ends', gap(end, start).toFixed(4), 'mm from', next.id)
    const darts = piece.darts.filter((d) => d.seam === seam.id)
    if (darts.length !== seam.parts.length - 1)
      say(piece.id, seam.id, 'has', seam.parts.length, 'parts and', darts.length, 'darts')
    for (let k = 1; k < curves.length; k++) {
      const from = curves[k - 1]?.at(-1)?.[3] as Pt
      const to = curves[k]?.[0]?.[0] as Pt
      if (!darts.some((d) => gap(d.mouth[0], from) < 0.001 && gap(d.mouth[1], to) < 0.001))
        say(piece.id, seam.id, 'gap without dart')
    }
  })
  const points = sampled(outlineCurves(piece), 60)
  if (!(signedArea(points) > 1000)) say(piece.id, 'does not run anticlockwise')
  if (crossings(points).length > 0) say(piece.id, 'crosses itself')
}

function checkDarts(piece: RawPiece, say: Say): void {
  const points = sampled(outlineCurves(piece), 60)
  for (const dart of piece.darts) {
    const [one, other] = dart.mouth.map((p) => gap(p, dart.point)) as [number, number]
    if (Math.abs(one - other) > 0.05) say(piece.id, dart.id, 'has legs', one.toFixed(3), other.toFixed(3))
    if (!isWithin(points, dart.point)) say(piece.id, dart.id, 'ends outside the piece')
  }
}

function checkNotches(piece: RawPiece, say: Say): void {
  for (const notch of piece.notches) {
    const off = distanceToChain(sampled(seamCurves(piece, notch.seam), 1000), notch.at)
    if (off > 0.01) say(piece.id, notch.id, 'lies', off.toFixed(4), 'mm off', notch.seam)
    const marks = notch.id.startsWith('back notch') ? 2 : 1
    if (/^(front|back) notch/.test(notch.id) && notch.marks !== marks)
      say(piece.id, notch.id, 'has', notch.marks, 'marks')
  }
}

function checkCutLine(piece: RawPiece, say: Say): void {
  const cut = sampled(curvesOf(piece.cutLine), 16)
  if (!/Z\s*$/.test(piece.cutLine)) say(piece.id, 'cut line is not closed')
  if (!(signedArea(cut) > signedArea(sampled(outlineCurves(piece), 60))))
    say(piece.id, 'cut line encloses less than the stitching line')
  if (crossings(cut).length > 0) say(piece.id, 'cut line crosses itself')
  if (crossings(cut, sampled(outlineCurves(piece), 60)).length > 0) say(piece.id, 'cut line crosses the stitching line')
  // Part by part: the chord over a dart's mouth is no stitching line.
  const parts = piece.seams.flatMap((seam) => seam.parts.map((part) => boxed(seam, sampled(curvesOf(part), 150))))
  const tips = piece.seams.filter(({ id }) => id.startsWith('shoulder')).flatMap(({ parts }) => endsOf(parts))
  const widest = Math.max(...piece.seams.map((seam) => seam.allowance))
  for (const p of cut) {
    // Near a corner two seams are equally far: the smaller allowance of the nearest ones counts.
    const distances = parts
      .filter(({ box }) => distanceToBox(box, p) < widest + 1)
      .map(({ seam, chain }) => ({ seam, off: distanceToChain(chain, p) }))
    if (distances.length === 0) continue
    const nearest = Math.min(...distances.map((d) => d.off))
    const least = Math.min(...distances.filter((d) => d.off < nearest + 0.01).map((d) => d.seam.allowance))
    // Over a dart's mouth the line mirrors what the folded dart lies on, not the seam beside it: where the seam turns
    // by 10° across the dart, the mirror image of a line 25.4 mm off one side runs up to 1 mm nearer to the other.
    // At a shoulder point the allowance ends square to the shoulder, not to the armscye: where these meet at less than
    // a right angle the corner of the cutting line lies up to 0.3 mm nearer to the shoulder point.
    const atTip = tips.some((tip) => gap(tip, p) < nearest + 0.5)
    const bound = piece.darts.some((dart) => isOverDart(dart, p)) ? 1 : atTip ? 0.3 : 0.05
    if (nearest < least - bound)
      say(piece.id, 'cut line only', nearest.toFixed(3), 'mm outside at', p.map((v) => v.toFixed(1)).join(' '))
  }
}

/** The first and the last point of a seam. */
function endsOf(parts: readonly string[]): Pt[] {
  const curves = parts.flatMap(curvesOf)
  return [onCurve(curves[0] as Curve, 0), onCurve(curves[curves.length - 1] as Curve, 1)]
}

type Box = readonly [left: number, low: number, right: number, high: number]

function boxed<T>(seam: T, chain: readonly Pt[]): { seam: T; chain: readonly Pt[]; box: Box } {
  const xs = chain.map(([x]) => x)
  const ys = chain.map(([, y]) => y)
  return { seam, chain, box: [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)] }
}

function distanceToBox([left, low, right, high]: Box, [x, y]: Pt): number {
  return Math.hypot(Math.max(left - x, 0, x - right), Math.max(low - y, 0, y - high))
}

/** Whether a point outside the piece lies between the legs of a dart, drawn on beyond its mouth. */
function isOverDart({ mouth: [a, b], point: [x, y] }: RawPiece['darts'][number], [px, py]: Pt): boolean {
  const side = (q: Pt) => ((q[0] - x) * (py - y) - (q[1] - y) * (px - x)) / gap(q, [x, y])
  const ahead = ((a[0] + b[0]) / 2 - x) * (px - x) + ((a[1] + b[1]) / 2 - y) * (py - y) > 0
  return ahead && side(a) * side(b) < 0.05
}

function checkSleeve(piece: RawPiece, say: Say): void {
  const side = piece.id.replace('sleeve', '')
  const front = seamCurves(piece, 'front underarm seam')
  const back = seamCurves(piece, 'back underarm seam')
  const difference = lengthOf(back) - lengthOf(front)
  if (Math.abs(difference) > 0.5) say(piece.id, 'underarm seams differ by', difference.toFixed(3), side)
  for (const id of ['front cap', 'back cap']) {
    const bends = bendsOf(seamCurves(piece, id))
    if (bends.length !== 2)
      say(piece.id, id, 'has', bends.length - 1, 'inflections:', bends.map((b) => b.toFixed(1)).join(', '))
  }
  const crown = bendsOf([...seamCurves(piece, 'front cap'), ...seamCurves(piece, 'back cap')])
  if (crown.length !== 3) say(piece.id, 'cap has', crown.length - 1, 'inflections over the crown')
}
