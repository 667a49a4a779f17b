import type { Cubic } from '../geometry/cubic.ts'
import { isLine } from '../geometry/cubic.ts'
import type { Path } from '../geometry/path.ts'
import { startOf } from '../geometry/path.ts'
import { PENS } from '../sheets/house-style.ts'
import type { TilePage, TileSet } from '../sheets/lay-out-tiles.ts'
import type { Mark } from '../sheets/scene.ts'
import { textWidth } from '../sheets/text-width.ts'
import { type EmbeddedFont, keepLayouts } from './keep-layouts.ts'
import { joined, type Pack, packStreams } from './pack-streams.ts'
import { type Layer, type LayerGroup, pdfLayers } from './pdf-layers.ts'

/** Points in a millimetre. */
const POINT = 72 / 25.4

/** What a PDF needs besides its pages. */
export interface PdfOptions {
  /** A TrueType font with the widths of DejaVu Sans; embedded as a subset. */
  readonly font: Uint8Array
  /** Title of the document. */
  readonly title: string
  /** Written as creation date, ISO 8601; the clock is never read. */
  readonly date: string
  /** Goes into the file's identifier: equal for equal files. */
  readonly id: string
  /** Language of the labels, default `en`. */
  readonly language?: string
}

type Document = PDFKit.PDFDocument
type DocumentMaker = new (options?: PDFKit.PDFDocumentOptions) => Document

/** What pdfkit keeps to itself but layers and viewer preferences need. */
interface Internals {
  readonly _root: { readonly data: Record<string, unknown> }
  readonly page: { readonly resources: { readonly data: Record<string, unknown> } }
  readonly _font: EmbeddedFont
}

/**
 * The pages as a PDF at true scale: one rectangular clip a page, plain strokes and fills, a layer for each version and
 * in it for each kind of mark, an outline by piece, no scaling asked of the viewer. Same tiles and options, same bytes.
 * Coordinates to 1e-6 pt. Rejects on a date that is none or a font that cannot be read.
 */
export async function writePdf(tiles: TileSet, options: PdfOptions): Promise<Uint8Array> {
  const [{ default: PDFDocument }, { zlibSync }] = await Promise.all([import('pdfkit'), import('fflate')])
  return collect(drawPdf(PDFDocument, tiles, options, zlibSync))
}

/** The same as pdfkit's document, ended and yet to be read. Throws as `writePdf` rejects. */
export function drawPdf(PDFDocument: DocumentMaker, tiles: TileSet, options: PdfOptions, pack: Pack): Document {
  const date = new Date(options.date)
  if (Number.isNaN(date.getTime())) throw new RangeError(`"${options.date}" is not a date`)
  const settings = {
    autoFirstPage: false,
    pdfVersion: '1.7',
    lang: options.language ?? 'en',
    displayTitle: true,
    // Given here, so that pdfkit does not reach for a standard font of its own.
    font: options.font,
    info: {
      Title: options.title,
      Subject: options.id,
      Creator: 'scyewright',
      Producer: 'scyewright',
      CreationDate: date,
      ModDate: date,
    },
  }
  const doc = new PDFDocument(settings as unknown as PDFKit.PDFDocumentOptions)
  packStreams(doc, pack)
  keepLayouts((doc as unknown as Internals)._font, options.font)
  const groups = pdfLayers(tiles)
  const properties = openLayers(doc, groups)
  const bookmark = outlineBy(doc, tiles)
  for (const page of tiles.pages) {
    const { x, y } = tiles.printScale
    doc.addPage({ size: [tiles.width * x * POINT, tiles.height * y * POINT], margin: 0 })
    ;(doc as unknown as Internals).page.resources.data.Properties = properties
    if (x !== 1 || y !== 1) doc.scale(x, y)
    drawPage(doc, tiles, page, groups)
    bookmark(page)
  }
  const root = (doc as unknown as Internals)._root.data
  const preferences = root.ViewerPreferences as { data: Record<string, unknown> }
  preferences.data.PrintScaling = 'None'
  doc.end()
  return doc
}

function collect(doc: Document): Promise<Uint8Array> {
  return new Promise((resolve, reject) => {
    const chunks: Uint8Array[] = []
    doc.on('data', (chunk: Uint8Array) => chunks.push(chunk))
    doc.on('error', reject)
    doc.on('end', () => resolve(joined(chunks)))
  })
}

/** Makes the optional content groups, all of them on; returns them by the names that pages use. */
function openLayers(doc: Document, groups: readonly LayerGroup[]): Record<string, unknown> {
  const open = (title: string) => {
    // pdfkit writes a String object as text and a bare string as a name.
    const group = doc.ref({ Type: 'OCG', Name: new String(title) })
    group.end(undefined)
    return group
  }
  const properties: Record<string, unknown> = {}
  const order = groups.flatMap(({ title, name, layers }) => {
    if (name) properties[name] = open(title)
    for (const layer of layers) properties[layer.name] = open(layer.title)
    const refs = layers.map((layer) => properties[layer.name])
    // A version switches all of its lines; in a list of layers they are its children.
    return name ? [properties[name], refs] : refs
  })
  const all = Object.values(properties)
  const root = (doc as unknown as Internals)._root.data
  root.OCProperties = { OCGs: all, D: { Name: new String('Pattern'), Order: order, ON: all } }
  return properties
}

function drawPage(doc: Document, tiles: TileSet, page: TilePage, groups: readonly LayerGroup[]): void {
  const flip = (y: number) => tiles.height - y
  const { left, bottom, right, top } = tiles.frame
  doc.save()
  doc.rect(left * POINT, flip(top) * POINT, (right - left) * POINT, (top - bottom) * POINT).clip()
  for (const { name, layers } of groups) {
    if (!name) continue
    doc.addContent(`/OC /${name} BDC`)
    drawLayers(doc, page.pattern, tiles.height, layers)
    doc.addContent('EMC')
  }
  doc.restore()
  for (const { name, layers } of groups) if (!name) drawLayers(doc, page.furniture, tiles.height, layers)
}

function drawLayers(doc: Document, marks: readonly Mark[], height: number, layers: readonly Layer[]): void {
  for (const { name, has } of layers) {
    const inLayer = marks.filter(has)
    if (inLayer.length === 0) continue
    doc.addContent(`/OC /${name} BDC`)
    doc.lineJoin('round').lineCap('butt')
    for (const mark of inLayer) drawMark(doc, mark, height)
    doc.addContent('EMC')
  }
}

function drawMark(doc: Document, mark: Mark, height: number): void {
  switch (mark.type) {
    case 'stroke': {
      doc.lineWidth((mark.weight ?? PENS[mark.kind].weight) * POINT)
      const dash = mark.dash ?? PENS[mark.kind].dash
      // Typed for a number alone, documented and made for an array too.
      if (dash) doc.dash(dash.map((mm) => mm * POINT) as unknown as number, {})
      else doc.undash()
      for (const path of mark.paths) trace(doc, path, height, mark.closed ?? false)
      doc.stroke()
      return
    }
    case 'fill':
      trace(doc, mark.outline, height, true)
      doc.fill()
      return
    case 'text': {
      const x = mark.at.x * POINT
      const y = (height - mark.at.y) * POINT
      const half = (textWidth(mark.text, mark.size) / 2) * POINT
      doc.save()
      if (mark.angle !== 0) doc.rotate((-mark.angle * 180) / Math.PI, { origin: [x, y] })
      doc.fontSize(mark.size * POINT)
      doc.text(mark.text, x - half, y, TEXT_OPTIONS)
      doc.restore()
    }
  }
}

/** Letters at their own widths, as the labels were placed: no kerning, no ligatures. */
const PLAIN = { kern: false, liga: false, clig: false, calt: false } as unknown as PDFKit.Mixins.OpenTypeFeatures[]

/** Width and number of words are only wanted of text that is underlined or linked: said to be nothing, they are not counted. */
const TEXT_OPTIONS = {
  lineBreak: false,
  baseline: 'alphabetic',
  features: PLAIN,
  textWidth: 0,
  wordCount: 0,
} as PDFKit.Mixins.TextOptions

function trace(doc: Document, path: Path, height: number, closed: boolean): void {
  const x = (c: Cubic, k: 'p0' | 'p1' | 'p2' | 'p3') => c[k].x * POINT
  const y = (c: Cubic, k: 'p0' | 'p1' | 'p2' | 'p3') => (height - c[k].y) * POINT
  const start = startOf(path)
  doc.moveTo(start.x * POINT, (height - start.y) * POINT)
  for (const c of path) {
    if (isLine(c)) doc.lineTo(x(c, 'p3'), y(c, 'p3'))
    else doc.bezierCurveTo(x(c, 'p1'), y(c, 'p1'), x(c, 'p2'), y(c, 'p2'), x(c, 'p3'), y(c, 'p3'))
  }
  if (closed) doc.closePath()
}

/** Makes the outline page by page: an entry for the map, one for each piece where it first shows, its pages below. */
function outlineBy(doc: Document, tiles: TileSet): (page: TilePage) => void {
  const items = new Map<string, PDFKit.PDFOutline>()
  return (page) => {
    if (page.map) doc.outline.addItem('Page map')
    for (const id of page.pieces) {
      const item = items.get(id) ?? doc.outline.addItem(tiles.titles.get(id) ?? id)
      items.set(id, item)
      if (tiles.pages.length > 1) item.addItem(`Page ${page.name}`)
    }
  }
}
