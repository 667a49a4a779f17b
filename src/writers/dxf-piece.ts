import { type Box, bounds } from '../geometry/bounds.ts'
import { type Path, polyline } from '../geometry/path.ts'
import { along, angleOf, type Point } from '../geometry/point.ts'
import { easeStitching } from '../pattern/ease-stitching.ts'
import type { Pattern } from '../pattern/pattern.ts'
import type { Piece } from '../pattern/piece.ts'
import { capEase } from '../sheets/cap-ease.ts'
import { drawPiece, kindOfLine, notchPlaces } from '../sheets/draw-piece.ts'
import { inkOf } from '../sheets/ink.ts'
import { labelPiece } from '../sheets/label-piece.ts'
import type { SheetInfo, TextMark } from '../sheets/scene.ts'
import { boundaryVertices, curvePoints } from './dxf-boundary.ts'
import { LAYERS, labelEntity, lineEntity, pointEntity, polylineEntity, textEntity } from './dxf-entities.ts'
import type { Group } from './dxf-groups.ts'

/** mm of a notch's tick on each side of the stitching line. */
const NOTCH_HALF = 4

const CROSS_HALF = 3

/** Height of the system texts, and from one to the next, mm. */
const TEXT_HEIGHT = 3
const LEADING = 5

/** What the piece alone does not tell: its closed cutting line, and the id of the line that it was opened along. */
export interface DxfLines {
  readonly cut: Path
  readonly mirror: string | undefined
}

export interface DxfPiece {
  readonly entities: readonly Group[]
  /** Of the boundary, mm. */
  readonly box: Box
}

/**
 * A piece as the entities of its block, where the draft has it: boundary with turn and curve points, notches at the cut
 * edge, grain, mirror line, sew line, internal lines, and its words.
 */
export function dxfPiece(pattern: Pattern, piece: Piece, { cut, mirror }: DxfLines, info: SheetInfo): DxfPiece {
  const vertices = boundaryVertices(cut)
  const corners = vertices.map(({ at }) => at)
  const box = bounds(polyline([...corners, corners[0] as Point]))
  const lines = [...piece.lines, ...easeStitching(piece)]
  return {
    box,
    entities: [
      ...polylineEntity(LAYERS.boundary, corners, true),
      ...vertices.flatMap(({ at, turn }) => pointEntity(turn ? LAYERS.turn : LAYERS.curve, at)),
      ...notches(piece, corners),
      ...lines.flatMap((line): Group[] => {
        const points = curvePoints(line.path)
        if (line.id === mirror) return lineEntity(LAYERS.mirror, points[0] as Point, points.at(-1) as Point)
        if (kindOfLine(line.id) !== 'grain line') return polylineEntity(LAYERS.internal, points)
        return lineEntity(LAYERS.grain, points[0] as Point, points.at(-1) as Point)
      }),
      ...piece.darts.flatMap(({ mouth: [a, b], point }) => polylineEntity(LAYERS.internal, [a, point, b])),
      ...piece.landmarks.flatMap((landmark) => ('at' in landmark ? cross(landmark.at) : [])),
      ...piece.seams.flatMap((seam) => seam.parts.flatMap((part) => polylineEntity(LAYERS.sew, curvePoints(part)))),
      ...words(piece, labelPiece(piece, drawPiece(piece, cut), capEase(pattern, piece.id), info), info, box),
    ],
  }
}

/** A point on the boundary for each mark, turned the way it is cut, and a tick across the stitching line. */
function notches(piece: Piece, corners: readonly Point[]): Group[] {
  const edges = inkOf([
    { type: 'stroke', kind: 'cutting line', id: '', paths: [polyline([...corners, corners[0] as Point])] },
  ])
  return piece.notches.flatMap((notch) =>
    notchPlaces(piece, notch, edges).flatMap(({ at, out, edge }) => [
      ...pointEntity(LAYERS.notch, along(at, out, edge), angleOf({ x: -out.x, y: -out.y })),
      ...lineEntity(LAYERS.internal, along(at, out, -NOTCH_HALF), along(at, out, Math.min(NOTCH_HALF, edge))),
    ]),
  )
}

function cross({ x, y }: Point): Group[] {
  return [
    ...lineEntity(LAYERS.internal, { x: x - CROSS_HALF, y }, { x: x + CROSS_HALF, y }),
    ...lineEntity(LAYERS.internal, { x, y: y - CROSS_HALF }, { x, y: y + CROSS_HALF }),
  ]
}

/** The system texts that programs read, below the piece, and the labels that people read, on it. */
function words(piece: Piece, labels: readonly TextMark[], info: SheetInfo, box: Box): Group[] {
  const fitted = info.fittings?.length ? `fitted: ${info.fittings.join(', ')}` : info.version
  const system = [
    `Piece Name: ${piece.name}`,
    `Size: ${info.performer}`,
    `Quantity: ${piece.cut}`,
    `Annotation: ${fitted}`,
  ]
  return [
    ...system.flatMap((text, k) =>
      textEntity({ x: box.left, y: box.bottom - LEADING * (k + 1) - TEXT_HEIGHT }, TEXT_HEIGHT, text),
    ),
    ...labels.flatMap(labelEntity),
  ]
}
