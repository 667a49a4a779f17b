import { rounded } from '../../base/rounded.ts'
import type { Path } from '../../geometry/path.ts'
import type { Point } from '../../geometry/point.ts'
import { type Mark, moveMark, type PlacedDrawing, placedMarks } from '../../sheets/scene.ts'
import { escaped } from '../escaped.ts'
import { pathText } from '../path-text.ts'
import { LAYERS } from './layers.ts'

/** As in `pattern/1`, so that what is measured on the page is what is measured on the pattern. */
const DECIMALS = 6

/** A stitching line as the page has it: to point at and to measure on. */
export interface ViewedSeam {
  readonly piece: string
  readonly seam: string
  readonly parts: readonly Path[]
  /** What it is, how long, and what it is sewn to. */
  readonly about: string
}

/** One version's drawing on the page. */
export interface ViewedDrawing {
  readonly label: string
  readonly pieces: readonly PlacedDrawing[]
  readonly seams: readonly ViewedSeam[]
}

/** All versions as one SVG, each in a group of its own and in it every layer; mm, y down as SVG has it. */
export function drawingSvg(versions: readonly ViewedDrawing[], width: number, height: number): string {
  const place = (p: Point) => ({ x: p.x, y: height - p.y })
  const groups = versions.map((version, k) => {
    const last = k === versions.length - 1
    const marks = version.pieces.flatMap(placedMarks)
    const layers = LAYERS.map(({ id, kinds }) => {
      const own = marks.filter((mark) => (kinds as readonly string[]).includes(mark.kind))
      return `<g class="${id}">${own.map((mark) => markSvg(mark, place)).join('')}</g>`
    })
    const places = new Map(version.pieces.map(({ drawing, at }) => [drawing.id, at]))
    const seams = version.seams.map((seam) => seamSvg(seam, places.get(seam.piece) as Point, place))
    return `<g class="version" data-version="${k}" data-label="${escaped(version.label)}"${last ? '' : ' hidden=""'}>${layers.join('')}<g class="seams">${seams.join('')}</g></g>`
  })
  const description =
    'Pattern pieces at true proportion. Arrow keys move the drawing, plus and minus zoom, 0 shows all of it.'
  return `<svg id="drawing" viewBox="0 0 ${width} ${height}" data-width="${width}" data-height="${height}" tabindex="0" role="group" aria-label="The pattern" aria-describedby="drawing-help"><desc id="drawing-help">${description}</desc>${groups.join('')}<g class="names">${namesSvg(versions, place)}</g><g id="measured"></g></svg>`
}

type Placing = (p: Point) => Point

function markSvg(mark: Mark, place: Placing): string {
  const kind = mark.kind.replace(' ', '-')
  switch (mark.type) {
    case 'stroke': {
      const closed = mark.closed ?? false
      return `<path class="${kind}" d="${pathsText(mark.paths, place, closed)}"/>`
    }
    case 'fill':
      return `<path class="${kind} solid" d="${pathsText([mark.outline], place, true)}"/>`
    case 'text': {
      const { x, y } = place(mark.at)
      const turn = rounded((-mark.angle * 180) / Math.PI, 3)
      const at = `x="${rounded(x, 3)}" y="${rounded(y, 3)}"`
      const turned = turn === 0 ? '' : ` transform="rotate(${turn} ${rounded(x, 3)} ${rounded(y, 3)})"`
      return `<text ${at} font-size="${rounded(mark.size, 3)}"${turned}>${escaped(mark.text)}</text>`
    }
  }
}

function seamSvg({ piece, seam, parts, about }: ViewedSeam, at: Point, place: Placing): string {
  const moved = moveMark({ type: 'stroke', kind: 'stitching line', id: seam, paths: parts }, at)
  const d = moved.type === 'stroke' ? pathsText(moved.paths, place, false) : ''
  return `<path class="seam" tabindex="0" role="img" aria-label="${escaped(about)}" data-piece="${escaped(piece)}" data-seam="${escaped(seam)}" d="${d}"/>`
}

/** A name above each piece, clear of every version of it; the page keeps it at one size, smaller where it is wider than its piece. */
function namesSvg(versions: readonly ViewedDrawing[], place: Placing): string {
  const all = versions.flatMap(({ pieces }) => pieces)
  const present = versions[versions.length - 1]?.pieces ?? []
  const names = present.map(({ drawing, at }) => {
    const tops = all.filter((other) => other.drawing.id === drawing.id).map((other) => other.drawing.box.top)
    const { left, right } = drawing.box
    const { x, y } = place({ x: at.x + (left + right) / 2, y: at.y + Math.max(...tops) })
    return `<text class="name" dy="-0.6em" x="${rounded(x, 2)}" y="${rounded(y, 2)}" font-size="10" data-room="${rounded(right - left, 2)}">${escaped(drawing.title)}</text>`
  })
  return names.join('')
}

function pathsText(paths: readonly Path[], place: Placing, closed: boolean): string {
  return paths.map((path) => pathText(path, { decimals: DECIMALS, closed, place })).join(' ')
}
