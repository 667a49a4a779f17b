import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  add,
  along,
  angleOf,
  between,
  cross,
  distance,
  dot,
  equalPoints,
  heading,
  leftOf,
  magnitude,
  point,
  rightOf,
  rotateAbout,
  scale,
  subtract,
  turnBetween,
  unit,
} from '../../src/geometry/point.ts'
import { anyPoint, between as number } from './shapes.ts'

describe('points and vectors', () => {
  it('add, subtract, scale and mix coordinate by coordinate', () => {
    expect(point(3, 4)).toEqual({ x: 3, y: 4 })
    expect(add(point(3, 4), point(10, -1))).toEqual(point(13, 3))
    expect(subtract(point(3, 4), point(10, -1))).toEqual(point(-7, 5))
    expect(scale(point(3, 4), -2)).toEqual(point(-6, -8))
    expect(along(point(3, 4), point(10, -1), 2)).toEqual(point(23, 2))
    expect(between(point(3, 4), point(5, 8), 0.25)).toEqual(point(3.5, 5))
    expect(between(point(3, 4), point(5, 8), 2)).toEqual(point(7, 12))
    expect(magnitude(point(3, -4))).toBe(5)
    expect(distance(point(1, 1), point(4, 5))).toBe(5)
    expect(leftOf(point(2, 1))).toEqual(point(-1, 2))
    expect(rightOf(point(2, 1))).toEqual(point(1, -2))
  })

  it('are equal to the last digit or not at all', () => {
    expect(equalPoints(point(0.1 + 0.2, 1), point(0.3, 1))).toBe(false)
    expect(equalPoints(point(0.3, 1), point(0.3, 1))).toBe(true)
    expect(equalPoints(point(0.3, 1), point(0.3, 2))).toBe(false)
  })

  it('products are those of lengths and the angle between, anticlockwise positive', () => {
    fc.assert(
      fc.property(number(1, 300), number(1, 300), number(-3, 3), number(-3, 3), (r, s, a, turn) => {
        const u = scale(heading(a), r)
        const v = scale(heading(a + turn), s)
        expect(dot(u, v)).toBeCloseTo(r * s * Math.cos(turn), 6)
        expect(cross(u, v)).toBeCloseTo(r * s * Math.sin(turn), 6)
        expect(turnBetween(u, v)).toBeCloseTo(turn, 9)
        expect(angleOf(u)).toBeCloseTo(a, 9)
        expect(magnitude(u)).toBeCloseTo(r, 9)
        expect(distance(unit(u), heading(a))).toBeLessThan(1e-12)
      }),
    )
    expect(() => unit(point(0, 0))).toThrow(RangeError)
  })

  it('a turn keeps distances and turns every direction by its angle', () => {
    fc.assert(
      fc.property(anyPoint, anyPoint, anyPoint, number(-3, 3), (p, q, center, angle) => {
        fc.pre(distance(p, q) > 1)
        const [a, b] = [rotateAbout(p, center, angle), rotateAbout(q, center, angle)]
        expect(distance(a, center)).toBeCloseTo(distance(p, center), 9)
        expect(turnBetween(subtract(q, p), subtract(b, a))).toBeCloseTo(angle, 6)
      }),
    )
  })
})
