import { atan2, cos, sin, unitVector } from '../base/trig.ts'
/** A point or a vector in the plane: millimetres, x to the right, y up. */
export interface Point {
  /** mm to the right. */
  readonly x: number
  /** mm up. */
  readonly y: number
}

/** The point at (x, y), mm. */
export function point(x: number, y: number): Point {
  return { x, y }
}

/** The sum of two vectors. */
export function add(a: Point, b: Point): Point {
  return { x: a.x + b.x, y: a.y + b.y }
}

/** The vector from b to a. */
export function subtract(a: Point, b: Point): Point {
  return { x: a.x - b.x, y: a.y - b.y }
}

/** The vector `factor` times as long. */
export function scale(a: Point, factor: number): Point {
  return { x: a.x * factor, y: a.y * factor }
}

/** a + factor · b: the point reached from a by that many times b. */
export function along(a: Point, b: Point, factor: number): Point {
  return { x: a.x + b.x * factor, y: a.y + b.y * factor }
}

/** The point at `fraction` of the way from a (0) to b (1); fractions beyond continue the line. */
export function between(a: Point, b: Point, fraction: number): Point {
  return { x: a.x + (b.x - a.x) * fraction, y: a.y + (b.y - a.y) * fraction }
}

/** The scalar product a · b. */
export function dot(a: Point, b: Point): number {
  return a.x * b.x + a.y * b.y
}

/** The cross product a × b: positive when b lies anticlockwise of a. */
export function cross(a: Point, b: Point): number {
  return a.x * b.y - a.y * b.x
}

/** The length of a vector. */
export function magnitude(a: Point): number {
  return Math.sqrt(a.x * a.x + a.y * a.y)
}

/** Whether two points have the same coordinates, to the last digit. */
export function equalPoints(a: Point, b: Point): boolean {
  return a.x === b.x && a.y === b.y
}

/** The distance of two points. */
export function distance(a: Point, b: Point): number {
  const x = a.x - b.x
  const y = a.y - b.y
  return Math.sqrt(x * x + y * y)
}

/** The unit vector of a, to rounding. Throws on a vector without length, which has no direction. */
export function unit(a: Point): Point {
  const length = magnitude(a)
  if (!(length > 0)) throw new RangeError('a vector without length has no direction')
  return { x: a.x / length, y: a.y / length }
}

/** The unit vector at `angle` radians, anticlockwise from +x. */
export function heading(angle: number): Point {
  return unitVector(angle)
}

/** The direction of a in radians, in (−π, π], anticlockwise from +x. */
export function angleOf(a: Point): number {
  return atan2(a.y, a.x)
}

/** The angle in radians, in (−π, π], by which a must turn anticlockwise to point as b does. */
export function turnBetween(a: Point, b: Point): number {
  return atan2(cross(a, b), dot(a, b))
}

/** a turned a quarter anticlockwise: the left normal of a direction. */
export function leftOf(a: Point): Point {
  return { x: -a.y, y: a.x }
}

/** a turned a quarter clockwise: the right normal of a direction. */
export function rightOf(a: Point): Point {
  return { x: a.y, y: -a.x }
}

/** a turned by `angle` radians anticlockwise about `center`. */
export function rotateAbout(a: Point, center: Point, angle: number): Point {
  const c = cos(angle)
  const s = sin(angle)
  const x = a.x - center.x
  const y = a.y - center.y
  return { x: center.x + c * x - s * y, y: center.y + s * x + c * y }
}
