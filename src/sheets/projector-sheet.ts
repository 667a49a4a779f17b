import { MM_PER_INCH } from '../base/units.ts'
import { polyline } from '../geometry/path.ts'
import type { Pattern } from '../pattern/pattern.ts'
import { leastPaper } from './arrange.ts'
import { PENS, PROJECTED } from './house-style.ts'
import { infoOf, type LayOutOptions } from './lay-out.ts'
import { type DrawingStyle, pieceDrawings } from './piece-drawings.ts'
import type { Mark, Scene, StrokeMark } from './scene.ts'
import { leftText } from './sheet-foot.ts'

/** Clear space round the pieces, mm. */
const BORDER = 30

const STYLE: DrawingStyle = { sizes: PROJECTED.text, mark: bold }

/**
 * The pattern for a projector above a cutting table: one sheet, lines and letters large enough for coarse pixels, and
 * under them one calibration grid over all of it, of 2 in where the units are inches, else of 5 cm. The grid is a kind of line of its own, to be hidden when it fits the table's. Throws
 * when a wanted piece is not there or none is.
 */
export function layOutForProjector(pattern: Pattern, options: LayOutOptions): Scene {
  const best = leastPaper(pieceDrawings(pattern, options, STYLE))
  const step = options.units === 'in' ? 2 * MM_PER_INCH : 50
  const head = 2 * PROJECTED.text.title
  const columns = Math.ceil((best.width + 2 * BORDER) / step)
  const rows = Math.ceil((best.height + head + 2 * BORDER) / step)
  const width = columns * step
  const height = rows * step
  const pieces = best.placed.map(({ drawing, at }) => ({ drawing, at: { x: at.x + BORDER, y: at.y + BORDER } }))
  const name = `${options.units === 'in' ? '2 in' : '5 cm'} grid`
  const title = [options.production, options.performer, options.version, name].filter((part) => part !== undefined)
  const size = PROJECTED.text.title
  return {
    info: infoOf(options),
    width,
    height,
    pieces,
    sheet: [
      ...grid(columns, rows, step),
      leftText('sheet title', title.join(' · '), size, BORDER, height - BORDER / 2 - size),
    ],
  }
}

/** Lines from edge to edge. */
function grid(columns: number, rows: number, step: number): StrokeMark[] {
  const [width, height] = [columns * step, rows * step]
  const line = (id: string, ax: number, ay: number, bx: number, by: number): StrokeMark => ({
    type: 'stroke',
    kind: 'calibration grid',
    id,
    paths: [
      polyline([
        { x: ax, y: ay },
        { x: bx, y: by },
      ]),
    ],
  })
  return [
    ...Array.from({ length: columns + 1 }, (_, k) => line(`upright ${k}`, k * step, 0, k * step, height)),
    ...Array.from({ length: rows + 1 }, (_, k) => line(`level ${k}`, 0, k * step, width, k * step)),
  ]
}

function bold(mark: Mark): Mark {
  if (mark.type !== 'stroke') return mark
  const pen = PENS[mark.kind]
  const dash = mark.dash ?? pen.dash
  return {
    ...mark,
    weight: (mark.weight ?? pen.weight) * PROJECTED.weight,
    ...(dash ? { dash: dash.map((mm) => mm * PROJECTED.dash) } : {}),
  }
}
