import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect } from 'vitest'
import { layOut } from '../../src/sheets/lay-out.ts'
import { layOutTiles } from '../../src/sheets/lay-out-tiles.ts'
import { moveMark } from '../../src/sheets/scene.ts'
import { writePdf } from '../../src/writers/pdf.ts'
import { renderPages, withTool } from '../outside-tools.ts'
import { drafted, INFO } from '../sheets/fixture.ts'
import { DPI, differences, onePage, PDF, paper } from './reassemble.ts'
import { bitmapOf, findBorder, stitch, unmatched, withoutLayers, wordsOn } from './stitch.ts'

const folder = mkdtempSync(join(tmpdir(), 'scye-stitch-'))
afterAll(() => rmSync(folder, { recursive: true }))

describe('tiles cut at their borders and laid over each other are the page in one piece, within a pixel', () => {
  for (const name of ['letter', 'a4', 'a3']) {
    withTool('pdftoppm', `on ${name}`, async () => {
      const { ink, lost, added, pages } = await differences(layOut(drafted(), INFO), paper(name), folder)
      expect(pages).toBeGreaterThan(5)
      expect(ink).toBeGreaterThan(20_000)
      expect({ lost, added }).toEqual({ lost: 0, added: 0 })
    })
  }

  withTool('pdftoppm', 'and would not be, were a page off by two pixels', async () => {
    const scene = layOut(drafted(), INFO)
    const on = paper('a3')
    const tiles = layOutTiles(scene, on)
    const moved = tiles.pages.map((page, k) =>
      k === 2 ? { ...page, pattern: page.pattern.map((mark) => moveMark(mark, { x: 1.1, y: 0 })) } : page,
    )
    const file = join(folder, 'moved.pdf')
    const bytes = await writePdf({ ...tiles, pages: moved }, PDF)
    writeFileSync(file, bytes)
    const written = wordsOn(file)
    const borders = renderPages(file, { dpi: DPI, smooth: false })
    writeFileSync(file, withoutLayers(bytes, ['Measured squares', 'Page frames']))
    const pages = renderPages(file, { dpi: DPI, smooth: false }).flatMap((picture, k) => {
      const name = written.names[k] ?? ''
      const border = borders[k]
      return name === 'map' || !border ? [] : [{ cut: findBorder(border, name), picture }]
    })
    writeFileSync(file, await writePdf(onePage(scene, on), PDF))
    const [one] = renderPages(file, { dpi: DPI, smooth: false })
    if (!one) throw new Error('no page')
    expect(unmatched(bitmapOf(one), stitch(pages, written, DPI)).length).toBeGreaterThan(200)
  })
})
