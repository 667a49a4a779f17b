import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, test } from 'vitest'
import type { Body } from '../../src/body/body.ts'
import { completeBody } from '../../src/body/complete-body.ts'
import { draftPattern } from '../../src/drafting/draft-pattern.ts'
import { chooseGrid } from '../../src/sheets/choose-grid.ts'
import { labelGrid } from '../../src/sheets/label-grid.ts'
import { layOut } from '../../src/sheets/lay-out.ts'
import { layOutTiles, type TileSet } from '../../src/sheets/lay-out-tiles.ts'
import { type Paper, parsePaper } from '../../src/sheets/papers.ts'
import { TRUE_SQUARE } from '../../src/sheets/printer-error.ts'
import { moveMark, type Scene } from '../../src/sheets/scene.ts'
import { gridMarks, steps } from '../../src/sheets/tile-grid.ts'
import { writePdf } from '../../src/writers/pdf.ts'
import { renderPages, withTool } from '../outside-tools.ts'
import { drafted, INFO } from '../sheets/fixture.ts'
import { SURVEY_IS_HERE, surveyBodies } from '../survey/bodies.ts'
import { bitmapOf, findBorder, stitch, unmatched, withoutLayers, wordsOn } from './stitch.ts'

const font = new Uint8Array(
  readFileSync(new URL('../../node_modules/dejavu-fonts-ttf/ttf/DejaVuSans.ttf', import.meta.url)),
)
const folder = mkdtempSync(join(tmpdir(), 'scye-stitch-'))
afterAll(() => rmSync(folder, { recursive: true }))

/** Two pixels are a millimetre, so that pages laid side by side lie on one raster. */
const DPI = 50.8

const PDF = { font, title: 'x', date: '2026-10-09', id: 'x' }

function paper(name: string): Paper {
  const read = parsePaper(name)
  if (!read.ok) throw new Error(name)
  return read.value
}

/** All of the pattern on one page, never cut: what the tiles must show when they are put together. */
function onePage(scene: Scene, on: Paper): TileSet {
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
async function differences(
  scene: Scene,
  on: Paper,
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

function sceneOf(body: Body): Scene {
  return layOut(drafted(body), { ...INFO, units: 'mm' })
}

describe('tiles cut at their borders and laid over each other are the page in one piece, within a pixel', () => {
  for (const name of ['letter', 'a4', 'a3']) {
    withTool('pdftoppm', `on ${name}`, async () => {
      const { ink, lost, added, pages } = await differences(layOut(drafted(), INFO), paper(name))
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

describe.skipIf(!SURVEY_IS_HERE)(
  '20 bodies of the survey, smallest to largest (skipped where ../shared/data is not)',
  () => {
    const bodies = SURVEY_IS_HERE ? acrossTheSurvey(20) : []
    test.each(bodies.map(({ id, body }, k) => [id, ['letter', 'a4', 'a3'][k % 3] as string, body] as const))(
      '%s on %s',
      async (_id, name, body) => {
        const { ink, lost, added } = await differences(sceneOf(body), paper(name))
        expect(ink).toBeGreaterThan(20_000)
        expect({ lost, added }).toEqual({ lost: 0, added: 0 })
      },
    )
  },
)

/** Bodies at even steps of bust girth, the smallest and the largest that can be drafted among them. */
function acrossTheSurvey(count: number): { id: string; body: Body }[] {
  const sorted = surveyBodies().sort((a, b) => (a.given['bust girth'] as number) - (b.given['bust girth'] as number))
  const last = sorted.length - 1
  return Array.from({ length: count }, (_, k) => {
    // The next one up that can be drafted, for the largest the next one down.
    const way = k === count - 1 ? -1 : 1
    for (let n = Math.round((k * last) / (count - 1)); n >= 0 && n <= last; n += way) {
      const { id, given } = sorted[n] as (typeof sorted)[number]
      const body = completeBody(given)
      if (body.ok && draftPattern(body.value.body).ok) return { id, body: body.value.body }
    }
    throw new Error('nobody of the survey can be drafted')
  })
}
