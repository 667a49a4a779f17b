import { execFileSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, test } from 'vitest'
import { layOut } from '../../src/sheets/lay-out.ts'
import { layOutTiles, type TileSet } from '../../src/sheets/lay-out-tiles.ts'
import { parsePaper } from '../../src/sheets/papers.ts'
import { writePdf } from '../../src/writers/pdf.ts'
import { renderPages, withTool } from '../outside-tools.ts'
import { drafted, INFO } from '../sheets/fixture.ts'

const font = new Uint8Array(
  readFileSync(new URL('../../node_modules/dejavu-fonts-ttf/ttf/DejaVuSans.ttf', import.meta.url)),
)
const folder = mkdtempSync(join(tmpdir(), 'scye-pdf-'))
afterAll(() => rmSync(folder, { recursive: true }))

const scene = layOut(drafted(), { ...INFO, performer: 'Élan, Ferry Pilot', fittings: ['let out ⅜″, wrist ⅝″'] })
const options = { font, title: 'Élan, Ferry Pilot', date: '2026-10-09', id: 'pattern of 2026-10-09' }

function tilesOn(name: string): TileSet {
  const paper = parsePaper(name)
  if (!paper.ok) throw new Error(name)
  return layOutTiles(scene, paper.value)
}

const tiles = tilesOn('letter')
const bytes = await writePdf(tiles, options)
const file = join(folder, 'tiles.pdf')
writeFileSync(file, bytes)
const raw = Buffer.from(bytes).toString('latin1')

describe('pdf', () => {
  test('has the same bytes twice, pages of one size, no scaling asked for, a language', async () => {
    expect(Buffer.compare(Buffer.from(await writePdf(tiles, options)), Buffer.from(bytes))).toBe(0)
    const sizes = new Set(Array.from(raw.matchAll(/\/MediaBox \[([^\]]*)\]/g), (m) => m[1]))
    expect(sizes.size).toBe(1)
    expect(/\/PrintScaling \/None/.test(raw)).toBe(true)
    expect(/\/Lang \(en\)/.test(raw)).toBe(true)
    expect(raw.match(/\/Type \/Page\b/g)?.length).toBe(tiles.pages.length)
    expect(/Helvetica/.test(raw)).toBe(false)
    const other = await writePdf(tiles, { ...options, id: 'another' })
    expect(/\/ID \[.*\]/.exec(Buffer.from(other).toString('latin1'))?.[0]).not.toBe(/\/ID \[.*\]/.exec(raw)?.[0])
  })

  test('rejects a date that is none', async () => {
    await expect(writePdf(tiles, { ...options, date: 'soon' })).rejects.toThrow(/soon/)
  })

  withTool('qpdf', 'passes qpdf and holds plain strokes and fills, one clip a page, layers and an outline', () => {
    expect(execFileSync('qpdf', ['--check', file]).toString()).toContain('No syntax or stream encoding errors')
    const plain = execFileSync('qpdf', ['--qdf', '--object-streams=disable', file, '-'], { maxBuffer: 1e9 }).toString(
      'latin1',
    )
    const streams = Array.from(plain.matchAll(/stream\n([\s\S]*?)endstream/g), (m) => m[1] ?? '').filter((s) =>
      s.includes(' BDC'),
    )
    expect(streams).toHaveLength(tiles.pages.length)
    for (const stream of streams) {
      expect(stream.match(/^W n$/gm)?.length).toBe(1)
      expect(/W\*|^\/\S+ gs$/m.exec(stream)).toBe(null)
      expect(/\s-?\d+(\.\d+)?e[-+]?\d+\s/i.exec(stream)).toBe(null)
      expect(/^0 w$/m.exec(stream)).toBe(null)
      expect(stream.match(/BDC/g)?.length).toBe(stream.match(/EMC/g)?.length)
    }
    for (const layer of [
      'Cutting lines',
      'Stitching lines',
      'Notches',
      'Darts',
      'Grain lines',
      'Balance lines',
      'Labels',
      'Measured squares',
    ]) {
      expect(plain.includes(`/Name (${layer})`), `/Name (${layer})`).toBe(true)
    }
    for (const entry of ['Page map', 'Sleeve', 'Bodice front', 'Page B1'])
      expect(plain.includes(`/Title (${entry})`), `/Title (${entry})`).toBe(true)
    expect(/\/SMask|\/Group\b/.test(plain)).toBe(false)
  })

  withTool('pdftotext', 'gives its words back, fractions and accents too', async () => {
    const one = join(folder, 'sheet.pdf')
    writeFileSync(one, await writePdf(tilesOn('a0'), options))
    const text = execFileSync('pdftotext', ['-raw', one, '-']).toString('utf8')
    for (const word of [
      'let out ⅜″, wrist ⅝″',
      'Élan, Ferry Pilot',
      'neckline ½″',
      'SLEEVE',
      'this side up',
      'cap line, two thirds up',
    ]) {
      expect(text.includes(word), word).toBe(true)
    }
    expect(text).toMatch(/\d+⁄16″/)
  })

  withTool('pdftoppm', 'has no ink within 10 mm of an edge', () => {
    renderPages(file, { dpi: 72 }).forEach(({ width, height, darkness }, k) => {
      const margin = Math.floor((10 / 25.4) * 72)
      for (let y = 0; y < height; y++) {
        for (let x = 0; x < width; x++) {
          if (x >= margin && x < width - margin && y >= margin && y < height - margin) continue
          if (darkness(x, y) > 0) throw new Error(`ink at ${x}, ${y} of page ${k + 1}`)
        }
      }
    })
  })

  withTool('pdftotext', 'names every page and its neighbours', () => {
    const text = execFileSync('pdftotext', ['-raw', file, '-']).toString('utf8')
    const count = tiles.pages.length
    for (const { name, number } of tiles.pages) {
      expect(text).toMatch(new RegExp(`^${name}$`, 'm'))
      expect(text).toContain(`page ${number} of ${count}`)
    }
    expect(text).toMatch(/↑ B1/)
  })

  test('one large sheet, and a roll, are one page', async () => {
    for (const name of ['a0', 'roll-36in']) {
      const sheet = Buffer.from(await writePdf(tilesOn(name), options)).toString('latin1')
      expect(sheet.match(/\/Type \/Page\b/g)?.length).toBe(1)
    }
  })
})
