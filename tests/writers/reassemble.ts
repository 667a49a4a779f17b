import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect } from 'vitest'
import { chooseGrid } from '../../src/sheets/choose-grid.ts'
import { labelGrid } from '../../src/sheets/label-grid.ts'
import { layOutTiles, type TileSet } from '../../src/sheets/lay-out-tiles.ts'
import { type Paper, parsePaper } from '../../src/sheets/papers.ts'
import { TRUE_SQUARE } from '../../src/sheets/printer-error.ts'
import { moveMark, type Scene } from '../../src/sheets/scene.ts'
import { gridMarks, steps } from '../../src/sheets/tile-grid.ts'
import { writePdf } from '../../src/writers/pdf.ts'
import { renderPages } from '../outside-tools.ts'
import { bitmapOf, findBorder, stitch, unmatched, withoutLayers, wordsOn } from './stitch.ts'

const font = new Uint8Array(
  readFileSync(new URL('../../node_modules/dejavu-fonts-ttf/ttf/DejaVuSans.ttf', import.meta.url)),
)

/** Two pixels are a millimetre, so that pages laid side by side lie on one raster. */
export const DPI = 50.8

export const PDF = { font, title: 'x', date: '2026-10-09', id: 'x' }

export function paper(name: string): Paper {
  const read = parsePaper(name)
  if (!read.ok) throw new Error(name)
  return read.value
}

/** All of the pattern on one page, never cut: what the tiles must show when they are put together. */
export function onePage(scene: Scene, on: Paper): TileSet {
  const options = { margin: 10, overlap: 10, square: TRUE_SQUARE }
  const grid = labelGrid(
    chooseGrid(
      scene.pieces.map((p) => p.drawing),
      on,
      options,
    ),
  )
  const { stepX, stepY } = steps(grid.page, grid.overlap)
  const frame = { left: 0, bottom: 0, right: grid.columns * stepX + 10, top: grid.rows * stepY + 10 }
  const pattern = gridMarks(grid).map(({ mark }) => moveMark(mark, { x: 0, y: 0 }))
  const page = { name: 'whole', number: 1, pieces: [], map: false, window: frame, pattern, furniture: [] }
  return {
    info: scene.info,
    paper: 'whole',
    width: frame.right,
    height: frame.top,
    printScale: { x: 1, y: 1 },
    frame,
    overlap: 10,
    titles: new Map(),
    pages: [page],
  }
}

/** Pixels that the stitched tiles and the page in one piece do not share. */
export async function differences(
  scene: Scene,
  on: Paper,
  folder: string,
): Promise<{ pages: number; ink: number; lost: number; added: number }> {
  const tiles = await writePdf(layOutTiles(scene, on), PDF)
  const file = join(folder, 'tiles.pdf')
  writeFileSync(file, tiles)
  const written = wordsOn(file)
  const cuts = renderPages(file, { dpi: DPI, smooth: false }).map((picture, k) => ({
    picture,
    name: written.names[k] ?? '',
  }))
  writeFileSync(file, withoutLayers(tiles, ['Measured squares', 'Page frames']))
  const bare = renderPages(file, { dpi: DPI, smooth: false })
  const pages = cuts.flatMap(({ picture, name }, k) => {
    const seen = bare[k]
    return name === 'map' || !seen ? [] : [{ cut: findBorder(picture, name), picture: seen }]
  })
  for (const { cut } of pages) {
    expect(Math.abs(cut.right - cut.left - (written.border[0] * DPI) / 25.4)).toBeLessThanOrEqual(1)
    expect(Math.abs(cut.bottom - cut.top - (written.border[1] * DPI) / 25.4)).toBeLessThanOrEqual(1)
  }
  const stitched = stitch(pages, written, DPI)
  writeFileSync(file, await writePdf(onePage(scene, on), PDF))
  const [one] = renderPages(file, { dpi: DPI, smooth: false })
  if (!one) throw new Error('no page')
  const whole = bitmapOf(one)
  return {
    pages: pages.length,
    ink: whole.ink.reduce((sum, pixel) => sum + pixel, 0),
    lost: unmatched(whole, stitched).length,
    added: unmatched(stitched, whole).length,
  }
}
