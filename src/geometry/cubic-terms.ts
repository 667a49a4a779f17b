import type { Cubic } from './cubic.ts'

/** A cubic by powers: C′/3 = d + 2b·t + a·t² and C″/6 = b + a·t. */
export interface CubicTerms {
  readonly ax: number
  readonly ay: number
  readonly bx: number
  readonly by: number
  readonly dx: number
  readonly dy: number
}

export function cubicTerms(c: Cubic): CubicTerms {
  return {
    ax: c.p3.x - 3 * c.p2.x + 3 * c.p1.x - c.p0.x,
    ay: c.p3.y - 3 * c.p2.y + 3 * c.p1.y - c.p0.y,
    bx: c.p2.x - 2 * c.p1.x + c.p0.x,
    by: c.p2.y - 2 * c.p1.y + c.p0.y,
    dx: c.p1.x - c.p0.x,
    dy: c.p1.y - c.p0.y,
  }
}

/** The numerator of the curvature, C′ × C″ / 18, as a polynomial: its cubic term cancels. */
export function bend({ ax, ay, bx, by, dx, dy }: CubicTerms): readonly [number, number, number] {
  return [dx * by - dy * bx, dx * ay - dy * ax, bx * ay - by * ax]
}
