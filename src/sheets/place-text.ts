import type { Box } from '../geometry/bounds.ts'
import { add, angleOf, dot, heading, leftOf, type Point, rotateAbout, scale } from '../geometry/point.ts'
import { TEXT_CLEARANCE } from './house-style.ts'
import { nearestFirst } from './nearest-first.ts'
import type { Room, TurnedBox } from './room.ts'
import type { MarkKind, TextMark } from './scene.ts'
import { ASCENT, DESCENT, textWidth } from './text-width.ts'
import type { BlockLine } from './title-block.ts'

/** The line of text whose box has this center, reading along this direction. */
export function centeredText(
  kind: MarkKind,
  id: string,
  text: string,
  size: number,
  center: Point,
  angle: number,
): TextMark {
  const rise = ((ASCENT - DESCENT) / 2) * size
  const at = add(center, scale(leftOf(heading(angle)), -rise))
  return { type: 'text', kind, id, text, at, angle, size }
}

function lineBox(text: string, size: number, center: Point, angle: number): TurnedBox {
  return {
    center,
    along: heading(angle),
    halfWidth: textWidth(text, size) / 2,
    halfHeight: ((ASCENT + DESCENT) / 2) * size,
  }
}

/** A direction turned round where it would make text stand on its head. */
export function readable(direction: Point): number {
  const angle = angleOf(direction)
  // Straight down reads from the right, as straight up does; a hair of slack keeps verticals alike.
  if (angle > Math.PI / 2 + 1e-3) return angle - Math.PI
  if (angle <= -Math.PI / 2 + 1e-3) return angle + Math.PI
  return angle
}

/** Fractions of a line at which its name is tried, the middle of a side first: crossings gather at the middle. */
const PLACES_ON_LINE = [0.25, 0.75, 0.5, 0.35, 0.65, 0.15, 0.85, 0.42, 0.58, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9]

export interface BesideOptions {
  /** Distances of the text from the line that are tried, mm. */
  readonly gaps: readonly number[]
  /** Only on this side of the line's direction; both when absent. */
  readonly side?: 'left' | 'right'
  readonly fractions?: readonly number[]
}

/** The text set along a line, clear of everything, or undefined where there is no room; takes the room it uses. */
export function textBeside(
  room: Room,
  mark: { readonly kind: MarkKind; readonly id: string; readonly text: string; readonly size: number },
  place: (fraction: number) => { at: Point; direction: Point },
  options: BesideOptions,
): TextMark | undefined {
  for (const gap of options.gaps) {
    for (const fraction of options.fractions ?? PLACES_ON_LINE) {
      const { at, direction } = place(fraction)
      const angle = readable(direction)
      const half = ((ASCENT + DESCENT) / 2) * mark.size
      const left = leftOf(direction)
      const up = leftOf(heading(angle))
      const sides = options.side ? [options.side === 'left' ? left : scale(left, -1)] : [up, scale(up, -1)]
      for (const side of sides) {
        const center = add(at, scale(side, half + gap))
        const box = lineBox(mark.text, mark.size, center, angle)
        if (!room.fits(box, TEXT_CLEARANCE / 2)) continue
        room.take(box)
        return centeredText(mark.kind, mark.id, mark.text, mark.size, center, angle)
      }
    }
  }
  return room.acrossWalls && textBeside(room.acrossWalls, mark, place, options)
}

/** The text near a point, on the side that `toward` looks to, level or along `toward`; undefined without room. */
export function textNear(
  room: Room,
  mark: { readonly kind: MarkKind; readonly id: string; readonly text: string; readonly size: number },
  at: Point,
  toward: Point,
  distances: readonly number[],
): TextMark | undefined {
  for (const distance of distances) {
    for (const turn of [0, 0.4, -0.4, 0.8, -0.8, 1.2, -1.2]) {
      const direction = rotateAbout(toward, { x: 0, y: 0 }, turn)
      for (const angle of [0, readable(direction)]) {
        const trial = lineBox(mark.text, mark.size, at, angle)
        const across = leftOf(trial.along)
        const support =
          trial.halfWidth * Math.abs(dot(trial.along, direction)) + trial.halfHeight * Math.abs(dot(across, direction))
        const box = { ...trial, center: add(at, scale(direction, distance + support)) }
        if (!room.fits(box, TEXT_CLEARANCE / 2)) continue
        room.take(box)
        return centeredText(mark.kind, mark.id, mark.text, mark.size, box.center, angle)
      }
    }
  }
  return room.acrossWalls && textNear(room.acrossWalls, mark, at, toward, distances)
}

const LEADING = 1.3

/** Steps of the grid on which a block is tried where nothing else is asked, mm. */
const GRID = 9
/** Rings about the wished place in which they are sorted, mm²: of a few dozen each. */
const RING = 2500

export interface BlockOptions {
  /** Start of the ids of its lines. */
  readonly id: string
  /** Directions of reading that may be used, best first. */
  readonly angles: readonly number[]
  /** Where it should be if it can. */
  readonly near: Point
  /** The smallest body text, em in mm. */
  readonly smallest: number
  /** Steps of the grid on which it is tried, mm; 9 when absent. */
  readonly step?: number
}

/**
 * A block of centered lines where it fits inside a box of the sheet, nearest the wished place, as large as it
 * can be; undefined where even the smallest does not fit.
 */
export function textBlock(
  room: Room,
  lines: readonly BlockLine[],
  within: Box,
  options: BlockOptions,
): TextMark[] | undefined {
  const bodySize = Math.min(...lines.map((l) => l.size))
  const centers = gridOf(within, options.step ?? GRID, options.near)
  for (const factor of [1, 0.86, 0.75, options.smallest / bodySize]) {
    if (factor * bodySize < options.smallest - 1e-9) continue
    const scaled = lines.map((l) => ({ ...l, size: l.size * factor }))
    const { halfWidth, halfHeight } = blockBox(scaled, options.near, 0)
    for (const clearance of [6, TEXT_CLEARANCE]) {
      for (const angle of options.angles) {
        const along = heading(angle)
        for (const center of centers) {
          const box = { center, along, halfWidth, halfHeight }
          if (!room.fits(box, clearance)) continue
          room.take(box)
          return setBlock(scaled, center, angle, options.id)
        }
      }
    }
  }
  return room.acrossWalls && textBlock(room.acrossWalls, lines, within, options)
}

/** The box of a block of centered lines. */
export function blockBox(lines: readonly BlockLine[], center: Point, angle: number): TurnedBox {
  const height = lines.reduce((sum, l) => sum + l.size * LEADING, 0)
  const width = Math.max(...lines.map((l) => textWidth(l.text, l.size)))
  return { center, along: heading(angle), halfWidth: width / 2, halfHeight: height / 2 }
}

/** The lines of a block set about its center. */
export function setBlock(lines: readonly BlockLine[], center: Point, angle: number, id: string): TextMark[] {
  const down = scale(leftOf(heading(angle)), -1)
  let top = -blockBox(lines, center, angle).halfHeight
  return lines.map((l) => {
    const middle = top + (l.size * LEADING) / 2
    top += l.size * LEADING
    return centeredText('label', `${id} ${l.id}`, l.text, l.size, add(center, scale(down, middle)), angle)
  })
}

/** The places of the grid, those nearest a point first. */
function gridOf(box: Box, step: number, near: Point): Iterable<Point> {
  const points: Point[] = []
  for (let x = box.left + step; x < box.right; x += step) {
    for (let y = box.bottom + step; y < box.top; y += step) points.push({ x, y })
  }
  return nearestFirst(points, (p) => away(p, near), RING)
}

function away(a: Point, b: Point): number {
  return (a.x - b.x) * (a.x - b.x) + (a.y - b.y) * (a.y - b.y)
}
