import { describe, expect, test } from 'vitest'
import { polyline } from '../../src/geometry/path.ts'
import type { Point } from '../../src/geometry/point.ts'
import { inkOf } from '../../src/sheets/ink.ts'
import { inkRaster } from '../../src/sheets/ink-raster.ts'
import { layOut } from '../../src/sheets/lay-out.ts'
import { layOutTiles } from '../../src/sheets/lay-out-tiles.ts'
import { squarePlacer } from '../../src/sheets/page-squares.ts'
import { parsePaper } from '../../src/sheets/papers.ts'
import type { Mark, StrokeMark } from '../../src/sheets/scene.ts'
import { textWidth } from '../../src/sheets/text-width.ts'
import { drafted, INFO, samplesOf } from './fixture.ts'

const BOX = { left: 0, bottom: 0, right: 180, top: 240 }

const lineFrom = (...points: Point[]): Mark => ({
  type: 'stroke',
  kind: 'cutting line',
  id: 'line',
  paths: [polyline(points)],
})

function solidOf(marks: readonly Mark[]): StrokeMark {
  const found = marks.find((mark) => mark.id === '100 mm square')
  if (found?.type !== 'stroke') throw new Error('no square')
  return found
}

/** Places on the sides, half a millimetre apart. */
function along(marks: readonly Mark[]): Point[] {
  return marks.filter((mark) => mark.type === 'stroke').flatMap((mark) => samplesOf(mark, 200))
}

describe('the squares of a page', () => {
  test('lie in free space, whole, where there is some', () => {
    const lines = [lineFrom({ x: 0, y: 110 }, { x: 180, y: 110 }), lineFrom({ x: 90, y: 0 }, { x: 90, y: 110 })]
    const marks = squarePlacer([])(BOX, inkOf(lines))
    expect(solidOf(marks).closed).toBe(true)
    for (const p of along(marks)) expect(p.y).toBeGreaterThan(111)
  })

  test('lie beside a piece rather than on it', () => {
    const outline = polyline([
      { x: 5, y: 5 },
      { x: 175, y: 5 },
      { x: 175, y: 125 },
      { x: 5, y: 125 },
      { x: 5, y: 5 },
    ])
    const ink = inkOf([{ type: 'stroke', kind: 'cutting line', id: 'piece', paths: [outline], closed: true }])
    for (const p of along(squarePlacer([outline])(BOX, ink))) expect(p.y).toBeGreaterThan(126)
  })

  test('stop on either side of lines where there is no free space; all corners stay', () => {
    const lines = Array.from({ length: 7 }, (_, k) => lineFrom({ x: 0, y: 10 + 35 * k }, { x: 180, y: 25 + 35 * k }))
    const ink = inkOf(lines)
    const marks = squarePlacer([])(BOX, ink)
    const square = solidOf(marks)
    expect(square.closed).toBeUndefined()
    for (const p of along(marks)) {
      for (let k = 0; k < 7; k++) expect(Math.abs(p.y - (10 + 35 * k + (15 * p.x) / 180))).toBeGreaterThan(0.9)
    }
    const points = square.paths.flat().flatMap(({ p0, p3 }) => [p0, p3])
    const [x, y] = [Math.min(...points.map((p) => p.x)), Math.min(...points.map((p) => p.y))]
    for (const [cx, cy] of [
      [x, y],
      [x + 100, y],
      [x, y + 100],
      [x + 100, y + 100],
    ] as const) {
      const ends = points.filter((p) => Math.hypot(p.x - cx, p.y - cy) < 1e-9)
      expect(ends).toHaveLength(2)
    }
  })

  test('throw where there is no room for them at all', () => {
    expect(() => squarePlacer([])({ ...BOX, right: 90 }, [])).toThrow(RangeError)
  })

  test('never lie on text, and their words on nothing, on any page of the demo', () => {
    const scene = layOut(drafted(), INFO)
    for (const name of ['letter', 'a4', 'a3']) {
      const paper = parsePaper(name)
      if (!paper.ok) throw new Error(name)
      let clear = 0
      const { pages, frame } = layOutTiles(scene, paper.value)
      for (const { pattern, furniture, number } of pages) {
        const sides = along(furniture.filter((mark) => mark.id === '100 mm square' || mark.id === '4 in square'))
        const boxes = pattern.flatMap((mark) => (mark.type === 'text' ? [mark] : []))
        for (const text of boxes) {
          const [c, s] = [Math.cos(text.angle), Math.sin(text.angle)]
          const on = sides.filter((p) => {
            const u = (p.x - text.at.x) * c + (p.y - text.at.y) * s
            const v = (p.y - text.at.y) * c - (p.x - text.at.x) * s
            return Math.abs(u) < textWidth(text.text, text.size) / 2 && v > 0 && v < 0.7 * text.size
          })
          expect(on, `${text.text} on page ${number} of ${name}`).toEqual([])
        }
        const words = furniture.flatMap((mark) => (mark.type === 'text' && mark.id === 'square name' ? [mark] : []))
        const raster = inkRaster(frame, inkOf(pattern))
        for (const { at, size, text } of words) {
          const half = textWidth(text, size) / 2
          if (raster.count({ left: at.x - half, bottom: at.y, right: at.x + half, top: at.y + 0.7 * size }, 0) === 0)
            clear++
        }
      }
      // Where every place is crossed by lines, the words take the one that is crossed least.
      expect(clear, name).toBeGreaterThanOrEqual(pages.length - 1)
    }
  })
})

describe('the raster of ink', () => {
  test('counts the millimetres that a box touches, as counting one by one does', () => {
    const ink = inkOf([lineFrom({ x: 3, y: 4 }, { x: 88, y: 70 }, { x: 20, y: 90 })])
    const raster = inkRaster({ left: 0, bottom: 0, right: 100, top: 100 }, ink)
    const points = samplesOf(lineFrom({ x: 3, y: 4 }, { x: 88, y: 70 }, { x: 20, y: 90 }), 4000)
    const cells = new Set(points.map((p) => `${Math.floor(p.x)} ${Math.floor(p.y)}`))
    const all = raster.count({ left: 0, bottom: 0, right: 100, top: 100 }, 0)
    // A step of half a millimetre may pass a corner of a cell by.
    expect(Math.abs(all - cells.size)).toBeLessThan(0.25 * cells.size)
    expect(raster.count({ left: 50, bottom: 0, right: 99, top: 20 }, 0)).toBe(0)
    expect(raster.count({ left: 0, bottom: 0, right: 2, top: 3 }, 2)).toBeGreaterThan(0)
    expect(raster.count({ left: -50, bottom: -50, right: -10, top: -10 }, 0)).toBe(0)
  })
})
