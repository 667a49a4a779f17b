import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { polyline } from '../../src/geometry/path.ts'
import { chooseGrid } from '../../src/sheets/choose-grid.ts'
import { boxOfInk, inkOf } from '../../src/sheets/ink.ts'
import { layOut } from '../../src/sheets/lay-out.ts'
import { layOutTiles } from '../../src/sheets/lay-out-tiles.ts'
import { packStrip, stripShapes } from '../../src/sheets/pack-strip.ts'
import { pageShapes } from '../../src/sheets/page-shapes.ts'
import { type Paper, parsePaper } from '../../src/sheets/papers.ts'
import { TRUE_SQUARE } from '../../src/sheets/printer-error.ts'
import { type Mark, type PieceDrawing, placedMarks } from '../../src/sheets/scene.ts'
import { drafted, INFO, samplesOf, split } from './fixture.ts'

function paper(name: string): Paper {
  const read = parsePaper(name)
  if (!read.ok) throw new Error(name)
  return read.value
}

/** A piece with this outline, nothing else on it. */
function drawing(id: string, corners: readonly (readonly [number, number])[]): PieceDrawing {
  const points = [...corners, corners[0] as [number, number]].map(([x, y]) => ({ x, y }))
  const marks: Mark[] = [{ type: 'stroke', kind: 'cutting line', id, paths: [polyline(points)], closed: true }]
  return { id, title: id, description: id, marks, box: boxOfInk(inkOf(marks)) }
}

const shapesOf = (drawings: readonly PieceDrawing[]) =>
  stripShapes(drawings, new Map(drawings.map((d) => [d, inkOf(d.marks)])))

const rectangle = (id: string, w: number, h: number) =>
  drawing(id, [
    [0, 0],
    [w, 0],
    [w, h],
    [0, h],
  ])

describe('packing a strip', () => {
  test('fills a strip of two columns as a hand would', () => {
    const pieces = [rectangle('long', 100, 400), rectangle('a', 100, 180), rectangle('b', 100, 180)]
    const ways = packStrip(shapesOf(pieces), 230)
    expect(Math.min(...ways.map((way) => way.height))).toBeLessThan(400 + 1)
    expect(Math.min(...ways.map((way) => way.height))).toBeGreaterThanOrEqual(400)
  })

  test('lets one piece reach into the hollow of another', () => {
    const hook = drawing('hook', [
      [0, 0],
      [300, 0],
      [300, 60],
      [60, 60],
      [60, 300],
      [0, 300],
    ])
    const pieces = [hook, rectangle('square', 200, 200)]
    const ways = packStrip(shapesOf(pieces), 310)
    expect(Math.min(...ways.map((way) => way.height))).toBeLessThan(302)
  })

  test('has no way for a piece wider than the strip', () => {
    const pieces = [rectangle('wide', 300, 50)]
    expect(packStrip(shapesOf(pieces), 299)).toEqual([])
  })

  test('keeps pieces inside the strip and apart from each other, always, and the same twice', () => {
    const side = fc.double({ min: 30, max: 260, noNaN: true })
    const triangle = fc.tuple(side, side, fc.double({ min: 0, max: 1, noNaN: true }), fc.boolean())
    fc.assert(
      fc.property(
        fc.array(triangle, { minLength: 1, maxLength: 6 }),
        fc.double({ min: 265, max: 900, noNaN: true }),
        (sizes, width) => {
          const pieces = sizes.map(([w, h, share, up], k) =>
            drawing(
              `${k}`,
              up
                ? [
                    [0, 0],
                    [w, 0],
                    [share * w, h],
                  ]
                : [
                    [share * w, 0],
                    [w, h],
                    [0, h],
                  ],
            ),
          )
          const ways = packStrip(shapesOf(pieces), width)
          expect(ways.length).toBeGreaterThan(0)
          expect(packStrip(shapesOf(pieces), width)).toEqual(ways)
          for (const way of ways.slice(0, 4)) {
            const outlines = way.placed.map((placed) => placedMarks(placed).flatMap((mark) => samplesOf(mark, 30)))
            for (const points of outlines) {
              for (const p of points) {
                expect(p.x).toBeGreaterThan(-1e-6)
                expect(p.x).toBeLessThan(width + 1e-6)
                expect(p.y).toBeGreaterThan(-1e-6)
                expect(p.y).toBeLessThan(way.height + 1e-6)
              }
            }
            outlines.forEach((a, k) => {
              for (const b of outlines.slice(k + 1)) {
                const nearest = Math.min(...a.map((p) => Math.min(...b.map((q) => Math.hypot(p.x - q.x, p.y - q.y)))))
                // The gap is kept level and upright: across a corner a little less remains.
                expect(nearest).toBeGreaterThan(8)
              }
            })
          }
        },
      ),
      { numRuns: 15 },
    )
  })
})

describe('the pages chosen', () => {
  const scene = layOut(drafted(), INFO)
  const drawings = scene.pieces.map((p) => p.drawing)
  const pagesOn = (name: string) => layOutTiles(scene, paper(name)).pages.filter((page) => page.window).length

  test('are no more than packing found before, and no fewer than the pieces cover', () => {
    // A change that needs another page of these is a change for the worse.
    const most = { letter: 15, a4: 15, legal: 13, tabloid: 8, a3: 7, a2: 4, a1: 2, a0: 1, 'arch-e': 1 }
    for (const [name, count] of Object.entries(most)) expect(pagesOn(name), name).toBeLessThanOrEqual(count)
    const area = drawings.reduce((sum, { box }) => sum + (box.right - box.left) * (box.top - box.bottom), 0)
    expect(pagesOn('letter')).toBeGreaterThan((0.6 * area) / (258 * 180))
  })

  test('of a roll are one, as long as the best packing and not longer than the pieces below each other', () => {
    const { height } = layOutTiles(scene, paper('roll-36in'))
    const heights = drawings.map(({ box }) => box.top - box.bottom)
    expect(height).toBeGreaterThan(Math.max(...heights))
    expect(height).toBeLessThan(heights.reduce((a, b) => a + b))
  })

  test('of a long roll are equal and joined with the same marks, none longer than readers take', () => {
    const many = layOut(split(drafted()), INFO)
    const tiles = layOutTiles(many, paper('roll-20cm'))
    expect(tiles.height).toBeLessThanOrEqual((14400 / 72) * 25.4)
    const windows = tiles.pages.flatMap((page) => (page.window ? [page.window] : []))
    expect(new Set(windows.map((w) => (w.top - w.bottom).toFixed(6))).size).toBe(1)
    const rows = new Set(windows.map((w) => w.bottom.toFixed(3)))
    const columns = new Set(windows.map((w) => w.left.toFixed(3)))
    expect(rows.size * columns.size).toBeGreaterThan(1)
    for (const page of tiles.pages) {
      if (!page.window) continue
      expect(page.furniture.some((mark) => mark.id.startsWith('cross'))).toBe(true)
    }
  })

  test('of a roll are cut where it would be longer than readers take, into equal lengths that hold all of it', () => {
    for (const square of [TRUE_SQUARE, { x: 97, y: 96 }, { x: 103, y: 104 }]) {
      for (const needed of [4000, 5040, 5100, 12_000, 40_000]) {
        const [page] = pageShapes(paper('roll-36in'), needed, { margin: 10, overlap: 10, square })
        if (!page) throw new Error('no page')
        const step = page.frame.top - page.frame.bottom - 10
        const onPaper = (page.height * 100) / square.y
        expect(onPaper).toBeLessThanOrEqual((14400 / 72) * 25.4 + 1e-9)
        const count = Math.ceil((needed - 10) / step)
        expect(count * step + 10).toBeGreaterThan(needed)
        // No more pages than the longest would need.
        expect(count).toBeLessThanOrEqual(Math.ceil(needed / 4700))
      }
    }
  })

  test('of one sheet begin at its upper left corner: what is left over is one strip', () => {
    const grid = chooseGrid(drawings, paper('a0'), { margin: 10, overlap: 10, square: TRUE_SQUARE })
    const left = Math.min(...grid.placed.map((p) => p.at.x + p.drawing.box.left))
    const top = Math.max(...grid.placed.map((p) => p.at.y + p.drawing.box.top))
    expect(left).toBeLessThan(3)
    expect(grid.page.frame.top - grid.page.frame.bottom - top).toBeLessThan(3)
  })
})
