import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { expect, test } from 'vitest'
import { layOut } from '../../src/sheets/lay-out.ts'
import { onePage } from '../../src/sheets/one-page.ts'
import { layOutForProjector } from '../../src/sheets/projector-sheet.ts'
import { placedMarks } from '../../src/sheets/scene.ts'
import { writePdf } from '../../src/writers/pdf.ts'
import { writeSvg } from '../../src/writers/svg.ts'
import { SIZES } from '../drafting/bodies.ts'
import { readPdf } from '../pdf-reader.ts'
import { drafted, INFO, samplesOf } from './fixture.ts'
import { faults } from './label-faults.ts'

const pattern = drafted()
const scene = layOutForProjector(pattern, INFO)
const font = readFileSync(createRequire(import.meta.url).resolve('dejavu-fonts-ttf/ttf/DejaVuSans.ttf'))

test.each([
  ['in', 50.8],
  ['cm', 50],
] as const)('one grid over the whole sheet, in %s of %f mm', (units, step) => {
  const sheet = layOutForProjector(pattern, { ...INFO, units })
  const grid = sheet.sheet.filter((m) => m.kind === 'calibration grid').map((m) => samplesOf(m))
  const uprights = grid.filter((points) => points.every((p) => Math.abs(p.x - (points[0]?.x ?? 0)) < 1e-9))
  const levels = grid.filter((points) => points.every((p) => Math.abs(p.y - (points[0]?.y ?? 0)) < 1e-9))
  expect(uprights.length + levels.length).toBe(grid.length)
  for (const [k, points] of uprights.entries()) expect(points[0]?.x).toBeCloseTo(k * step, 9)
  for (const [k, points] of levels.entries()) expect(points[0]?.y).toBeCloseTo(k * step, 9)
  expect(sheet.width).toBeCloseTo((uprights.length - 1) * step, 9)
  expect(sheet.height).toBeCloseTo((levels.length - 1) * step, 9)
  expect(sheet.sheet.filter((m) => m.kind === 'measured square')).toEqual([])
})

test('the same pieces at the same size, with bold lines and large letters inside them', () => {
  const plain = layOut(pattern, INFO)
  expect(scene.pieces.map((p) => p.drawing.id)).toEqual(plain.pieces.map((p) => p.drawing.id))
  for (const { drawing } of scene.pieces) {
    const before = plain.pieces.find((p) => p.drawing.id === drawing.id)?.drawing.marks ?? []
    for (const mark of drawing.marks) {
      if (mark.type === 'text') expect(mark.size).toBeGreaterThanOrEqual(5 - 1e-9)
      if (mark.type !== 'stroke') continue
      // A pixel of a projector two metres up is about a millimetre.
      expect(mark.weight).toBeGreaterThanOrEqual(0.8)
      const other = before.find((m) => m.kind === mark.kind && m.id === mark.id)
      expect(other?.type === 'stroke' && other.paths).toEqual(mark.paths)
    }
    expect(faults(drawing, pattern)).toEqual([])
  }
  const points = scene.pieces.flatMap(placedMarks).flatMap((m) => samplesOf(m))
  for (const p of points) {
    expect(Math.min(p.x, p.y, scene.width - p.x, scene.height - p.y)).toBeGreaterThan(10)
  }
})

test.each(SIZES.map((body, k) => [k, drafted(body)] as const))('size %i has room for the large letters', (_k, body) => {
  for (const { drawing } of layOutForProjector(body, INFO).pieces) expect(faults(drawing, body)).toEqual([])
})

test('is one page of its own size in a PDF, its grid in a layer of its own, and the same bytes twice', async () => {
  const options = { font, title: 'Lamplighter', date: '2026-10-09', id: 'projector' }
  const bytes = await writePdf(onePage(scene), options)
  expect(Buffer.compare(bytes, await writePdf(onePage(scene), options))).toBe(0)
  const [page, ...others] = readPdf(bytes)
  expect(others).toEqual([])
  expect(page?.width).toBeCloseTo(scene.width, 3)
  expect(page?.height).toBeCloseTo(scene.height, 3)
  const grid = page?.paths.filter((path) => path.layers.some((layer) => /calibration grid/i.test(layer))) ?? []
  expect(grid).toHaveLength(scene.sheet.filter((m) => m.kind === 'calibration grid').length)
  const xs = grid.flatMap((path) => path.parts.flat().map(([x]) => x)).sort((a, b) => a - b)
  expect((xs.at(-1) ?? 0) - (xs[0] ?? 0)).toBeCloseTo(scene.width, 3)
})

test('has its grid in a group of its own in an SVG', async () => {
  const svg = await writeSvg(scene, { title: 'Projector', description: 'One page' })
  expect(svg.match(/<g id="foot-calibration-grids"/g)).toHaveLength(1)
  expect(svg).toContain(`width="${Number(scene.width.toFixed(4))}mm"`)
})
