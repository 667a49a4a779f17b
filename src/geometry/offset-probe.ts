import { arcLengthBetween } from './arc-length.ts'
import { type Cubic, pointAt } from './cubic.ts'
import { tangentAt } from './path-length.ts'

/** A distance that changes along a path: the cubic covers the fractions `from` to `to` of the path's length. */
export interface Taper {
  readonly at: (fraction: number) => number
  readonly from: number
  readonly to: number
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

const STEP = 1e-6

/**
 * The offset curve O(t) = C(t) + d·n(t) of one cubic, n the right normal, evaluated place by place into its own
 * fields (no allocation). O′ = (|C′| + d·θ′)·tangent + d′·n, θ′ the rate of turning per unit of t.
 */
export class OffsetProbe {
  x = 0
  y = 0
  /** O′(t). */
  dx = 0
  dy = 0
  tangentX = 0
  tangentY = 0
  /** Speed of the offset along the source's direction; negative where it runs backward. */
  forward = 0
  /** The distance, without its sign. */
  reach = 0

  private readonly c: Cubic
  private readonly distance: number
  private readonly taper: Taper | undefined
  private readonly length: number
  // The legs of the control polygon, and their cross products. In this form nothing cancels near an end whose handle
  // lies on it, where the turning is a quotient of two vanishing numbers.
  private readonly ax: number
  private readonly ay: number
  private readonly bx: number
  private readonly by: number
  private readonly ex: number
  private readonly ey: number
  private readonly ab: number
  private readonly ae: number
  private readonly be: number

  constructor(c: Cubic, distance: number | Taper) {
    this.c = c
    this.distance = typeof distance === 'number' ? distance : 0
    this.taper = typeof distance === 'number' ? undefined : distance
    this.length = this.taper ? arcLengthBetween(c, 0, 1) : 0
    this.ax = c.p1.x - c.p0.x
    this.ay = c.p1.y - c.p0.y
    this.bx = c.p2.x - c.p1.x
    this.by = c.p2.y - c.p1.y
    this.ex = c.p3.x - c.p2.x
    this.ey = c.p3.y - c.p2.y
    this.ab = this.ax * this.by - this.ay * this.bx
    this.ae = this.ax * this.ey - this.ay * this.ex
    this.be = this.bx * this.ey - this.by * this.ex
  }

  at(t: number): void {
    const { ax, ay, bx, by, ex, ey, c } = this
    const u = 1 - t
    const uu = u * u
    const ut = u * t
    const tt = t * t
    const x = uu * u * c.p0.x + 3 * uu * t * c.p1.x + 3 * u * tt * c.p2.x + tt * t * c.p3.x
    const y = uu * u * c.p0.y + 3 * uu * t * c.p1.y + 3 * u * tt * c.p2.y + tt * t * c.p3.y
    const sx = 3 * (uu * ax + 2 * ut * bx + tt * ex)
    const sy = 3 * (uu * ay + 2 * ut * by + tt * ey)
    const speed = Math.sqrt(sx * sx + sy * sy)
    let turning: number
    if (speed > 0) {
      this.tangentX = sx / speed
      this.tangentY = sy / speed
      turning = (18 * (uu * this.ab + ut * this.ae + tt * this.be)) / (speed * speed)
    } else {
      // On an end with a handle on it: the limit from inside.
      const tangent = tangentAt(c, t)
      this.tangentX = tangent.x
      this.tangentY = tangent.y
      const square = bx * bx + by * by
      turning = square > 0 ? (t < 0.5 ? this.be : this.ab) / (2 * square) : 0
    }
    let d = this.distance
    let slope = 0
    if (this.taper) {
      const { at, from, to } = this.taper
      const share = this.length > 0 ? arcLengthBetween(c, 0, t) / this.length : t
      const f = from + (to - from) * share
      d = at(f)
      const low = Math.max(from, f - STEP)
      const high = Math.min(to, f + STEP)
      slope = high > low ? (((at(high) - at(low)) / (high - low)) * (to - from) * speed) / this.length : 0
    }
    this.forward = speed + d * turning
    this.reach = Math.abs(d)
    this.x = x + d * this.tangentY
    this.y = y - d * this.tangentX
    this.dx = this.forward * this.tangentX + slope * this.tangentY
    this.dy = this.forward * this.tangentY - slope * this.tangentX
  }

  /** The offset's end or a joint; the source's own points at 0 and 1 are taken exactly. */
  end(t: number): OffsetEnd {
    this.at(t)
    const p = pointAt(this.c, t)
    // Exactly point + distance · normal at the ends, without the rounding of the polynomial.
    const d =
      t === 0 || t === 1
        ? this.taper
          ? this.taper.at(t === 0 ? this.taper.from : this.taper.to)
          : this.distance
        : undefined
    return {
      t,
      x: d === undefined ? this.x : p.x + d * this.tangentY,
      y: d === undefined ? this.y : p.y - d * this.tangentX,
      dx: this.dx,
      dy: this.dy,
      tangentX: this.tangentX,
      tangentY: this.tangentY,
      forward: this.forward,
    }
  }

  /**
   * The distance from (qx, qy) to the offset curve near t, by two steps along it; never less than the true one. Leaves
   * the probe at the nearest place.
   */
  miss(qx: number, qy: number, guess: number, h: number): number {
    let t = guess
    this.at(t)
    for (let step = 0; step < 2; step++) {
      const speed2 = this.dx * this.dx + this.dy * this.dy
      const along = (qx - this.x) * this.dx + (qy - this.y) * this.dy
      if (!(speed2 > 0)) break
      const change = along / speed2
      if (Math.abs(change) < 1e-6 * h) break
      if (Math.abs(change) > h / 4) break
      t = Math.min(1, Math.max(0, t + change))
      this.at(t)
    }
    const ex = qx - this.x
    const ey = qy - this.y
    return Math.sqrt(ex * ex + ey * ey)
  }

  /** The first place strictly between two where the offset turns back or forward again, or nothing. */
  turnsBack(from: OffsetEnd, to: OffsetEnd): number | undefined {
    // A piece that starts or ends at a cusp has no speed there: it has the sign of its inside.
    const standing = 1e-7 * (Math.abs(from.forward) + Math.abs(to.forward))
    let before = from.t
    let sign = Math.abs(from.forward) <= standing ? 0 : Math.sign(from.forward)
    for (let k = 1; k <= 8; k++) {
      const t = k === 8 ? to.t : from.t + ((to.t - from.t) * k) / 8
      let forward = to.forward
      if (k < 8) {
        this.at(t)
        forward = this.forward
      } else if (Math.abs(forward) <= standing) return undefined
      const here = Math.sign(forward)
      if (sign !== 0 && here !== 0 && here !== sign) {
        const root = this.standstill(before, t, sign)
        return root > from.t && root < to.t ? root : undefined
      }
      if (here !== 0) sign = here
      before = t
    }
    return undefined
  }

  private standstill(a: number, b: number, signAtA: number): number {
    let low = a
    let high = b
    for (let i = 0; i < 60 && high - low > 1e-15; i++) {
      const t = (low + high) / 2
      this.at(t)
      if (this.forward === 0) return t
      if (this.forward > 0 === signAtA > 0) low = t
      else high = t
    }
    return (low + high) / 2
  }
}
