import { type Box, bounds } from '../geometry/bounds.ts'
import type { Path } from '../geometry/path.ts'
import type { Point } from '../geometry/point.ts'
import { cutLine } from '../pattern/cut-line.ts'
import type { Pattern } from '../pattern/pattern.ts'
import { escaped } from './escaped.ts'
import { pathText } from './path-text.ts'

/** Between pieces, mm of cloth. */
const GAP = 60

/**
 * All pieces in a row as a small SVG element for a page of HTML: cutting lines solid, stitching lines dashed and darts thin, to be
 * looked at and not measured (0.1 mm). It has a viewBox in mm of cloth and no size; lines keep their weight at any size, and
 * gray or color makes no difference. `title` is read out in its place.
 */
export function thumbnail(pattern: Pattern, title: string): string {
  const drawn = pattern.pieces.map((piece) => {
    const cut = cutLine(piece)
    return { piece, cut, box: bounds(cut) }
  })
  const height = Math.max(0, ...drawn.map(({ box }) => box.top - box.bottom))
  let width = 0
  const parts = drawn.map(({ piece, cut, box }) => {
    const place = placing(box, width, height)
    width += box.right - box.left + GAP
    const d = (path: Path, closed = false) => pathText(path, { decimals: 1, place, closed })
    const stitching = piece.seams.flatMap((seam) => seam.parts.map((part) => d(part)))
    const darts = piece.darts.map(({ mouth: [a, b], point }) => {
      const [from, tip, to] = [a, point, b].map(place).map(({ x, y }) => `${x.toFixed(1)} ${y.toFixed(1)}`)
      return `M ${from} L ${tip} L ${to}`
    })
    return [
      `<path class="cut" d="${d(cut, true)}"/>`,
      `<path class="stitch" d="${stitching.join(' ')}"/>`,
      ...(darts.length > 0 ? [`<path class="dart" d="${darts.join(' ')}"/>`] : []),
    ].join('')
  })
  const size = `${(width - (drawn.length > 0 ? GAP : 0)).toFixed(1)} ${height.toFixed(1)}`
  return `<svg viewBox="0 0 ${size}" role="img" aria-label="${escaped(title)}">${parts.join('')}</svg>`
}

/** Puts a box with its left edge at `left`, standing on the bottom of the row; y points down. */
function placing(box: Box, left: number, height: number): (p: Point) => Point {
  return (p) => ({ x: p.x - box.left + left, y: height - (p.y - box.bottom) })
}
