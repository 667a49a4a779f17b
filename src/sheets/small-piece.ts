import type { BodySide } from '../base/side.ts'
import { type Box, bounds } from '../geometry/bounds.ts'
import { movePath, type Path, polyline } from '../geometry/path.ts'
import { along, type Point, rightOf, scale } from '../geometry/point.ts'
import { outlineOf } from '../pattern/outline.ts'
import type { Notch, Piece } from '../pattern/piece.ts'
import { directionOnSeam, notchPoints, pointOnSeam, seamOf } from '../pattern/seam.ts'
import { baseName } from '../pattern/side-names.ts'
import type { Block } from './form-blocks.ts'
import { TEXT } from './house-style.ts'
import { boxOfInk, inkOf } from './ink.ts'
import { landmarkNames, lineNames, notchNames } from './label-piece.ts'
import { textBlock, textNear } from './place-text.ts'
import { openRoom, type Room } from './room.ts'
import { type Mark, moveMark, type StrokeMark, type TextMark } from './scene.ts'
import type { BlockLine } from './title-block.ts'

/** Half a notch's tick, mm as printed. */
const NOTCH_HALF = 1.8

/** How far names stand from their marks, mm: nearer than on a piece of full size. */
const NEAR = [2.6, 4, 6, 9]

/** Room over a piece for the name of a mark that has none inside, mm. */
export const OVER = 7

/** Steps in which room for a name is looked for, mm. */
const STEP = 2

/** How far the strip reaches beside the piece, mm: as far as its notches. */
const STRIP_EDGE = 2

/** Lines whose names are worth their room. */
const NAMED_LINES = /^(cap|biceps|elbow|bust|underarm|back width|front width) line/

/** Letters of the names: there is little room. */
const NAMES = { ...TEXT, name: TEXT.smallest, small: TEXT.smallest }

/** The piece made smaller (or larger) by a factor about the origin; positions along its seams with it. */
function scaledPiece(piece: Piece, factor: number): Piece {
  const move = (p: Point) => scale(p, factor)
  return {
    ...piece,
    seams: piece.seams.map((seam) => ({ ...seam, parts: seam.parts.map((part) => movePath(part, move)) })),
    darts: piece.darts.map((dart) => ({
      ...dart,
      mouth: [move(dart.mouth[0]), move(dart.mouth[1])],
      point: move(dart.point),
    })),
    notches: piece.notches.map((notch) => ({
      ...notch,
      along: notch.along * factor,
      ...(notch.step === undefined ? {} : { step: notch.step * factor }),
    })),
    lines: piece.lines.map((line) => ({ ...line, path: movePath(line.path, move) })),
    landmarks: piece.landmarks.map((mark) =>
      'at' in mark ? { ...mark, at: move(mark.at) } : { ...mark, along: mark.along * factor },
    ),
  }
}

/** The size of a piece's stitching lines, mm. */
export function sizeOfPiece(piece: Piece): { readonly width: number; readonly height: number } {
  const { left, right, bottom, top } = bounds(outlineOf(piece))
  return { width: right - left, height: top - bottom }
}

/** The outline of a left, right or whole piece at a small scale, to be written on: notches, landmarks and lines by their names. */
export function smallPiece(piece: Piece, factor: number): Block {
  const small = scaledPiece(piece, factor)
  const lines = marksOf(small)
  const names = namesOf(small, lines)
  const marks = [...lines, ...names].map((mark) => ({ ...mark, id: `${piece.id} ${mark.id}` }))
  const box = boxOfInk(inkOf(marks))
  return { height: box.top - box.bottom, marks: marks.map((mark) => moveMark(mark, { x: -box.left, y: -box.top })) }
}

function marksOf(piece: Piece): Mark[] {
  const stroke = (kind: StrokeMark['kind'], id: string, paths: StrokeMark['paths']): StrokeMark => ({
    type: 'stroke',
    kind,
    id,
    paths,
  })
  return [
    ...piece.lines
      .filter((line) => !/\bease\b/.test(line.id))
      .map((line) => stroke('balance line', line.id, [line.path])),
    ...piece.darts.map((dart) => stroke('dart', dart.id, [polyline([dart.mouth[0], dart.point, dart.mouth[1]])])),
    ...piece.seams.map((seam) => stroke('piece outline', seam.id, seam.parts)),
    ...piece.notches.map((notch) => {
      const seam = seamOf(piece, notch.seam)
      const ticks = notchPoints(piece, notch).map((at, k) => {
        const out = rightOf(directionOnSeam(seam, notch.along + k * (notch.step ?? 0)))
        return polyline([along(at, out, -NOTCH_HALF), along(at, out, NOTCH_HALF)])
      })
      return stroke('notch', notch.id, ticks)
    }),
  ]
}

/** Notches by their names, inside where there is room, else over the piece; its own name and sides; landmarks and lines. */
function namesOf(piece: Piece, marks: readonly Mark[]): TextMark[] {
  const outline = outlineOf(piece)
  const room = openRoom(inkOf(marks), outline)
  const box = bounds(outline)
  const edge = boxWithStrip(box)
  const edgeMark: Mark = { type: 'stroke', kind: 'page frame', id: 'edge', paths: [edge], weight: 0 }
  const outside = openRoom(inkOf([...marks, edgeMark]), edge)
  // What names a place goes first: it has the least choice.
  const notches = piece.notches.flatMap((notch) => notchName(piece, notch, room, outside))
  const middle = { x: (box.left + box.right) / 2, y: (box.bottom + box.top) / 2 }
  const title = { id: 'title', text: baseName(piece.name).toUpperCase(), size: TEXT.name }
  const block = (lines: readonly BlockLine[], within: Box, near: Point) => {
    const options = { id: 'piece', near, smallest: TEXT.smallest, step: STEP }
    const level = textBlock(room, lines, within, { ...options, angles: [0] })
    return level ?? textBlock(room, lines, within, { ...options, angles: [Math.PI / 2] }) ?? []
  }
  const titles = halvesOf(piece).flatMap(({ side, half }) => {
    // A side is named inside its own half, or not at all.
    const within = half === 0 ? box : { ...box, ...(half < 0 ? { right: middle.x } : { left: middle.x }) }
    const near = { x: (within.left + within.right) / 2, y: middle.y }
    const sign = { id: side, text: side.toUpperCase(), size: TEXT.body }
    return block(half === 0 ? [title, sign] : [sign], within, near)
  })
  const named = piece.side === 'whole' ? [...titles, ...block([title], box, middle)] : titles
  return [
    ...notches,
    ...named,
    ...landmarkNames(inBaseNames(piece), room, box, NAMES, NEAR),
    ...lineNames({ ...piece, lines: piece.lines.filter((line) => NAMED_LINES.test(line.id)) }, room, NAMES),
  ]
}

/** A notch's name inside the piece, else over the edge that it is on. */
function notchName(piece: Piece, notch: Notch, room: Room, outside: Room): TextMark[] {
  // Halves are named once for all of their marks.
  const name = baseName(notch.id)
  const inside = notchNames({ ...piece, notches: [{ ...notch, id: name }] }, room, NAMES, NEAR)
  if (inside.length > 0) return inside
  const seam = seamOf(piece, notch.seam)
  const out = rightOf(directionOnSeam(seam, notch.along))
  const label = { kind: 'label', id: `${name} name`, text: name, size: TEXT.smallest } as const
  const set = textNear(outside, label, pointOnSeam(seam, notch.along), out, [2.8, 4])
  return set ? [set] : []
}

/** The piece with its landmarks and notches as they are called on either half. */
function inBaseNames(piece: Piece): Piece {
  return {
    ...piece,
    notches: piece.notches.map((notch) => ({ ...notch, id: baseName(notch.id) })),
    landmarks: piece.landmarks.map((landmark) => ({ ...landmark, id: baseName(landmark.id) })),
  }
}

/** The room that a piece takes on the sheet: its own box and a strip over it. */
function boxWithStrip({ left, right, bottom, top }: Box): Path {
  const [low, high] = [bottom - STRIP_EDGE, top + OVER]
  const [from, to] = [left - STRIP_EDGE, right + STRIP_EDGE]
  return polyline([
    { x: from, y: low },
    { x: to, y: low },
    { x: to, y: high },
    { x: from, y: high },
    { x: from, y: low },
  ])
}

/** The sides that a piece shows and in which half of it: a front is seen from in front, a back from behind. */
function halvesOf(piece: Piece): { readonly side: BodySide; readonly half: number }[] {
  if (piece.side === 'left' || piece.side === 'right') return [{ side: piece.side, half: 0 }]
  const left = /\bfront\b/.test(piece.id) ? 1 : -1
  return [
    { side: 'left', half: left },
    { side: 'right', half: -left },
  ]
}
