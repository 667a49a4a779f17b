import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { bounds } from '../../src/geometry/bounds.ts'
import { cutLine } from '../../src/pattern/cut-line.ts'
import { layOut } from '../../src/sheets/lay-out.ts'
import { layOutTiles, type TileOptions, type TileSet } from '../../src/sheets/lay-out-tiles.ts'
import { parsePaper } from '../../src/sheets/papers.ts'
import { writePdf } from '../../src/writers/pdf.ts'
import { type ReadPage, type ReadPath, readPdf } from '../pdf-reader.ts'
import { drafted, INFO } from '../sheets/fixture.ts'

const font = new Uint8Array(
  readFileSync(new URL('../../node_modules/dejavu-fonts-ttf/ttf/DejaVuSans.ttf', import.meta.url)),
)
const pattern = drafted()
const scene = layOut(pattern, { ...INFO, performer: 'Élan, Ferry Pilot', fittings: ['let out ⅜″, wrist ⅝″'] })

const PAPERS = [
  'a4',
  'a3',
  'a2',
  'a1',
  'a0',
  'letter',
  'legal',
  'tabloid',
  'arch-e',
  'roll-36in',
  'roll-60cm',
  '30x40in',
]

async function tilesOn(name: string, options: TileOptions = {}): Promise<{ tiles: TileSet; pages: ReadPage[] }> {
  const paper = parsePaper(name)
  if (!paper.ok) throw new Error(name)
  const tiles = layOutTiles(scene, paper.value, options)
  const bytes = await writePdf(tiles, { font, title: 'Élan', date: '2026-10-09', id: name })
  return { tiles, pages: readPdf(bytes) }
}

/** Width and height of what a path draws, mm. */
function sizeOf({ parts }: ReadPath): [number, number] {
  const points = parts.flat()
  const span = (axis: 0 | 1) => Math.max(...points.map((p) => p[axis])) - Math.min(...points.map((p) => p[axis]))
  return [span(0), span(1)]
}

function inLayer(page: ReadPage, layer: string): ReadPath[] {
  return page.paths.filter((path) => path.layers.at(-1) === layer)
}

/** Paths of the layer that are this large both ways, to a hundredth of a millimetre. */
function ofSize(page: ReadPage, layer: string, width: number, height: number): ReadPath[] {
  return inLayer(page, layer).filter((path) => {
    const [w, h] = sizeOf(path)
    return Math.abs(w - width) < 0.01 && Math.abs(h - height) < 0.01
  })
}

describe.each(PAPERS)('tiles on %s, read back from the file', (name) => {
  test('have both squares, a border of the size said, a rule and no ink near the edge on every page', async () => {
    const { tiles, pages } = await tilesOn(name)
    expect(pages).toHaveLength(tiles.pages.length)
    for (const page of pages) {
      expect([page.width, page.height]).toEqual([pages[0]?.width, pages[0]?.height])
      expect(Math.max(page.width, page.height)).toBeLessThanOrEqual((14400 / 72) * 25.4 + 1e-6)
      expect(ofSize(page, 'Measured squares', 100, 100)).toHaveLength(1)
      expect(ofSize(page, 'Measured squares', 101.6, 101.6)).toHaveLength(1)
      const said = page.texts.map(({ text }) => /border (\d+) × (\d+) mm/.exec(text)).find((match) => match)
      expect(ofSize(page, 'Page frames', Number(said?.[1]), Number(said?.[2]))).toHaveLength(1)
      const rule = inLayer(page, 'Measured squares').filter((path) => sizeOf(path)[0] > 149 && sizeOf(path)[1] < 0.01)
      expect(rule).toHaveLength(1)
      const centimeters = sizeOf(rule[0] as ReadPath)[0] / 10
      expect(centimeters).toBeCloseTo(Math.round(centimeters), 5)
      const clip = page.paths.find((path) => path.operator === 'W')
      for (const [x, y] of [
        ...(clip?.parts.flat() ?? []),
        ...inLayer(page, 'Page frames').flatMap((p) => p.parts.flat()),
      ]) {
        expect(Math.min(x, y, page.width - x, page.height - y)).toBeGreaterThan(10)
      }
    }
  })

  test('hold every cutting line at its own size', async () => {
    const { pages } = await tilesOn(name)
    const drawn = pages.flatMap((page) => inLayer(page, 'Cutting lines').map(sizeOf))
    for (const piece of pattern.pieces) {
      const box = bounds(cutLine(piece))
      // Control points reach further than their curves: compared with those of the line itself.
      const points = cutLine(piece).flatMap(({ p0, p1, p2, p3 }) => [p0, p1, p2, p3])
      const height = Math.max(...points.map((p) => p.y)) - Math.min(...points.map((p) => p.y))
      expect(height).toBeGreaterThanOrEqual(box.top - box.bottom - 1e-9)
      expect(
        drawn.some((size) => Math.abs(size[1] - height) < 0.001),
        piece.id,
      ).toBe(true)
    }
  })
})

describe('tiles on letter, read back from the file', async () => {
  const { tiles, pages } = await tilesOn('letter')
  const words = pages.flatMap((page) => page.texts.map(({ text }) => text))

  test('give back their words, with fractions and accents', () => {
    for (const word of ['Élan', '⅜″', '⅝″', '½″', 'SLEEVE', 'this side up', 'cap line, two thirds up', '⁄']) {
      expect(
        words.some((text) => text.includes(word)),
        word,
      ).toBe(true)
    }
  })

  test('name themselves, their neighbours and their place in the order', () => {
    pages.forEach((page, k) => {
      const said = page.texts.map(({ text }) => text)
      const name = tiles.pages[k]?.name ?? ''
      expect(said).toContain(name)
      expect(said.some((text) => text.includes(`page ${k + 1} of ${pages.length}`))).toBe(true)
      const [, row = '', column = ''] = /^([A-Z])(\d+)$/.exec(name) ?? []
      for (const other of tiles.pages) {
        if (other.name === `${row}${Number(column) + 1}`) expect(said).toContain(`${other.name} →`)
        if (other.name === `${String.fromCharCode(row.charCodeAt(0) + 1)}${column}`)
          expect(said).toContain(`↓ ${other.name}`)
      }
    })
    const onMap = pages[0]?.texts.map(({ text }) => text) ?? []
    for (const { name, number, window } of tiles.pages) if (window) expect(onMap).toContain(`${name} · ${number}`)
  })

  test('have each kind of line in a layer inside its version, the page’s own marks in others', () => {
    const layers = new Set(pages.flatMap((page) => page.paths.map((path) => path.layers.join(' / '))))
    for (const kind of ['Cutting lines', 'Stitching lines', 'Darts', 'Notches', 'Grain lines', 'Balance lines']) {
      expect(layers).toContain(`first fitting / ${kind}`)
    }
    for (const kind of ['Measured squares', 'Page frames']) expect(layers).toContain(kind)
  })

  test('put the lines of another version into layers of its own', async () => {
    const [first] = scene.pieces
    if (!first) throw new Error('no piece')
    const before = first.drawing.marks
      .filter((mark) => mark.type === 'stroke')
      .map((mark) => ({ ...mark, version: 'draft' }))
    const { labelled: _, ...drawing } = first.drawing
    const both = { ...scene, pieces: [{ ...first, drawing: { ...drawing, marks: [...before, ...drawing.marks] } }] }
    const paper = parsePaper('a3')
    if (!paper.ok) throw new Error('a3')
    const file = await writePdf(layOutTiles(both, paper.value), { font, title: 'x', date: '2026-10-09', id: 'x' })
    const layers = new Set(readPdf(file).flatMap((page) => page.paths.map((path) => path.layers.join(' / '))))
    expect(layers).toContain('draft / Draft: cutting lines')
    expect(layers).toContain('first fitting / Cutting lines')
  })

  test('keep their text inside one page where they can', async () => {
    const across: string[] = []
    for (const page of pages) {
      const clip = page.paths.find((path) => path.operator === 'W')?.parts.flat() ?? []
      const right = Math.max(...clip.map(([x]) => x))
      const top = Math.max(...clip.map(([, y]) => y))
      for (const { text, at, layers } of page.texts) {
        const outside =
          at[0] > right ||
          at[1] > top ||
          at[0] < Math.min(...clip.map(([x]) => x)) ||
          at[1] < Math.min(...clip.map(([, y]) => y))
        if (layers.at(-1) === 'Labels' && outside) across.push(text)
      }
    }
    // A label that begins outside a page and still shows on it lies across an edge.
    for (const title of ['SLEEVE', 'BODICE FRONT', 'BODICE BACK']) expect(across).not.toContain(title)
    expect(across.length).toBeLessThan(4)
  })
})

test('another overlap is kept and said', async () => {
  const { tiles, pages } = await tilesOn('letter', { overlap: 15 })
  expect(pages[1]?.texts.some(({ text }) => text.includes('overlap 15 mm'))).toBe(true)
  const windows = tiles.pages.flatMap(({ window }) => (window ? [window] : []))
  const beside = windows.flatMap((a) =>
    windows.flatMap((b) => (b.left > a.left && b.left < a.right && a.top === b.top ? [a.right - b.left] : [])),
  )
  expect(beside.length).toBeGreaterThan(2)
  for (const overlap of beside) expect(overlap).toBeCloseTo(15, 9)
})
