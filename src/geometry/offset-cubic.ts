import { type Cubic, isLine } from './cubic.ts'
import { SAME_POINT } from './defaults.ts'
import { OffsetProbe, type Taper } from './offset-probe.ts'
import { distance as gap } from './point.ts'

// Far deeper than smooth curves need (3 to 6); near-cusps turn within a millionth of the parameter.
const DEEPEST = 30
// Far more fits than any curve needs: whatever happens, there is an end.
const MOST_FITS = 2000
// Places inside each piece at which the fit is measured, closer together near the ends (Chebyshev's), where curves
// with short handles turn most; and the share of the tolerance that the fit may use there, the rest for between.
const SAMPLES = Array.from({ length: 9 }, (_, k) => (1 - Math.cos((Math.PI * (k + 1)) / 10)) / 2)
const SHARE = 0.75

/**
 * The offset of one cubic by `distance` mm to the right of travel (a number, or a taper along it), within `tolerance`:
 * cubics that share their ends, first and last point exactly point + distance · normal. Where the concave radius
 * is smaller than the distance the curve runs backward between two cusps, as the offset of mathematics does;
 * `offset` trims that. Not for cubics with a cusp inside: split them there (`smoothParts`).
 */
export function offsetCubic(c: Cubic, distance: number | Taper, tolerance: number): Cubic[] {
  const constant = typeof distance === 'number'
  if (constant && distance === 0) return [c]
  if (constant && isLine(c)) return [shifted(c, distance)]
  const probe = new OffsetProbe(c, distance)
  const pieces: Cubic[] = []
  const fitter = new Fitter(probe, tolerance * SHARE, pieces)
  const hook = tolerance * (1 - SHARE)
  fitter.fit(withoutHook(probe, 0, hook), withoutHook(probe, 1, hook), 0)
  return withoutSpecks(pieces)
}

/**
 * An end of the offset. On the hollow side of an end with its handle on it the offset first runs backward, to a cusp and
 * forward again past its own end: a hook, mostly of a few thousandths. Where it comes by within `near` mm of the end the
 * line starts there, at the end's own point.
 */
function withoutHook(probe: OffsetProbe, t: 0 | 1, near: number): OffsetEnd {
  const end = probe.end(t)
  if (end.forward >= 0) return end
  const other = probe.end(t === 0 ? 1 : 0)
  const cusp = t === 0 ? probe.turnsBack(end, other) : probe.turnsBack(other, end)
  if (cusp === undefined) return end
  // How far the offset has come past the end, seen along it.
  const past = (at: number) => {
    probe.at(at)
    const way = (probe.x - end.x) * end.tangentX + (probe.y - end.y) * end.tangentY
    return t === 0 ? way : -way
  }
  const inward = t === 0 ? 1 : -1
  let low = cusp
  let high = cusp
  for (let step = Math.abs(cusp - t); past(high) < 0; step *= 2) {
    low = high
    high += inward * step
    if (high <= 0 || high >= 1) return end
  }
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2
    if (past(middle) < 0) low = middle
    else high = middle
  }
  const beside = probe.end(high)
  return gap(beside, end) <= near ? { ...beside, x: end.x, y: end.y } : end
}

/** Without pieces shorter than SAME_POINT, such as the way back into a handle that lies on its end point. */
function withoutSpecks(pieces: readonly Cubic[]): Cubic[] {
  const kept = pieces.filter((c) => gap(c.p0, c.p3) > SAME_POINT || gap(c.p0, c.p1) > SAME_POINT)
  if (kept.length === pieces.length || kept.length === 0) return [...pieces]
  const start = (pieces[0] as Cubic).p0
  const end = (pieces[pieces.length - 1] as Cubic).p3
  return kept.map((c, k) => ({
    ...c,
    p0: k === 0 ? start : (kept[k - 1] as Cubic).p3,
    p3: k === kept.length - 1 ? end : c.p3,
  }))
}

/** A place on the offset curve: parameter, point, unit direction of travel along the source, signed speed along it. */
export interface OffsetEnd {
  readonly t: number
  readonly x: number
  readonly y: number
  readonly dx: number
  readonly dy: number
  readonly tangentX: number
  readonly tangentY: number
  readonly forward: number
}

class Fitter {
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
        this.pieces.push({
          p0: { x: from.x, y: from.y },
          p1: { x: x1, y: y1 },
          p2: { x: x2, y: y2 },
          p3: { x: to.x, y: to.y },
        })
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
}

/** Unit direction of travel of the offset at an end; at a cusp, where it stands still, the source's own. */
function direction(end: OffsetEnd, sign: number): { x: number; y: number } {
  const length = Math.hypot(end.dx, end.dy)
  if (length > 1e-9) return { x: end.dx / length, y: end.dy / length }
  return { x: sign * end.tangentX, y: sign * end.tangentY }
}

function shifted(c: Cubic, distance: number): Cubic {
  const dx = c.p3.x - c.p0.x
  const dy = c.p3.y - c.p0.y
  const length = Math.hypot(dx, dy)
  const x = (dy / length) * distance
  const y = (-dx / length) * distance
  return {
    p0: { x: c.p0.x + x, y: c.p0.y + y },
    p1: { x: c.p1.x + x, y: c.p1.y + y },
    p2: { x: c.p2.x + x, y: c.p2.y + y },
    p3: { x: c.p3.x + x, y: c.p3.y + y },
  }
}
