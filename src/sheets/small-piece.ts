import type { BodySide } from '../base/side.ts'
import { type Box, bounds } from '../geometry/bounds.ts'
import { movePath, type Path, polyline } from '../geometry/path.ts'
import { directionAlong, pathLength, pointAlong } from '../geometry/path-length.ts'
import { along, heading, type Point, rightOf, scale } from '../geometry/point.ts'
import { outlineOf } from '../pattern/outline.ts'
import type { Notch, Piece } from '../pattern/piece.ts'
import { directionOnSeam, landmarkPoint, notchPoints, seamOf } from '../pattern/seam.ts'
import { baseName } from '../pattern/side-names.ts'
import { boxOutline } from './box-outline.ts'
import type { Block } from './form-blocks.ts'
import { TEXT } from './house-style.ts'
import { boxOfInk, inkOf, textBox } from './ink.ts'
import { textBeside, textBlock } from './place-text.ts'
import { type NameRooms, nameRooms, pointName, takeRoom } from './point-name.ts'
import { openRoom, type Room } from './room.ts'
import { type Mark, moveMark, type StrokeMark, type TextMark } from './scene.ts'
import type { BlockLine } from './title-block.ts'

/** Half a notch's tick, mm as printed. */
const NOTCH_HALF = 1.8

/** Half a cross, mm as printed. */
const CROSS_HALF = 1

/** Room over a piece for the name of a mark that has none inside, mm. */
export const OVER = 7

/** Steps in which room for a name is looked for, mm. */
const STEP = 2

/** How far the strip reaches beside the piece, mm: as far as its notches. */
const STRIP_EDGE = 2

/** Lines whose names are worth their room. */
const NAMED_LINES = /^(cap|biceps|elbow|bust|underarm|back width|front width) line/

/** Shares of a line at which its name may be joined to it. */
const ON_LINE = [0.12, 0.2, 0.3, 0.4, 0.6, 0.7, 0.8, 0.88]

/** The name of a line is left out rather than joined to it from farther away, mm. */
const MOST_OF_LINE = 9

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
      const ticks = notchTicks(piece, notch).map(({ from, to }) => polyline([from, to]))
      return stroke('notch', notch.id, ticks)
    }),
    ...piece.landmarks.flatMap((landmark) => {
      if (!('at' in landmark)) return []
      const arms = crossAt(landmark.at).map(({ from, to }) => polyline([from, to]))
      return [stroke('landmark', landmark.id, arms)]
    }),
  ]
}

interface Tick {
  readonly from: Point
  readonly to: Point
}

/** A cross on a point inside the piece. */
function crossAt(at: Point): Tick[] {
  return [Math.PI / 4, (3 * Math.PI) / 4].map((angle) => ({
    from: along(at, heading(angle), -CROSS_HALF),
    to: along(at, heading(angle), CROSS_HALF),
  }))
}

/** A tick across the stitching line for each mark of a notch. */
function notchTicks(piece: Piece, notch: Notch): Tick[] {
  const seam = seamOf(piece, notch.seam)
  return notchPoints(piece, notch).map((at, k) => {
    const out = rightOf(directionOnSeam(seam, notch.along + k * (notch.step ?? 0)))
    return { from: along(at, out, -NOTCH_HALF), to: along(at, out, NOTCH_HALF) }
  })
}

/** Notches, landmarks and lines by their names, each beside its mark or joined to it; the piece's own name and sides. */
function namesOf(piece: Piece, marks: readonly Mark[]): Mark[] {
  const box = bounds(outlineOf(piece))
  const edge = boxWithStrip(box)
  const edgeMark: Mark = { type: 'stroke', kind: 'page frame', id: 'edge', paths: [edge], weight: 0 }
  const isLine = (mark: Mark) => mark.kind === 'balance line'
  const lines = inkOf(marks.filter(isLine))
  const edges = inkOf(marks.filter((mark) => !isLine(mark)))
  // Names may stand beside the piece, too: what they belong to is told by the leader.
  const rooms = nameRooms(openRoom(inkOf([...marks, edgeMark]), edge), edges, lines)
  // What names a place goes first: it has the least choice.
  const points = [...notchNames(piece, rooms), ...landmarkNames(piece, rooms)]
  return [
    ...points,
    ...titles(piece, box, openRoom(inkOf([...marks, ...points]), outlineOf(piece)), rooms),
    ...lineNames(piece, rooms),
  ]
}

/** The name of the piece and its sides, inside it. */
function titles(piece: Piece, box: Box, room: Room, rooms: NameRooms): TextMark[] {
  const middle = { x: (box.left + box.right) / 2, y: (box.bottom + box.top) / 2 }
  const title = { id: 'title', text: baseName(piece.name).toUpperCase(), size: TEXT.name }
  const block = (lines: readonly BlockLine[], within: Box, near: Point) => {
    const options = { id: 'piece', near, smallest: TEXT.smallest, step: STEP }
    const level = textBlock(room, lines, within, { ...options, angles: [0] })
    return level ?? textBlock(room, lines, within, { ...options, angles: [Math.PI / 2] }) ?? []
  }
  const sides = halvesOf(piece).flatMap(({ side, half }) => {
    // A side is named inside its own half, or not at all.
    const within = half === 0 ? box : { ...box, ...(half < 0 ? { right: middle.x } : { left: middle.x }) }
    const near = { x: (within.left + within.right) / 2, y: middle.y }
    const sign = { id: side, text: side.toUpperCase(), size: TEXT.body }
    return block(half === 0 ? [title, sign] : [sign], within, near)
  })
  const all = piece.side === 'whole' ? [...sides, ...block([title], box, middle)] : sides
  for (const mark of all) takeRoom(rooms, textBox(mark))
  return all
}

/** Halves are named once for all of their marks. */
function notchNames(piece: Piece, rooms: NameRooms): Mark[] {
  return piece.notches.flatMap((notch) => {
    const anchors = notchTicks(piece, notch).flatMap(({ from, to }) => [from, to])
    return pointName(rooms, { id: notch.id, text: baseName(notch.id), size: TEXT.smallest, anchors, clear: 0.7 })
  })
}

/** Names of the landmarks that no notch, line or seam names already. */
function landmarkNames(piece: Piece, rooms: NameRooms): Mark[] {
  const named = new Set([...piece.notches, ...piece.lines, ...piece.seams].map(({ id }) => baseName(id)))
  return piece.landmarks.flatMap((landmark) => {
    const text = baseName(landmark.id)
    if (named.has(text)) return []
    // The underarm is on both halves of a cap.
    const id = 'seam' in landmark ? `${landmark.id} of ${landmark.seam}` : landmark.id
    const at = landmarkPoint(piece, landmark)
    // In a corner a leader begins where it is clear of both edges.
    const anchors = 'at' in landmark ? crossAt(at).flatMap(({ from, to }) => [from, to]) : [at]
    return pointName(rooms, { id, text, size: TEXT.smallest, anchors, clear: 'at' in landmark ? 0.7 : 1.4 })
  })
}

/** Names of lines along them, else joined to them. */
function lineNames(piece: Piece, rooms: NameRooms): Mark[] {
  return piece.lines.flatMap(({ id, path }) => {
    if (!NAMED_LINES.test(id)) return []
    const text = baseName(id)
    const length = pathLength(path)
    const at = (share: number) => pointAlong(path, share * length)
    const along = (share: number) => ({ at: at(share), direction: directionAlong(path, share * length) })
    const label = { kind: 'label', id: `${id} name`, text, size: TEXT.smallest } as const
    const beside = textBeside(rooms.free, label, along, { gaps: [0.9, 2] })
    if (!beside)
      return pointName(rooms, {
        id,
        text,
        size: TEXT.smallest,
        anchors: ON_LINE.map(at),
        clear: 0.3,
        most: MOST_OF_LINE,
      })
    takeRoom(rooms, textBox(beside))
    return [beside]
  })
}

/** The room that a piece takes on the sheet: its own box and a strip over it. */
function boxWithStrip({ left, right, bottom, top }: Box): Path {
  return boxOutline({
    left: left - STRIP_EDGE,
    bottom: bottom - STRIP_EDGE,
    right: right + STRIP_EDGE,
    top: top + OVER,
  })
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
