import { describe, expect, it } from 'vitest'
import { area } from '../../src/geometry/area.ts'
import { selfCrossings } from '../../src/geometry/crossings.ts'
import { isLine, line } from '../../src/geometry/cubic.ts'
import { endOf, startOf } from '../../src/geometry/path.ts'
import { point } from '../../src/geometry/point.ts'
import { outlineOf } from '../../src/pattern/outline.ts'
import type { Piece } from '../../src/pattern/piece.ts'
import { front, sleeve } from './pieces.ts'

describe('outlineOf', () => {
  it('is closed, anticlockwise, crosses nothing, and shares its points exactly', () => {
    for (const piece of [front(), sleeve()]) {
      const outline = outlineOf(piece)
      expect(startOf(outline)).toBe(endOf(outline))
      for (let k = 1; k < outline.length; k++) expect(outline[k]?.p0).toEqual(outline[k - 1]?.p3)
      expect(area(outline)).toBeGreaterThan(0)
      expect(selfCrossings(outline)).toEqual({ crossings: [], overlaps: [] })
    }
  })

  it('bridges each dart mouth by a straight chord, in the order of the seams', () => {
    const piece = front()
    const outline = outlineOf(piece)
    for (const { mouth } of piece.darts) {
      const chord = outline.find((c) => c.p0.x === mouth[0].x && c.p0.y === mouth[0].y)
      expect(chord?.p3).toEqual(mouth[1])
      expect(chord && isLine(chord)).toBe(true)
    }
    expect(outline).toHaveLength(piece.seams.flatMap((s) => s.parts.flat()).length + piece.darts.length)
    // The order of the seams, first to last.
    expect(startOf(outline)).toBe(startOf(piece.seams[0]?.parts[0] ?? []))
  })

  it('closes gaps of rounding, and throws on gaps that are none', () => {
    const square = (gap: number): Piece => ({
      ...front(),
      darts: [],
      seams: [
        { id: 'waist', allowance: 10, parts: [[line(point(0, 0), point(10, 0))]] },
        { id: 'side seam', allowance: 10, parts: [[line(point(10, gap), point(10, 10))]] },
        { id: 'neckline', allowance: 10, parts: [[line(point(10, 10), point(0, gap))]] },
      ],
    })
    const closed = outlineOf(square(5e-7))
    expect(closed[1]?.p0).toBe(closed[0]?.p3)
    expect(closed[2]?.p3).toBe(closed[0]?.p0)
    expect(() => outlineOf(square(1e-3))).toThrow(/bodice front: side seam/)
    expect(() => outlineOf({ ...front(), seams: [] })).toThrow(RangeError)
  })
})
