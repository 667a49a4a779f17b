import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { heading } from '../../src/geometry/point.ts'
import type { Segment } from '../../src/sheets/ink.ts'
import { inkRuns } from '../../src/sheets/ink-runs.ts'
import { inkSpots } from '../../src/sheets/ink-spots.ts'
import { inkedTiles, leastTiles } from '../../src/sheets/inked-tiles.ts'
import { openRoom, segmentTouches } from '../../src/sheets/room.ts'
import type { PieceDrawing } from '../../src/sheets/scene.ts'

const within = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const place = fc.record({ x: within(-100, 100), y: within(-100, 100) })
const segment = fc.record({ a: place, b: place, half: within(0, 2) })
/** Long and short pieces, some of them one after the other as those of a line are. */
const ink = fc
  .tuple(fc.array(segment, { maxLength: 20 }), fc.array(place, { maxLength: 60 }))
  .map(([loose, points]): Segment[] => [
    ...loose,
    ...points.slice(1).map((b, k) => {
      const a = points[k] as Segment['a']
      return { a, b: { x: a.x + (b.x - a.x) / 20, y: a.y + (b.y - a.y) / 20 }, half: 0.2 }
    }),
  ])

describe('ink in runs', () => {
  it('are all the pieces, in their order, each inside its box', () => {
    fc.assert(
      fc.property(ink, (pieces) => {
        const runs = inkRuns(pieces)
        expect(runs.flatMap((run) => run.segments)).toEqual(pieces)
        for (const { box, half, segments } of runs) {
          for (const s of segments) {
            expect(s.half).toBeLessThanOrEqual(half)
            for (const p of [s.a, s.b]) {
              expect(p.x - s.half >= box.left && p.x + s.half <= box.right).toBe(true)
              expect(p.y - s.half >= box.bottom && p.y + s.half <= box.top).toBe(true)
            }
          }
        }
      }),
    )
  })

  it('touch a box as often as asked piece by piece', () => {
    const box = fc.record({
      center: place,
      along: within(-3, 3).map(heading),
      halfWidth: within(0.1, 60),
      halfHeight: within(0.1, 60),
    })
    fc.assert(
      fc.property(ink, box, within(0, 10), (pieces, turned, clearance) => {
        const one = pieces.filter((s) => segmentTouches(s, turned, clearance)).length
        const room = openRoom(pieces)
        expect(room.touches(turned, clearance)).toBe(one)
        expect(room.fits(turned, clearance)).toBe(one === 0)
      }),
      { numRuns: 500 },
    )
  })

  it('lie on the tiles that their pieces lie on', () => {
    const page = { width: 100, height: 100, frame: { left: 0, bottom: 0, right: 60, top: 50 } }
    const at = { x: 130, y: 130 }
    fc.assert(
      fc.property(ink, (pieces) => {
        const drawing = {} as PieceDrawing
        const tiles = (runs: ReturnType<typeof inkRuns>) =>
          inkedTiles([{ drawing, at }], 6, 7, page, 10, new Map([[drawing, runs]]))
        const single = pieces.flatMap((one) => inkRuns([one]))
        // A box of the whole plane is never on one tile: every piece is asked.
        const endless = { left: -1e6, bottom: -1e6, right: 1e6, top: 1e6 }
        const plain = single.map((run) => ({ ...run, box: endless }))
        expect(tiles(inkRuns(pieces))).toEqual(tiles(plain))
      }),
      { numRuns: 500 },
    )
  })

  it('lie on no fewer tiles than their spots do, and on as many where only single places have ink', () => {
    const page = { width: 100, height: 100, frame: { left: 0, bottom: 0, right: 60, top: 50 } }
    const at = { x: 130, y: 130 }
    const drawing = {} as PieceDrawing
    const both = (pieces: readonly Segment[], most: number) => {
      const spots = leastTiles([{ drawing, at }], 6, 7, page, 10, new Map([[drawing, inkSpots(pieces)]]), most)
      const tiles = inkedTiles([{ drawing, at }], 6, 7, page, 10, new Map([[drawing, inkRuns(pieces)]]))
      return { spots, tiles: tiles.flat().filter(Boolean).length }
    }
    fc.assert(
      fc.property(ink, fc.nat(6), (pieces, most) => {
        const { spots, tiles } = both(pieces, most)
        expect(spots).toBeLessThanOrEqual(Math.min(tiles, most + 1))
      }),
      { numRuns: 500 },
    )
    const dots = [10, 60, 110].map((x) => ({ a: { x, y: 5 }, b: { x, y: 5 }, half: 0 }))
    expect(both(dots, 9)).toEqual({ spots: 3, tiles: 3 })
  })
})
