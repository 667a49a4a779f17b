import { bounds } from '../geometry/bounds.ts'
import { polyline } from '../geometry/path.ts'
import { along, distance, leftOf, type Point, rightOf, scale, subtract } from '../geometry/point.ts'
import { outlineOf } from '../pattern/outline.ts'
import type { Line, Piece } from '../pattern/piece.ts'
import { directionOnSeam, notchPoints, seamOf } from '../pattern/seam.ts'
import { rank } from './cut-pieces.ts'
import { drawLine } from './draw-piece.ts'
import { TEXT } from './house-style.ts'
import { boxOfInk, inkOf } from './ink.ts'
import { onOneSheet } from './lay-out.ts'
import { lengthLabel } from './length-label.ts'
import { blockBox, setBlock, textBlock, textNear } from './place-text.ts'
import { openRoom } from './room.ts'
import type { Mark, PieceDrawing, Scene, SheetInfo, StrokeMark, TextMark } from './scene.ts'
import type { BlockLine } from './title-block.ts'

/** Where a line moved most, from where it was to where it is; mm. */
export interface DrawnMove {
  /** Unique among the moves of its piece. */
  readonly id: string
  /** The point as it was. */
  readonly from: Point
  /** The point as it is. */
  readonly to: Point
}

/** A piece before and after, in one frame, with the moves that are worth an arrow. */
export interface ComparedPiece {
  /** The piece in the earlier version. */
  readonly before: Piece
  /** The piece in the later version. */
  readonly after: Piece
  /** The moves that get an arrow. */
  readonly moves: readonly DrawnMove[]
}

/** Less than this is not worth an arrow: it is within the pencil line, mm. */
const LEAST_ARROW = 0.5

/** An arrow is drawn at least this long, so that a small move is seen; its head is at the line as it is, mm. */
const ARROW = 11
const HEAD = 3
const HEAD_HALF = 0.9
const NOTCH_HALF = 4

/** Arrows whose heads are nearer than this show the same move, mm. */
const SAME_MOVE = 1

/**
 * Pieces before and after laid over each other on one sheet: before thin and dashed where it differs, after solid,
 * and an arrow with its amount where each line moved most. Throws without pieces.
 */
export function layOutComparison(pieces: readonly ComparedPiece[], info: SheetInfo): Scene {
  if (pieces.length === 0) throw new RangeError('a sheet needs at least one piece')
  const inOrder = pieces.toSorted((a, b) => rank(a.after) - rank(b.after))
  return onOneSheet(
    inOrder.map((piece) => drawComparison(piece, info)),
    info,
  )
}

function drawComparison(compared: ComparedPiece, info: SheetInfo): PieceDrawing {
  const { before, after } = compared
  const title = after.name.charAt(0).toUpperCase() + after.name.slice(1)
  const arrows = drawnMoves(compared.moves)
  const lines = [...marksBefore(before, after), ...marksAfter(after), ...arrows.flatMap(drawArrow)]
  const labels = label(after, lines, arrows, info)
  const marks = [...lines, ...labels]
  const same = compared.moves.length === 0 ? 'no line moved' : `${compared.moves.length} lines moved`
  return { id: after.id, title, description: `${title}, ${info.version}: ${same}`, marks, box: boxOfInk(inkOf(marks)) }
}

function marksAfter(piece: Piece): Mark[] {
  return [
    ...piece.seams.map((seam): StrokeMark => ({ type: 'stroke', kind: 'line after', id: seam.id, paths: seam.parts })),
    ...piece.darts.map((dart): StrokeMark => {
      const paths = [polyline([dart.mouth[0], dart.point, dart.mouth[1]])]
      return { type: 'stroke', kind: 'line after', id: dart.id, paths }
    }),
    ...piece.lines.flatMap(drawLine),
    ...ticks(piece, 'notch'),
  ]
}

/** What was drawn otherwise before: what is the same is there once, as it is. */
function marksBefore(before: Piece, after: Piece): Mark[] {
  const same = new Set(marksKeys(after))
  const marks: StrokeMark[] = [
    ...before.seams.map(
      (seam): StrokeMark => ({ type: 'stroke', kind: 'line before', id: seam.id, paths: seam.parts }),
    ),
    ...before.darts.map((dart): StrokeMark => {
      const paths = [polyline([dart.mouth[0], dart.point, dart.mouth[1]])]
      return { type: 'stroke', kind: 'line before', id: dart.id, paths }
    }),
    ...before.lines.map(
      (line: Line): StrokeMark => ({ type: 'stroke', kind: 'line before', id: line.id, paths: [line.path] }),
    ),
    ...ticks(before, 'line before'),
  ]
  return marks.filter((mark) => !same.has(keyOf(mark)))
}

function marksKeys(piece: Piece): string[] {
  return marksAfter(piece).flatMap((mark) => (mark.type === 'stroke' ? [keyOf(mark)] : []))
}

/** Equal for marks that would be drawn alike, to a tenth of a micrometer. */
function keyOf(mark: StrokeMark): string {
  const round = ({ x, y }: Point) => `${Math.round(x * 1e4)},${Math.round(y * 1e4)}`
  return mark.paths.flatMap((path) => path.flatMap((c) => [c.p0, c.p1, c.p2, c.p3].map(round))).join(' ')
}

function ticks(piece: Piece, kind: 'notch' | 'line before'): StrokeMark[] {
  return piece.notches.map((notch) => {
    const seam = seamOf(piece, notch.seam)
    const paths = notchPoints(piece, notch).map((at, k) => {
      const out = rightOf(directionOnSeam(seam, notch.along + k * (notch.step ?? 0)))
      return polyline([along(at, out, -NOTCH_HALF), along(at, out, NOTCH_HALF)])
    })
    return { type: 'stroke', kind, id: notch.id, paths }
  })
}

interface Arrow {
  readonly id: string
  readonly tip: Point
  readonly direction: Point
  readonly amount: number
}

/** The moves that get an arrow, the largest first; of two that end in one corner the larger. */
function drawnMoves(moves: readonly DrawnMove[]): Arrow[] {
  const arrows: Arrow[] = []
  for (const { id, from, to } of [...moves].sort((a, b) => distance(b.from, b.to) - distance(a.from, a.to))) {
    const amount = distance(from, to)
    if (amount < LEAST_ARROW || arrows.some((arrow) => distance(arrow.tip, to) < SAME_MOVE)) continue
    arrows.push({ id, tip: to, direction: scale(subtract(to, from), 1 / amount), amount })
  }
  return arrows
}

function drawArrow({ id, tip, direction, amount }: Arrow): Mark[] {
  const tail = along(tip, direction, -Math.max(ARROW, amount))
  const base = along(tip, direction, -HEAD)
  const side = leftOf(direction)
  return [
    { type: 'stroke', kind: 'move', id: `${id} moved`, paths: [polyline([tail, tip])] },
    {
      type: 'fill',
      kind: 'move',
      id: `${id} arrow head`,
      outline: polyline([tip, along(base, side, HEAD_HALF), along(base, side, -HEAD_HALF), tip]),
    },
  ]
}

function label(piece: Piece, marks: readonly Mark[], arrows: readonly Arrow[], info: SheetInfo): TextMark[] {
  const outline = outlineOf(piece)
  const ink = inkOf(marks)
  const around = openRoom(ink)
  const amounts = arrows.flatMap(({ id, tip, direction, amount }) => {
    const mark = { kind: 'label' as const, id: `${id} amount`, text: amountLabel(amount, info), size: TEXT.name }
    const tail = along(tip, direction, -Math.max(ARROW, amount))
    // Beside the tail, else ahead of the tip: wherever it is clear of the lines.
    const set =
      textNear(around, mark, tail, scale(direction, -1), [1, 3, 6, 10]) ??
      textNear(around, mark, tip, direction, [2, 5, 9, 14])
    return set ? [set] : []
  })
  // The title block must keep clear of the amounts too.
  const room = openRoom([...ink, ...inkOf(amounts)], outline)
  const box = bounds(outline)
  const near = { x: (box.left + box.right) / 2, y: (box.bottom + box.top) / 2 }
  const lines: BlockLine[] = [
    { id: 'piece', text: piece.name.toUpperCase(), size: TEXT.title },
    { id: 'version', text: info.version, size: TEXT.body },
    ...(arrows.length === 0 ? [{ id: 'unmoved', text: 'no line moved', size: TEXT.body }] : []),
  ]
  const set = textBlock(room, lines, box, { id: 'title', angles: [0, Math.PI / 2], near, smallest: TEXT.smallest })
  if (set) return [...amounts, ...set]
  const { halfWidth } = blockBox(lines, near, 0)
  return [...amounts, ...setBlock(lines, { x: boxOfInk(ink).right + halfWidth + 5, y: near.y }, 0, 'title')]
}

/** In the file's unit; what a tape cannot show is said in mm. */
function amountLabel(mm: number, info: SheetInfo): string {
  const text = lengthLabel(mm, info.units)
  return /^0\D/.test(text) ? lengthLabel(mm, 'mm') : text
}
