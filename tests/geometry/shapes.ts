import fc from 'fast-check'
import { type Cubic, cubic } from '../../src/geometry/cubic.ts'
import { hobbySpline } from '../../src/geometry/hobby.ts'
import type { Path } from '../../src/geometry/path.ts'
import { heading, type Point, point, scale } from '../../src/geometry/point.ts'

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true })

/** A point within 300 mm of the origin, on a grid of a thousandth of a millimetre so that failures read well. */
export const anyPoint: fc.Arbitrary<Point> = fc
  .tuple(fc.integer({ min: -300_000, max: 300_000 }), fc.integer({ min: -300_000, max: 300_000 }))
  .map(([x, y]) => point(x / 1000, y / 1000))

/** Any cubic: loops, near-cusps and handles on their end points among them. */
export const anyCubic: fc.Arbitrary<Cubic> = fc.oneof(
  fc.tuple(anyPoint, anyPoint, anyPoint, anyPoint).map(([a, b, c, d]) => cubic(a, b, c, d)),
  fc.tuple(anyPoint, anyPoint, anyPoint).map(([a, b, c]) => cubic(a, a, b, c)),
  fc.tuple(anyPoint, anyPoint, anyPoint).map(([a, b, c]) => cubic(a, b, c, c)),
  fc.tuple(anyPoint, anyPoint).map(([a, b]) => cubic(a, a, b, b)),
)

/** A cubic as a seam has them: it turns by less than a right angle on each side of its chord, handles of fair length. */
export const fairCubic: fc.Arbitrary<Cubic> = fc
  .record({
    length: number(40, 300),
    a: number(-1.2, 1.2),
    b: number(-1.2, 1.2),
    u: number(0.25, 0.45),
    v: number(0.25, 0.45),
  })
  .map(({ length, a, b, u, v }) => {
    const start = scale(heading(a), u * length)
    const end = scale(heading(b), v * length)
    return cubic(point(0, 0), start, point(length - end.x, -end.y), point(length, 0))
  })

/** A smooth closed outline, anticlockwise, starlike about the origin; the nearer `low` to `high`, the rounder. */
export const roundOutline = (low: number, high: number): fc.Arbitrary<Path> =>
  fc.array(number(low, high), { minLength: 5, maxLength: 9 }).map((radii) =>
    hobbySpline(
      radii.map((r, k) => ({ at: scale(heading((2 * Math.PI * k) / radii.length), r) })),
      { closed: true },
    ),
  )

/** A rigid move: turn about the origin and shift. */
export const anyMove: fc.Arbitrary<(p: Point) => Point> = fc
  .tuple(number(-Math.PI, Math.PI), anyPoint)
  .map(([angle, by]) => {
    const c = Math.cos(angle)
    const s = Math.sin(angle)
    return (p: Point) => point(c * p.x - s * p.y + by.x, s * p.x + c * p.y + by.y)
  })

/** Numbers between, without the special ones. */
export const between = number

/** An arc of a circle about the origin as four-cubics-a-turn spline; error 2.7e-4 of the radius at worst. */
export function circle(radius: number): Path {
  return hobbySpline(
    [0, 1, 2, 3].map((k) => ({ at: scale(heading((k * Math.PI) / 2), radius) })),
    { closed: true },
  )
}

/** The path as the data of an SVG path, all digits. */
export function pathData(path: Path): string {
  const text = (p: Point) => `${p.x} ${p.y}`
  return path.map((c, k) => `${k === 0 ? `M ${text(c.p0)} ` : ''}C ${text(c.p1)} ${text(c.p2)} ${text(c.p3)}`).join(' ')
}
