import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { layOut } from '../../src/sheets/lay-out.ts'
import { layOutTiles } from '../../src/sheets/lay-out-tiles.ts'
import { type Paper, parsePaper } from '../../src/sheets/papers.ts'
import { parseSquareMeasured, type SquareMeasured } from '../../src/sheets/printer-error.ts'
import { writePdf } from '../../src/writers/pdf.ts'
import { readPdf } from '../pdf-reader.ts'
import { drafted, INFO } from './fixture.ts'

const font = new Uint8Array(
  readFileSync(new URL('../../node_modules/dejavu-fonts-ttf/ttf/DejaVuSans.ttf', import.meta.url)),
)
const scene = layOut(drafted(), { ...INFO, pieces: ['sleeve'] })

function paper(name: string): Paper {
  const read = parsePaper(name)
  if (!read.ok) throw new Error(name)
  return read.value
}

describe('the measured square', () => {
  test.each([
    ['97.2x98.0', 97.2, 98],
    ['97.2 x 98', 97.2, 98],
    ['97,2×98,0', 97.2, 98],
    ['97.2mm x 98mm', 97.2, 98],
    ['9.72x9.8cm', 97.2, 98],
    ['9.72 cm x 98 mm', 97.2, 98],
    ['3 7/8 x 3 7/8 in', 98.425, 98.425],
    ['3⅞″X3⅞″', 98.425, 98.425],
    ['100x100', 100, 100],
    ['90x94', 90, 94],
  ])('%s is read', (text, x, y) => {
    const read = parseSquareMeasured(text)
    expect(read.ok && read.value.x).toBeCloseTo(x, 9)
    expect(read.ok && read.value.y).toBeCloseTo(y, 9)
  })

  test.each([
    ['97.2', 'square-unreadable'],
    ['97.2x', 'square-unreadable'],
    ['wide x high', 'square-unreadable'],
    ['97x98x99', 'square-unreadable'],
    ['', 'square-unreadable'],
    ['89.9x95', 'square-absurd'],
    ['97x111', 'square-absurd'],
    ['-97x-98', 'square-absurd'],
    ['3.8x3.8', 'square-absurd'],
    ['97x98in', 'square-absurd'],
    ['92x97', 'square-uneven'],
  ])('%s is refused: %s', (text, code) => {
    const read = parseSquareMeasured(text)
    expect(read.ok).toBe(false)
    if (read.ok) return
    expect(read.problems.map((problem) => problem.code)).toEqual([code])
    expect(read.problems[0]?.hint?.length).toBeGreaterThan(10)
  })
})

describe.each([
  ['smaller', { x: 97.2, y: 98 }],
  ['larger', { x: 103, y: 102.5 }],
  ['alike both ways', { x: 96, y: 96 }],
])('a printer that prints %s', (_, square: SquareMeasured) => {
  test.each(['letter', 'a4', 'a0', 'roll-36in'])('prints %s true', async (name) => {
    const tiles = layOutTiles(scene, paper(name), { squareMeasured: square })
    const pages = readPdf(await writePdf(tiles, { font, title: 'x', date: '2026-10-09', id: 'x' }))
    expect(pages).toHaveLength(tiles.pages.length)
    const plain = layOutTiles(scene, paper(name))
    if (name !== 'roll-36in') {
      // The paper is the paper, the same way up.
      expect(pages[0]?.width).toBeCloseTo(plain.width, 3)
      expect(pages[0]?.height).toBeCloseTo(plain.height, 3)
    }
    for (const page of pages) {
      // As the printer makes it: everything smaller or larger by its error, from whichever corner.
      const printed = page.paths.map((path) => ({
        ...path,
        parts: path.parts.map((part) => part.map(([x, y]) => [(x * square.x) / 100, (y * square.y) / 100] as const)),
      }))
      const sides = printed
        .filter((path) => path.layers.at(-1) === 'Measured squares')
        .map((path) => [0, 1].map((axis) => spread(path.parts.flat().map((p) => p[axis] as number))))
      for (const side of [100, 101.6]) {
        expect(sides.filter(([w = 0, h = 0]) => Math.abs(w - side) < 0.001 && Math.abs(h - side) < 0.001)).toHaveLength(
          1,
        )
      }
      const border = page.texts.map(({ text }) => /border (\d+) × (\d+) mm/.exec(text)).find((match) => match)
      const frames = printed
        .filter((path) => path.layers.at(-1) === 'Page frames')
        .map((path) => [0, 1].map((axis) => spread(path.parts.flat().map((p) => p[axis] as number))))
      expect(
        frames.some(
          ([w = 0, h = 0]) => Math.abs(w - Number(border?.[1])) < 0.001 && Math.abs(h - Number(border?.[2])) < 0.001,
        ),
      ).toBe(true)
      for (const anchor of [0, 0.5, 1]) {
        for (const [x, y] of printed
          .filter((p) => p.operator !== 'W' && p.layers.length === 1)
          .flatMap((p) => p.parts.flat())) {
          const [offX, offY] = [page.width * (1 - square.x / 100) * anchor, page.height * (1 - square.y / 100) * anchor]
          expect(Math.min(x + offX, y + offY, page.width - x - offX, page.height - y - offY)).toBeGreaterThan(10)
        }
      }
      const said = `${square.x} × ${square.y} mm`
      expect(
        page.texts.some(({ text }) => text.includes(said)),
        page.texts.map((t) => t.text).join('|'),
      ).toBe(true)
    }
  })
})

test('a square that no printer makes is a mistake of the caller', () => {
  expect(() => layOutTiles(scene, paper('a4'), { squareMeasured: { x: 80, y: 80 } })).toThrow(RangeError)
  expect(() => layOutTiles(scene, paper('a4'), { squareMeasured: { x: 100, y: Number.NaN } })).toThrow(RangeError)
})

test('a printer without an error changes nothing', () => {
  const square = { x: 100, y: 100 }
  const { pages, ...rest } = layOutTiles(scene, paper('letter'), { squareMeasured: square })
  const { pages: plain, ...plainRest } = layOutTiles(scene, paper('letter'))
  expect(rest.printScale).toEqual({ x: 1, y: 1 })
  expect(rest.frame).toEqual(plainRest.frame)
  expect(pages.map((page) => page.window)).toEqual(plain.map((page) => page.window))
})

function spread(values: readonly number[]): number {
  return Math.max(...values) - Math.min(...values)
}
