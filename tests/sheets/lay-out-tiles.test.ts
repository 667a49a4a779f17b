import { describe, expect, test } from 'vitest'
import { layOut } from '../../src/sheets/lay-out.ts'
import { layOutTiles, type TileSet } from '../../src/sheets/lay-out-tiles.ts'
import { type Paper, parsePaper } from '../../src/sheets/papers.ts'
import type { Mark } from '../../src/sheets/scene.ts'
import { tileName } from '../../src/sheets/tile-grid.ts'
import { drafted, INFO, samplesOf } from './fixture.ts'

const scene = layOut(drafted(), INFO)
const onSleeve = layOut(drafted(), { ...INFO, pieces: ['sleeve'] })

function paper(name: string): Paper {
  const read = parsePaper(name)
  if (!read.ok) throw new Error(name)
  return read.value
}

const letter = layOutTiles(scene, paper('letter'))
const a4 = layOutTiles(scene, paper('a4'))

/** Marks of the pattern on a page, moved back to the absolute frame; text by its place. */
function absolute(tiles: TileSet, page: TileSet['pages'][number], marks: readonly Mark[]) {
  const dx = (page.window?.left ?? 0) - tiles.frame.left
  const dy = (page.window?.bottom ?? 0) - tiles.frame.bottom
  return marks.map((mark) => ({
    key: `${mark.kind} ${mark.id}`,
    points: (mark.type === 'text' ? [mark.at] : samplesOf(mark)).map((p) => ({ x: p.x + dx, y: p.y + dy })),
  }))
}

describe.each([
  ['letter', letter],
  ['a4', a4],
])('tiles on %s', (_, tiles) => {
  const pages = tiles.pages.filter((page) => page.window)

  test('begin with a map, then the pages row by row, numbered', () => {
    expect(tiles.pages[0]?.name).toBe('map')
    expect(tiles.pages.map((p) => p.number)).toEqual(tiles.pages.map((_, k) => k + 1))
    const names = pages.map((p) => p.name)
    expect(names.toSorted()).toEqual(names)
    expect(new Set(names).size).toBe(names.length)
  })

  test('put together, show every line of every piece, each where the others have it', () => {
    const places = new Map<string, { x: number; y: number }[]>()
    for (const page of pages) {
      for (const mark of absolute(tiles, page, page.pattern)) {
        const key = `${mark.key} ${mark.points.map((p) => `${p.x.toFixed(3)} ${p.y.toFixed(3)}`).join(' ')}`
        places.set(key, mark.points)
      }
    }
    // Were a page off the grid by a hair, a mark shown twice would have two places.
    expect(places.size).toBe(scene.pieces.reduce((sum, p) => sum + p.drawing.marks.length, 0))
    for (const points of places.values()) {
      for (const p of points) {
        const shown = pages.filter(
          ({ window: w }) => w && p.x >= w.left && p.x <= w.right && p.y >= w.bottom && p.y <= w.top,
        )
        expect(shown.length).toBeGreaterThan(0)
      }
    }
  })

  test('overlap their neighbours by 10 mm and share marks with them', () => {
    let shared = 0
    for (const page of pages) {
      for (const next of pages) {
        const [a, b] = [page.window, next.window]
        if (!a || !b || a.bottom !== b.bottom || !(b.left > a.left) || b.left > a.right) continue
        expect(a.right - b.left).toBeCloseTo(10, 9)
        const crosses = (of: typeof page) =>
          new Map(
            absolute(
              tiles,
              of,
              of.furniture.filter((m) => m.id.startsWith('cross')),
            ).map((m) => [m.key, m.points]),
          )
        const mine = crosses(page)
        for (const [key, points] of crosses(next)) {
          const same = mine.get(key)
          if (!same) continue
          shared++
          points.forEach((p, k) => {
            expect(Math.hypot(p.x - (same[k]?.x ?? 0), p.y - (same[k]?.y ?? 0))).toBeLessThan(1e-9)
            expect(p.x).toBeGreaterThan(b.left)
            expect(p.x).toBeLessThan(a.right)
          })
        }
        expect(page.furniture.some((m) => m.type === 'text' && m.text === `${next.name} →`)).toBe(true)
        expect(next.furniture.some((m) => m.type === 'text' && m.text === `← ${page.name}`)).toBe(true)
      }
    }
    expect(shared).toBeGreaterThan(4)
  })

  test('carry both squares and a rule on every page, inside the margins', () => {
    for (const page of tiles.pages) {
      const size = (id: string) => {
        const points = page.furniture
          .filter((m) => m.kind === 'measured square' && m.id === id)
          .flatMap((m) => samplesOf(m))
        const span = (pick: (p: { x: number; y: number }) => number) =>
          Math.max(...points.map(pick)) - Math.min(...points.map(pick))
        return [span((p) => p.x), span((p) => p.y)]
      }
      for (const side of size('100 mm square')) expect(side).toBeCloseTo(100, 9)
      for (const side of size('4 in square')) expect(side).toBeCloseTo(101.6, 9)
      expect(size('rule')[0]).toBeGreaterThanOrEqual(150)
      for (const p of page.furniture.flatMap((m) => samplesOf(m))) {
        expect(Math.min(p.x, p.y, tiles.width - p.x, tiles.height - p.y)).toBeGreaterThan(10.1)
      }
    }
  })

  test('have ink on every page and pieces that keep apart', () => {
    for (const page of pages) {
      const { frame } = tiles
      const seen = page.pattern
        .flatMap((m) => samplesOf(m, 200))
        .filter((p) => p.x > frame.left && p.x < frame.right && p.y > frame.bottom && p.y < frame.top)
      expect(seen.length).toBeGreaterThan(0)
    }
    const edges = new Map<string, { x: number; y: number }[]>()
    for (const page of pages) {
      for (const [k, mark] of absolute(tiles, page, page.pattern).entries()) {
        if (page.pattern[k]?.kind === 'cutting line') edges.set(JSON.stringify(mark.points[0]), mark.points)
      }
    }
    const lines = Array.from(edges.values())
    lines.forEach((a, k) => {
      for (const b of lines.slice(k + 1)) {
        const nearest = Math.min(...a.map((p) => Math.min(...b.map((q) => Math.hypot(p.x - q.x, p.y - q.y)))))
        if (a.length !== b.length || nearest > 1e-6) expect(nearest).toBeGreaterThan(5)
      }
    })
  })
})

describe('paper', () => {
  test('large enough takes one page without a map', () => {
    for (const name of ['a0', 'roll-36in', 'roll-60in', '1300x1000mm']) {
      const tiles = layOutTiles(scene, paper(name))
      expect(
        tiles.pages.map((p) => p.name),
        name,
      ).toEqual(['sheet'])
    }
  })

  test('is turned whichever way needs fewer sheets', () => {
    const flat = layOutTiles(onSleeve, paper('420x700mm'))
    const turned = layOutTiles(onSleeve, paper('700x420mm'))
    expect(flat.pages.length).toBe(turned.pages.length)
    expect([flat.width, flat.height]).toEqual([turned.width, turned.height])
  })

  test('never makes a page longer than readers take', () => {
    for (const name of ['roll-200mm', '6000x6000mm']) {
      const tiles = layOutTiles(scene, paper(name))
      expect(Math.max(tiles.width, tiles.height) * (72 / 25.4)).toBeLessThanOrEqual(14400 + 1e-9)
    }
  })

  test('margins below 10 mm are a mistake', () => {
    expect(() => layOutTiles(scene, paper('a4'), { margin: 5 })).toThrow(RangeError)
    expect(() => layOutTiles(scene, paper('a4'), { overlap: -1 })).toThrow(RangeError)
  })

  test('the sleeve alone needs fewer pages', () => {
    expect(layOutTiles(onSleeve, paper('letter')).pages.length).toBeLessThan(letter.pages.length)
  })
})

test('rows are named on past Z', () => {
  expect([tileName(0, 0), tileName(2, 1), tileName(0, 25), tileName(0, 26), tileName(4, 27)]).toEqual([
    'A1',
    'B3',
    'Z1',
    'AA1',
    'AB5',
  ])
})
