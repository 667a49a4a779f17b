import { atan2, cos } from '../base/trig.ts'
import { type Cubic, pointAt } from './cubic.ts'
import type { OffsetEnd, OffsetProbe } from './offset-probe.ts'

// Far deeper than smooth curves need (3 to 6); near-cusps turn within a millionth of the parameter.
const DEEPEST = 30
// Far more fits than any curve needs: whatever happens, there is an end.
const MOST_FITS = 2000
// Places inside each piece at which the fit is measured, closer together near the ends (Chebyshev's), where curves
// with short handles turn most; and the share of the tolerance that the fit may use there, the rest for between.
const SAMPLES = Array.from({ length: 9 }, (_, k) => (1 - cos((Math.PI * (k + 1)) / 10)) / 2)
export const FIT_SHARE = 0.7
// A stretch between two samples that takes this many times its share of the turning is looked at more closely.
const CROWDED = 1.8

/** Fits cubics to the offset of one cubic, piece by piece from its start, into `pieces`. */
export class OffsetFitter {
  private readonly probe: OffsetProbe
  private readonly tolerance: number
  private readonly pieces: Cubic[]
  private fits = 0

  constructor(probe: OffsetProbe, tolerance: number, pieces: Cubic[]) {
    this.probe = probe
    this.tolerance = tolerance
    this.pieces = pieces
  }

  /** Hermite cubic between two places; improved by least squares, then halved, until its samples lie within the tolerance. */
  fit(from: OffsetEnd, to: OffsetEnd, depth: number): void {
    const { probe, tolerance } = this
    const h = to.t - from.t
    const last = depth >= DEEPEST || ++this.fits > MOST_FITS
    const turn = !last ? probe.turnsBack(from, to) : undefined
    if (turn !== undefined) {
      const cusp = probe.end(turn)
      this.fit(from, cusp, depth + 1)
      this.fit(cusp, to, depth + 1)
      return
    }
    probe.at((from.t + to.t) / 2)
    const sign = probe.forward < 0 ? -1 : 1
    const a = direction(from, sign)
    const b = direction(to, sign)
    let handleA = (Math.hypot(from.dx, from.dy) * h) / 3
    let handleB = (Math.hypot(to.dx, to.dy) * h) / 3
    for (let round = 0; ; round++) {
      const x1 = from.x + a.x * handleA
      const y1 = from.y + a.y * handleA
      const x2 = to.x - b.x * handleB
      const y2 = to.y - b.y * handleB
      let worst = 0
      let aa = 0
      let ab = 0
      let bb = 0
      let ar = 0
      let br = 0
      for (let k = 0; k < SAMPLES.length; k++) {
        const u = SAMPLES[k] as number
        const v = 1 - u
        const w0 = v * v * v
        const w1 = 3 * v * v * u
        const w2 = 3 * v * u * u
        const w3 = u * u * u
        const qx = w0 * from.x + w1 * x1 + w2 * x2 + w3 * to.x
        const qy = w0 * from.y + w1 * y1 + w2 * y2 + w3 * to.y
        const miss = probe.miss(qx, qy, from.t + u * h, h)
        worst = Math.max(worst, miss)
        if (round > 0 && miss > tolerance) break
        // probe now stands at the nearest place: residual and handle weights square to the offset curve.
        const nx = probe.tangentY
        const ny = -probe.tangentX
        const r = (probe.x - qx) * nx + (probe.y - qy) * ny
        const ja = w1 * (a.x * nx + a.y * ny)
        const jb = -w2 * (b.x * nx + b.y * ny)
        aa += ja * ja
        ab += ja * jb
        bb += jb * jb
        ar += ja * r
        br += jb * r
      }
      if (!(worst > tolerance) || last) {
        const piece = {
          p0: { x: from.x, y: from.y },
          p1: { x: x1, y: y1 },
          p2: { x: x2, y: y2 },
          p3: { x: to.x, y: to.y },
        }
        if (!last && this.missesBetween(piece, from, to)) break
        this.pieces.push(piece)
        return
      }
      // Better handles cannot mend a miss this large.
      if (round > 0 || worst > 60 * tolerance) break
      const det = aa * bb - ab * ab
      if (!(det > 1e-12 * aa * bb)) break
      handleA += (bb * ar - ab * br) / det
      handleB += (aa * br - ab * ar) / det
      if (!(handleA > 0 && handleB > 0)) break
    }
    const middle = probe.end((from.t + to.t) / 2)
    this.fit(from, middle, depth + 1)
    this.fit(middle, to, depth + 1)
  }

  /**
   * Whether the piece misses the offset between its samples, where most of its turning is crowded between two of them: a
   * curve that nearly stands still there. Such a stretch is halved until what is unseen turns too little to matter.
   */
  private missesBetween(piece: Cubic, from: OffsetEnd, to: OffsetEnd): boolean {
    const { probe } = this
    const h = to.t - from.t
    const headings: number[] = [atan2(from.tangentY, from.tangentX)]
    let sum = 0
    for (let k = 0; k <= SAMPLES.length; k++) {
      const u = SAMPLES[k]
      if (u !== undefined) probe.at(from.t + u * h)
      const heading = u === undefined ? atan2(to.tangentY, to.tangentX) : atan2(probe.tangentY, probe.tangentX)
      sum += Math.abs(between(headings[k] as number, heading))
      headings.push(heading)
    }
    for (let k = 0; k <= SAMPLES.length; k++) {
      const u = k === 0 ? 0 : (SAMPLES[k - 1] as number)
      const v = SAMPLES[k] ?? 1
      const turn = Math.abs(between(headings[k] as number, headings[k + 1] as number))
      if (turn < CROWDED * sum * (v - u)) continue
      if (this.missesWithin(piece, from.t, h, u, v, headings[k] as number, headings[k + 1] as number, 0)) return true
    }
    return false
  }

  private missesWithin(
    piece: Cubic,
    start: number,
    h: number,
    u: number,
    v: number,
    headingU: number,
    headingV: number,
    depth: number,
  ): boolean {
    const { probe, tolerance } = this
    const turn = between(headingU, headingV)
    // The way from chord to arc over this turn, at the offset's distance.
    if (depth > 12 || (probe.reach * turn * turn) / 8 < tolerance / 4) return false
    const middle = (u + v) / 2
    const q = pointAt(piece, middle)
    if (probe.miss(q.x, q.y, start + middle * h, h) > tolerance) return true
    probe.at(start + middle * h)
    const heading = atan2(probe.tangentY, probe.tangentX)
    return (
      this.missesWithin(piece, start, h, u, middle, headingU, heading, depth + 1) ||
      this.missesWithin(piece, start, h, middle, v, heading, headingV, depth + 1)
    )
  }
}

/** Unit direction of travel of the offset at an end; at a cusp, where it stands still, the source's own. */
function direction(end: OffsetEnd, sign: number): { x: number; y: number } {
  const length = Math.hypot(end.dx, end.dy)
  if (length > 1e-9) return { x: end.dx / length, y: end.dy / length }
  return { x: sign * end.tangentX, y: sign * end.tangentY }
}

/** The angle from one heading to another, at most half a turn. */
function between(a: number, b: number): number {
  return b - a - 2 * Math.PI * Math.round((b - a) / (2 * Math.PI))
}
