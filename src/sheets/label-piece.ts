import { type Box, bounds } from '../geometry/bounds.ts'
import type { Path } from '../geometry/path.ts'
import { directionAlong, pathLength, pointAlong } from '../geometry/path-length.ts'
import { leftOf, type Point } from '../geometry/point.ts'
import { outlineOf } from '../pattern/outline.ts'
import type { Piece, Seam } from '../pattern/piece.ts'
import { directionOnSeam, landmarkPoint, pointOnSeam, seamLength, seamOf } from '../pattern/seam.ts'
import type { CapEase } from './cap-ease.ts'
import { isFold, kindOfLine } from './draw-piece.ts'
import { TEXT, type TextSizes } from './house-style.ts'
import { boxOfInk, keptInkOf, type Segment } from './ink.ts'
import { blockBox, readable, setBlock, textBeside, textBlock, textNear } from './place-text.ts'
import { openRoom, type Room } from './room.ts'
import type { Mark, SheetInfo, TextMark } from './scene.ts'
import { capWalkBlock, titleBlock } from './title-block.ts'

export interface LabelOptions {
  /** Lines in the piece's own frame, such as page edges, that text keeps clear of wherever it finds room between them. */
  readonly walls?: readonly Segment[]
  /** Sizes of the letters; as on paper when absent. */
  readonly sizes?: TextSizes
}

/**
 * All text of a piece: the title block inside the stitching line, turned to the grain where the piece is narrow;
 * names of lines, notches, darts, seams and landmarks beside them. Nothing touches a mark or other text. Names
 * that find no room are left out; the title block then goes beside the piece, never away.
 */
export function labelPiece(
  piece: Piece,
  marks: readonly Mark[],
  ease: readonly CapEase[],
  info: SheetInfo,
  { walls = [], sizes = TEXT }: LabelOptions = {},
): TextMark[] {
  const outline = outlineOf(piece)
  const ink = keptInkOf(marks)
  const room = openRoom(ink, outline, walls)
  const inside = bounds(outline)
  // What names a place goes first: it has the least choice.
  return [
    ...notchNames(piece, room, sizes),
    ...dartNames(piece, room, sizes),
    ...blocks(piece, room, inside, boxOfInk(ink), ease, info, sizes),
    ...lineNames(piece, room, sizes),
    ...seamNames(piece, room, sizes),
    ...landmarkNames(piece, room, inside, sizes),
  ]
}

/** The title in the middle and the walk of a cap above it; beside the piece where the smallest does not fit inside. */
function blocks(
  piece: Piece,
  room: Room,
  inside: Box,
  all: Box,
  ease: readonly CapEase[],
  info: SheetInfo,
  sizes: TextSizes,
): TextMark[] {
  const middle = middleOf(inside)
  const upper = { x: middle.x, y: (middle.y + inside.top) / 2 }
  const texts = [
    { id: 'title', lines: titleBlock(piece, ease, info, sizes), near: middle },
    { id: 'walk', lines: capWalkBlock(ease, info, sizes), near: upper },
  ]
  return texts.flatMap(({ id, lines, near }) => {
    if (lines.length === 0) return []
    const set = textBlock(room, lines, inside, { id, angles: [0, grainAngle(piece)], near, smallest: sizes.smallest })
    if (set) return set
    const { halfWidth } = blockBox(lines, near, 0)
    return setBlock(lines, { x: all.right + halfWidth + 5, y: near.y }, 0, id)
  })
}

/** The direction that words read in along the grain; straight up on a piece without one. */
function grainAngle(piece: Piece): number {
  const grain = piece.lines.find((line) => kindOfLine(line.id) === 'grain line')
  return grain ? readable(directionAlong(grain.path, 0)) : Math.PI / 2
}

function alongPath(path: Path): (fraction: number) => { at: Point; direction: Point } {
  const length = pathLength(path)
  return (f) => ({ at: pointAlong(path, f * length), direction: directionAlong(path, f * length) })
}

/** Names of the lines inside a piece, along them. */
function lineNames(piece: Piece, room: Room, sizes: TextSizes): TextMark[] {
  return piece.lines.flatMap((line) => {
    if (kindOfLine(line.id) === 'ease stitching') return []
    const text = line.id === 'cap line' ? 'cap line, two thirds up' : line.id
    return some(textBeside(room, label(`${line.id} name`, text, sizes.name), alongPath(line.path), { gaps: [0.9, 2] }))
  })
}

/** Names of the notches, inside the piece beside each. */
function notchNames(piece: Piece, room: Room, sizes: TextSizes): TextMark[] {
  return piece.notches.flatMap((notch) => {
    const seam = seamOf(piece, notch.seam)
    const middle = notch.along + ((notch.marks - 1) / 2) * (notch.step ?? 0)
    const at = pointOnSeam(seam, middle)
    const inward = leftOf(directionOnSeam(seam, middle))
    return some(textNear(room, label(`${notch.id} name`, notch.id, sizes.small), at, inward, [6, 9, 13, 18, 25]))
  })
}

function dartNames(piece: Piece, room: Room, sizes: TextSizes): TextMark[] {
  return piece.darts.flatMap((dart) => {
    const legs = dart.mouth.map((m) => (f: number) => ({
      at: { x: m.x + f * (dart.point.x - m.x), y: m.y + f * (dart.point.y - m.y) },
      direction: { x: dart.point.x - m.x, y: dart.point.y - m.y },
    }))
    for (const leg of legs) {
      const unit = (f: number) => {
        const { at, direction } = leg(f)
        const size = Math.hypot(direction.x, direction.y)
        return { at, direction: { x: direction.x / size, y: direction.y / size } }
      }
      const mark = textBeside(room, label(`${dart.id} name`, dart.id, sizes.small), unit, {
        gaps: [0.9, 2],
        fractions: [0.5, 0.4, 0.6, 0.3, 0.7],
      })
      if (mark) return [mark]
    }
    return []
  })
}

function seamNames(piece: Piece, room: Room, sizes: TextSizes): TextMark[] {
  return piece.seams.flatMap((seam) => {
    const text = isFold(piece, seam) ? `${seam.id}: place on the fold` : seam.id
    const mark = label(`${seam.id} name`, text, sizes.small)
    return some(
      textBeside(room, mark, alongSeam(seam), {
        gaps: [1.5, 3, 5, 8],
        side: 'left',
        fractions: [0.5, 0.4, 0.6, 0.3, 0.7, 0.22, 0.78, 0.15, 0.85],
      }),
    )
  })
}

function alongSeam(seam: Seam): (fraction: number) => { at: Point; direction: Point } {
  const length = seamLength(seam)
  return (f) => ({ at: pointOnSeam(seam, f * length), direction: directionOnSeam(seam, f * length) })
}

/** Names of the landmarks that no notch, line or seam names already. */
function landmarkNames(piece: Piece, room: Room, inside: Box, sizes: TextSizes): TextMark[] {
  const named = new Set([...piece.notches, ...piece.lines, ...piece.seams].map((x) => x.id))
  const center = middleOf(inside)
  return piece.landmarks.flatMap((landmark) => {
    if (named.has(landmark.id)) return []
    const at = landmarkPoint(piece, landmark)
    // The underarm is on both halves of a cap.
    const id = 'seam' in landmark ? `${landmark.id} of ${landmark.seam} name` : `${landmark.id} name`
    const size = Math.hypot(center.x - at.x, center.y - at.y) || 1
    const inward =
      'at' in landmark
        ? { x: (center.x - at.x) / size, y: (center.y - at.y) / size }
        : leftOf(directionOnSeam(seamOf(piece, landmark.seam), landmark.along))
    return some(textNear(room, label(id, landmark.id, sizes.small), at, inward, [4, 6, 9, 13, 18]))
  })
}

function middleOf(box: Box): Point {
  return { x: (box.left + box.right) / 2, y: (box.bottom + box.top) / 2 }
}

function label(id: string, text: string, size: number) {
  return { kind: 'label', id, text, size } as const
}

function some(mark: TextMark | undefined): TextMark[] {
  return mark ? [mark] : []
}
