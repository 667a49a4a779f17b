import { between, magnitude, type Point, scale, subtract } from './point.ts'

/** One cubic Bézier: from p0 to p3 with the handles p1 and p2, in mm. A straight line is a cubic too. */
export interface Cubic {
  /** Where it begins. */
  readonly p0: Point
  /** Handle of the beginning; the tangent there points to it. */
  readonly p1: Point
  /** Handle of the end; the tangent there comes from it. */
  readonly p2: Point
  /** Where it ends. */
  readonly p3: Point
}

/** The cubic of these four points, mm: the same objects. */
export function cubic(p0: Point, p1: Point, p2: Point, p3: Point): Cubic {
  return { p0, p1, p2, p3 }
}

/** The straight line from a to b, its handles at the thirds, so that it is run through at even speed. */
export function line(a: Point, b: Point): Cubic {
  return { p0: a, p1: between(a, b, 1 / 3), p2: between(a, b, 2 / 3), p3: b }
}

/** The point at parameter t in [0, 1], mm: exact at both ends, to rounding between. */
export function pointAt(c: Cubic, t: number): Point {
  if (t === 0) return c.p0
  if (t === 1) return c.p3
  const u = 1 - t
  const a = u * u * u
  const b = 3 * u * u * t
  const d = 3 * u * t * t
  const e = t * t * t
  return {
    x: a * c.p0.x + b * c.p1.x + d * c.p2.x + e * c.p3.x,
    y: a * c.p0.y + b * c.p1.y + d * c.p2.y + e * c.p3.y,
  }
}

/** The first derivative at t, mm per unit of t, to rounding; zero where a handle lies on its end point. */
export function derivativeAt(c: Cubic, t: number): Point {
  const u = 1 - t
  const a = 3 * u * u
  const b = 6 * u * t
  const d = 3 * t * t
  return {
    x: a * (c.p1.x - c.p0.x) + b * (c.p2.x - c.p1.x) + d * (c.p3.x - c.p2.x),
    y: a * (c.p1.y - c.p0.y) + b * (c.p2.y - c.p1.y) + d * (c.p3.y - c.p2.y),
  }
}

/** The second derivative at t, mm per square unit of t, to rounding. */
export function secondDerivativeAt(c: Cubic, t: number): Point {
  const a = 6 * (1 - t)
  const b = 6 * t
  return {
    x: a * (c.p2.x - 2 * c.p1.x + c.p0.x) + b * (c.p3.x - 2 * c.p2.x + c.p1.x),
    y: a * (c.p2.y - 2 * c.p1.y + c.p0.y) + b * (c.p3.y - 2 * c.p2.y + c.p1.y),
  }
}

/**
 * The signed curvature at t in 1/mm, to rounding: positive where the curve turns anticlockwise. Infinite or not a
 * number at a cusp or where a handle lies on its end point; ask a little inside there.
 */
export function curvatureAt(c: Cubic, t: number): number {
  const d = derivativeAt(c, t)
  const dd = secondDerivativeAt(c, t)
  const speed = magnitude(d)
  return (d.x * dd.y - d.y * dd.x) / (speed * speed * speed)
}

/** The same curve run through from p3 to p0, exactly. */
export function reverseCubic(c: Cubic): Cubic {
  return { p0: c.p3, p1: c.p2, p2: c.p1, p3: c.p0 }
}

/** The curve cut at t into two that share the point there and together are the curve, to rounding (de Casteljau). */
export function splitCubic(c: Cubic, t: number): [Cubic, Cubic] {
  const a = between(c.p0, c.p1, t)
  const b = between(c.p1, c.p2, t)
  const d = between(c.p2, c.p3, t)
  const ab = between(a, b, t)
  const bd = between(b, d, t)
  const m = between(ab, bd, t)
  return [
    { p0: c.p0, p1: a, p2: ab, p3: m },
    { p0: m, p1: bd, p2: d, p3: c.p3 },
  ]
}

/** The part of the curve between the parameters t0 ≤ t1, to rounding; the curve itself between 0 and 1. */
export function subCubic(c: Cubic, t0: number, t1: number): Cubic {
  if (t0 === 0 && t1 === 1) return c
  const right = t0 === 0 ? c : splitCubic(c, t0)[1]
  if (t1 === 1) return right
  return splitCubic(right, (t1 - t0) / (1 - t0))[0]
}

/** The curve with every control point passed through `move`; exact for affine moves. */
export function moveCubic(c: Cubic, move: (p: Point) => Point): Cubic {
  return { p0: move(c.p0), p1: move(c.p1), p2: move(c.p2), p3: move(c.p3) }
}

/** Whether the curve is a straight line run through at even speed, as `line` makes it (within 1e-9 mm). */
export function isLine(c: Cubic): boolean {
  const chord = subtract(c.p3, c.p0)
  const third = scale(chord, 1 / 3)
  return (
    Math.abs(c.p1.x - c.p0.x - third.x) < 1e-9 &&
    Math.abs(c.p1.y - c.p0.y - third.y) < 1e-9 &&
    Math.abs(c.p3.x - c.p2.x - third.x) < 1e-9 &&
    Math.abs(c.p3.y - c.p2.y - third.y) < 1e-9
  )
}
