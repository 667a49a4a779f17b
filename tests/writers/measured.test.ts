import { execFileSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect } from 'vitest'
import { layOut } from '../../src/sheets/lay-out.ts'
import { layOutTiles, type TileOptions } from '../../src/sheets/lay-out-tiles.ts'
import { parsePaper } from '../../src/sheets/papers.ts'
import { writePdf } from '../../src/writers/pdf.ts'
import { isThere, type Picture, renderPages, withTool } from '../outside-tools.ts'
import { readPdf } from '../pdf-reader.ts'
import { drafted, INFO } from '../sheets/fixture.ts'

const font = new Uint8Array(
  readFileSync(new URL('../../node_modules/dejavu-fonts-ttf/ttf/DejaVuSans.ttf', import.meta.url)),
)
const folder = mkdtempSync(join(tmpdir(), 'scye-measured-'))
afterAll(() => rmSync(folder, { recursive: true }))

const scene = layOut(drafted(), INFO)
const DPI = 127
const PIXELS = DPI / 25.4

async function fileOn(name: string, options: TileOptions = {}): Promise<{ file: string; bytes: Uint8Array }> {
  const paper = parsePaper(name)
  if (!paper.ok) throw new Error(name)
  const bytes = await writePdf(layOutTiles(scene, paper.value, options), {
    font,
    title: name,
    date: '2026-10-09',
    id: name,
  })
  const file = join(folder, 'tiles.pdf')
  writeFileSync(file, bytes)
  return { file, bytes }
}

/** The middle of the ink of a line that crosses this box, along its short way, mm from the lower left of the page. */
function middleOfLine(picture: Picture, box: { x: number; y: number; w: number; h: number }, axis: 'x' | 'y'): number {
  const x0 = Math.round(box.x * PIXELS)
  const x1 = Math.round((box.x + box.w) * PIXELS)
  const y0 = picture.height - Math.round((box.y + box.h) * PIXELS)
  const y1 = picture.height - Math.round(box.y * PIXELS)
  let weight = 0
  let moment = 0
  for (let y = y0; y < y1; y++) {
    for (let x = x0; x < x1; x++) {
      const dark = picture.darkness(x, y)
      weight += dark
      moment += dark * (axis === 'x' ? x + 0.5 : picture.height - y - 0.5)
    }
  }
  if (weight < 2) throw new Error(`no line at ${box.x}, ${box.y}`)
  return moment / weight / PIXELS
}

/** The sides of the solid square as rendered, at both ends of each: across below and above, up at the left and right. */
function measureSquare(picture: Picture, x: number, y: number, width: number, height: number): number[] {
  const reach = 0.7
  const upright = (at: number, from: number) =>
    middleOfLine(picture, { x: at - reach, y: from, w: 2 * reach, h: 4 }, 'x')
  const level = (at: number, from: number) => middleOfLine(picture, { x: from, y: at - reach, w: 4, h: 2 * reach }, 'y')
  const below = y + 2.5
  const above = y + height - 6.5
  const leftward = x + 2.5
  const rightward = x + width - 6.5
  return [
    upright(x + width, below) - upright(x, below),
    upright(x + width, above) - upright(x, above),
    level(y + height, leftward) - level(y, leftward),
    level(y + height, rightward) - level(y, rightward),
  ]
}

/** Measures the square of every page as rendered; where it is comes from the file, how large it is from the picture. */
function squaresIn(file: string, bytes: Uint8Array, scale: { x: number; y: number }): number[][] {
  const pictures = renderPages(file, { dpi: DPI })
  return readPdf(bytes).map((page, k) => {
    const boxes = page.paths
      .filter((path) => path.layers.at(-1) === 'Measured squares')
      .map(({ parts }) => {
        const xs = parts.flat().map((p) => p[0])
        const ys = parts.flat().map((p) => p[1])
        return {
          x: Math.min(...xs),
          y: Math.min(...ys),
          w: Math.max(...xs) - Math.min(...xs),
          h: Math.max(...ys) - Math.min(...ys),
        }
      })
    const square = boxes.find(({ w, h }) => Math.abs(w - 100 * scale.x) < 0.1 && Math.abs(h - 100 * scale.y) < 0.1)
    if (!square) throw new Error(`no square on page ${k + 1}`)
    const picture = pictures[k]
    if (!picture) throw new Error('no page')
    return measureSquare(picture, square.x, square.y, square.w, square.h)
  })
}

const PAPERS = ['a4', 'a3', 'a2', 'a1', 'a0', 'letter', 'legal', 'tabloid', 'arch-e', 'roll-36in', 'roll-60cm']

describe('the 100 mm square, measured on every page as poppler draws it', () => {
  for (const name of PAPERS) {
    withTool('pdftoppm', `of ${name}`, async () => {
      const { file, bytes } = await fileOn(name)
      if (isThere('qpdf')) expect(execFileSync('qpdf', ['--check', file]).toString()).toContain('No syntax or stream')
      const squares = squaresIn(file, bytes, { x: 1, y: 1 })
      for (const [page, sides] of squares.entries()) {
        for (const side of sides) expect(Math.abs(side - 100), `page ${page + 1}: ${sides}`).toBeLessThan(0.1)
      }
    })
  }

  withTool('pdftoppm', 'of letter for a printer that made it 97.2 × 98 mm', async () => {
    const { file, bytes } = await fileOn('letter', { squareMeasured: { x: 97.2, y: 98 } })
    const squares = squaresIn(file, bytes, { x: 100 / 97.2, y: 100 / 98 })
    for (const [across1 = 0, across2 = 0, up1 = 0, up2 = 0] of squares) {
      // Poppler moves lines to whole pixels: half of one at either side.
      for (const across of [across1, across2]) expect(Math.abs(across * 0.972 - 100)).toBeLessThan(1 / PIXELS)
      for (const up of [up1, up2]) expect(Math.abs(up * 0.98 - 100)).toBeLessThan(1 / PIXELS)
    }
  })
})
