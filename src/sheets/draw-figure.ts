import type { Box } from '../geometry/bounds.ts'
import { movePath } from '../geometry/path.ts'
import type { Point } from '../geometry/point.ts'
import type { MeasureFigure } from './measure-figures.ts'
import type { Mark } from './scene.ts'

const BODY = 0.25
const DETAIL = 0.15
const AID = 0.2

/** The tape behind the body, and lines that only help to find a place. */
const BEHIND_DASH = [1, 0.7]
const AID_DASH = [0.5, 0.7]

/** A figure as large as the box holds, in its middle: thin body, bold tape, dashed where it runs behind. */
export function drawFigure(name: string, figure: MeasureFigure, box: Box): Mark[] {
  const { body, tape, behind, aids, box: shown } = figure
  const factor = Math.min(
    (box.right - box.left) / (shown.right - shown.left),
    (box.top - box.bottom) / (shown.top - shown.bottom),
  )
  const place = (p: Point) => ({
    x: (box.left + box.right) / 2 + factor * (p.x - (shown.left + shown.right) / 2),
    y: (box.bottom + box.top) / 2 + factor * (p.y - (shown.bottom + shown.top) / 2),
  })
  const placed = (paths: MeasureFigure['tape']) => paths.map((path) => movePath(path, place))
  const marks: Mark[] = [
    { type: 'stroke', kind: 'body outline', id: `${name} body`, paths: placed(body.outline), weight: BODY },
    { type: 'stroke', kind: 'body outline', id: `${name} detail`, paths: placed(body.detail), weight: DETAIL },
    { type: 'stroke', kind: 'body outline', id: `${name} aid`, paths: placed(aids), weight: AID, dash: AID_DASH },
    { type: 'stroke', kind: 'tape', id: `${name} behind`, paths: placed(behind), weight: 0.45, dash: BEHIND_DASH },
    { type: 'stroke', kind: 'tape', id: name, paths: placed(tape) },
  ]
  return marks.filter((mark) => mark.type !== 'stroke' || mark.paths.length > 0)
}
