import type { Element, G, Svg } from '@svgdotjs/svg.js'
import { rounded } from '../base/rounded.ts'
import type { Point } from '../geometry/point.ts'
import { PENS } from '../sheets/house-style.ts'
import { KIND_ORDER, type Mark, type MarkKind, placedMarks, pluralOf, type Scene } from '../sheets/scene.ts'
import { textWidth } from '../sheets/text-width.ts'
import { idMaker } from './ids.ts'
import { pathText } from './path-text.ts'
import { svgWindow } from './svg-window.ts'

/** A tenth of a micrometer: sums over a seam stay far below what paper holds. */
const DECIMALS = 4

/** What an SVG document says of itself. */
export interface SvgOptions {
  /** Title of the document. */
  readonly title: string
  /** What a reader that cannot see it is told. */
  readonly description: string
  /** Language of the labels, default `en`. */
  readonly language?: string
}

/**
 * The scene as an SVG document at true scale: width and height in mm, equal to the viewBox; one group for each
 * piece and in it for each kind of line, layers in an editor that has them, with ids that depend on the scene alone. Coordinates rounded to 1e-4 mm.
 * Same scene and options, same bytes.
 */
export async function writeSvg(scene: Scene, options: SvgOptions): Promise<string> {
  const { SVG, withWindow } = await import('@svgdotjs/svg.js')
  let text = ''
  withWindow(svgWindow() as never, () => {
    text = drawSvg(SVG(), scene, options)
  })
  return text
}

/** What `writeSvg` does with a document of svg.js: draws the scene into it; the text of the whole. */
export function drawSvg(svg: Svg, scene: Scene, options: SvgOptions): string {
  const id = idMaker()
  const width = rounded(scene.width, DECIMALS)
  const height = rounded(scene.height, DECIMALS)
  svg.attr({
    id: id('sheet'),
    'xmlns:inkscape': 'http://www.inkscape.org/namespaces/inkscape',
    width: `${width}mm`,
    height: `${height}mm`,
    viewBox: `0 0 ${width} ${height}`,
    role: 'img',
    'aria-labelledby': 'sheet-title sheet-description',
    lang: options.language ?? 'en',
    fill: 'none',
    stroke: 'none',
  })
  named(svg, id('sheet title'), id('sheet description'), options.title, options.description)
  // Up on the sheet is down in SVG: turned over here and nowhere else.
  const place = (p: Point) => ({ x: p.x, y: scene.height - p.y })
  for (const placed of scene.pieces) {
    const { drawing } = placed
    const group = svg.group()
    asLayer(group.id(id(drawing.id)), drawing.title)
    named(group, id(drawing.id, 'title'), id(drawing.id, 'description'), drawing.title, drawing.description)
    drawVersions(group, drawing.id, placedMarks(placed), place, id)
  }
  if (scene.sheet.length > 0) {
    const group = svg.group()
    asLayer(group.id(id('foot')), 'Foot')
    drawVersions(group, 'foot', scene.sheet, place, id)
  }
  return `<?xml version="1.0" encoding="UTF-8"?>\n${svg.svg()}\n`
}

function named(element: Svg | G, titleId: string, descriptionId: string, title: string, description: string): void {
  element.element('title').id(titleId).words(title)
  element.element('desc').id(descriptionId).words(description)
}

/** Editors that know layers show the group as one, by this name; to everything else it is a group. */
function asLayer(group: G, name: string): void {
  group.attr({ 'inkscape:groupmode': 'layer', 'inkscape:label': name })
}

type IdMaker = (...words: readonly string[]) => string

/** What lies under the sheet's own version goes into one group of its own, to be shown or hidden together. */
function drawVersions(parent: G, owner: string, marks: readonly Mark[], place: (p: Point) => Point, id: IdMaker): void {
  const under = marks.filter((mark) => mark.version !== undefined)
  if (under.length > 0) {
    const group = parent.group()
    asLayer(group.id(id(owner, 'previous version')), `as it was: ${under[0]?.version}`)
    drawKinds(group, `${owner} previous`, under, place, id)
  }
  const own = marks.filter((mark) => mark.version === undefined)
  drawKinds(parent, owner, own, place, id)
}

function drawKinds(parent: G, owner: string, marks: readonly Mark[], place: (p: Point) => Point, id: IdMaker): void {
  for (const kind of KIND_ORDER) {
    const ofKind = marks.filter((mark) => mark.kind === kind)
    if (ofKind.length === 0) continue
    const group = parent.group()
    asLayer(group.id(id(owner, pluralOf(kind))), pluralOf(kind))
    for (const [name, value] of Object.entries(penOf(kind))) group.attr(name, value)
    for (const mark of ofKind) drawMark(group, mark, place).id(id(owner, mark.kind, mark.id))
  }
}

function penOf(kind: MarkKind): Record<string, string | number> {
  const pen = PENS[kind]
  if (kind === 'label') return { fill: '#000', 'font-family': FONT }
  return {
    stroke: '#000',
    'stroke-width': pen.weight,
    'stroke-linejoin': 'round',
    ...(pen.dash ? { 'stroke-dasharray': pen.dash.join(' ') } : {}),
    ...(kind === 'measured square' || kind === 'page frame' ? { 'font-family': FONT } : {}),
  }
}

const FONT = "'DejaVu Sans', Verdana, sans-serif"

function drawMark(group: G, mark: Mark, place: (p: Point) => Point): Element {
  switch (mark.type) {
    case 'stroke': {
      const closed = mark.closed ?? false
      const d = mark.paths.map((path) => pathText(path, { decimals: DECIMALS, closed, place })).join(' ')
      const path = group.element('path').attr('d', d)
      if (mark.dash && mark.dash !== PENS[mark.kind].dash) path.attr('stroke-dasharray', mark.dash.join(' '))
      if (mark.weight !== undefined) path.attr('stroke-width', mark.weight)
      return path
    }
    case 'fill': {
      const d = pathText(mark.outline, { decimals: DECIMALS, closed: true, place })
      return group.element('path').attr({ d, fill: '#000', stroke: 'none' })
    }
    case 'text': {
      const at = place(mark.at)
      const x = rounded(at.x, DECIMALS)
      const y = rounded(at.y, DECIMALS)
      const turn = rounded((-mark.angle * 180) / Math.PI, DECIMALS)
      const text = group.element('text').words(mark.text)
      // textLength holds the width that the labels were placed with, whatever font the viewer has.
      text.attr({
        x,
        y,
        'font-size': rounded(mark.size, DECIMALS),
        'text-anchor': 'middle',
        textLength: rounded(textWidth(mark.text, mark.size), DECIMALS),
        lengthAdjust: 'spacingAndGlyphs',
        ...(turn === 0 ? {} : { transform: `rotate(${turn} ${x} ${y})` }),
        ...(mark.kind === 'label' ? {} : { fill: '#000', stroke: 'none' }),
      })
      return text
    }
  }
}
