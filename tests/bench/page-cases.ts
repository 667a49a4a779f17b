import { readFileSync } from 'node:fs'
import { zlibSync } from 'fflate'
import PDFDocument from 'pdfkit'
import { isLine } from '../../src/geometry/cubic.ts'
import { type Path, startOf } from '../../src/geometry/path.ts'
import { makePattern } from '../../src/pipeline.ts'
import { PENS } from '../../src/sheets/house-style.ts'
import { layOut } from '../../src/sheets/lay-out.ts'
import { layOutTiles, type TileSet } from '../../src/sheets/lay-out-tiles.ts'
import { parsePaper } from '../../src/sheets/papers.ts'
import { KIND_ORDER, type Mark } from '../../src/sheets/scene.ts'
import { textWidth } from '../../src/sheets/text-width.ts'
import { drawPdf } from '../../src/writers/pdf.ts'
import { readPdf } from '../pdf-reader.ts'
import type { BenchCase } from './bench-case.ts'
import { largest } from './shapes.ts'

const POINT = 72 / 25.4

const font = new Uint8Array(
  readFileSync(new URL('../../node_modules/dejavu-fonts-ttf/ttf/DejaVuSans.ttf', import.meta.url)),
)
const SCENE = demoScene()
const TILES = onLetter()
const OPTIONS = { font, title: 'demo', date: '2026-10-09', id: 'demo' }

/** Marks of each page as they lie on each other. */
const PAGES = TILES.pages.map(({ pattern, furniture }) => [pattern, furniture].flatMap(inOrder))

export const pageCases: readonly BenchCase[] = [
  {
    name: 'tiles of the demo as PDF',
    count: 1,
    ours: () => ours().length,
    // The same curves and words on the same pages; no layers, clip, outline or language.
    theirs: { library: 'pdfkit', work: () => bare().length },
    wanted: { ratio: 1.3 },
    agree: () => {
      const [a, b] = [ours(), bare()].map((bytes) =>
        readPdf(bytes).flatMap((page) => page.paths.filter((p) => p.operator !== 'W')),
      )
      const places = [a, b].map((paths) => (paths ?? []).flatMap((path) => path.parts.flat(2)))
      const [mine = [], theirs = []] = places
      if (mine.length !== theirs.length) throw new Error('the two files do not draw the same')
      return {
        apart: largest(mine.map((x, k) => Math.abs(x - (theirs[k] as number)))),
        within: 1e-6,
        what: 'mm of place',
      }
    },
  },
  {
    name: 'the demo laid out on letter',
    count: 1,
    ours: () => onLetter().pages.length,
    agree: () => ({ apart: Math.abs(onLetter().pages.length - TILES.pages.length), within: 0, what: 'pages' }),
  },
]

function ours(): Uint8Array {
  return drawPdf(PDFDocument, TILES, OPTIONS, zlibSync).read() as Uint8Array
}

function bare(): Uint8Array {
  const date = new Date(OPTIONS.date)
  const settings = { autoFirstPage: false, font, info: { CreationDate: date, ModDate: date } }
  const doc = new PDFDocument(settings as unknown as PDFKit.PDFDocumentOptions)
  const { width, height } = TILES
  for (const marks of PAGES) {
    doc.addPage({ size: [width * POINT, height * POINT], margin: 0 })
    for (const mark of marks) drawBare(doc, mark, height)
  }
  doc.end()
  return doc.read() as Uint8Array
}

function drawBare(doc: PDFKit.PDFDocument, mark: Mark, height: number): void {
  if (mark.type === 'text') {
    const [x, y] = [mark.at.x * POINT, (height - mark.at.y) * POINT]
    doc.save()
    doc.rotate((-mark.angle * 180) / Math.PI, { origin: [x, y] })
    doc.fontSize(mark.size * POINT)
    const left = x - (textWidth(mark.text, mark.size) / 2) * POINT
    doc.text(mark.text, left, y, { lineBreak: false, baseline: 'alphabetic' })
    doc.restore()
    return
  }
  if (mark.type === 'fill') {
    traceBare(doc, mark.outline, height, true)
    doc.fill()
    return
  }
  doc.lineWidth((mark.weight ?? PENS[mark.kind].weight) * POINT)
  const dash = mark.dash ?? PENS[mark.kind].dash
  if (dash) doc.dash(dash.map((mm) => mm * POINT) as unknown as number, {})
  else doc.undash()
  for (const path of mark.paths) traceBare(doc, path, height, mark.closed ?? false)
  doc.stroke()
}

function traceBare(doc: PDFKit.PDFDocument, path: Path, height: number, closed: boolean): void {
  const x = (p: { x: number }) => p.x * POINT
  const y = (p: { y: number }) => (height - p.y) * POINT
  const start = startOf(path)
  doc.moveTo(x(start), y(start))
  for (const c of path) {
    if (isLine(c)) doc.lineTo(x(c.p3), y(c.p3))
    else doc.bezierCurveTo(x(c.p1), y(c.p1), x(c.p2), y(c.p2), x(c.p3), y(c.p3))
  }
  if (closed) doc.closePath()
}

function inOrder(marks: readonly Mark[]): Mark[] {
  return KIND_ORDER.flatMap((kind) => marks.filter((mark) => mark.kind === kind))
}

function demoScene() {
  const made = makePattern(
    readFileSync(new URL('../../examples/lamplighter.yaml', import.meta.url), 'utf8'),
    'demo',
    {},
  )
  if (!made.ok) throw new Error(JSON.stringify(made.problems))
  return layOut(made.value.pattern, { performer: 'Lamplighter', version: 'first fitting', units: 'in' })
}

function onLetter(): TileSet {
  const paper = parsePaper('letter')
  if (!paper.ok) throw new Error('letter')
  return layOutTiles(SCENE, paper.value)
}
