import { cos, sin } from '../base/trig.ts'
import type { Point } from '../geometry/point.ts'
import type { TextMark } from '../sheets/scene.ts'
import { textWidth } from '../sheets/text-width.ts'
import type { Group } from './dxf-groups.ts'

/**
 * Layers of ASTM D6673 that are used. Grade reference (5), cut-outs (11) and drill holes (13) are not: nothing here is
 * graded, and a hole where a landmark is would be a hole in the cloth.
 */
export const LAYERS = {
  boundary: '1',
  turn: '2',
  curve: '3',
  notch: '4',
  mirror: '6',
  grain: '7',
  internal: '8',
  sew: '14',
  annotation: '15',
} as const

export type Layer = (typeof LAYERS)[keyof typeof LAYERS]

/** Capitals stand this high in the em of the labels' font; a DXF text is as high as its capitals. */
const CAPITALS = 0.73

/** A polyline of at least two points; `closed` runs on to the first without repeating it. */
export function polylineEntity(layer: Layer, points: readonly Point[], closed = false): Group[] {
  return [
    [0, 'POLYLINE'],
    [8, layer],
    [66, 1],
    [10, 0],
    [20, 0],
    [30, 0],
    [70, closed ? 1 : 0],
    ...points.flatMap((p): Group[] => [[0, 'VERTEX'], [8, layer], ...at(p)]),
    [0, 'SEQEND'],
    [8, layer],
  ]
}

export function lineEntity(layer: Layer, from: Point, to: Point): Group[] {
  return [[0, 'LINE'], [8, layer], ...at(from), ...at(to, 1)]
}

/** A point; `angle` in radians is the way that a notch is cut. */
export function pointEntity(layer: Layer, p: Point, angle?: number): Group[] {
  return [[0, 'POINT'], [8, layer], ...at(p), ...(angle === undefined ? [] : [[50, degrees(angle)] as Group])]
}

/** A line of text where the labels have it: centered on its baseline. */
export function labelEntity({ text, size, at: place, angle }: TextMark): Group[] {
  const half = textWidth(text, size) / 2
  const start = { x: place.x - half * cos(angle), y: place.y - half * sin(angle) }
  return [...textHead(start, size * CAPITALS, text), [50, degrees(angle)], [72, 1], ...at(place, 1)]
}

/** A line of text that begins at a point, `height` mm high. */
export function textEntity(start: Point, height: number, text: string): Group[] {
  return textHead(start, height, text)
}

/** A block by its name, moved by a vector. */
export function insertEntity(block: string, by: Point): Group[] {
  return [[0, 'INSERT'], [8, LAYERS.boundary], [2, block], ...at(by)]
}

function textHead(start: Point, height: number, text: string): Group[] {
  return [[0, 'TEXT'], [8, LAYERS.annotation], ...at(start), [40, height], [1, text]]
}

function at({ x, y }: Point, which = 0): Group[] {
  return [
    [10 + which, x],
    [20 + which, y],
    [30 + which, 0],
  ]
}

/** 0 up to 360. */
function degrees(angle: number): number {
  const turned = (angle * 180) / Math.PI
  return turned < 0 ? turned + 360 : turned
}
