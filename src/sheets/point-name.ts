import { polyline } from '../geometry/path.ts'
import { add, along, angleOf, distance, heading, type Point, scale } from '../geometry/point.ts'
import { TEXT_CLEARANCE } from './house-style.ts'
import { type Segment, textBox } from './ink.ts'
import { centeredText } from './place-text.ts'
import { openRoom, type Room, type TurnedBox } from './room.ts'
import type { Mark } from './scene.ts'

/** How far from its mark a name is tried, mm, and in how many directions. */
const GAPS = [0.9, 1.5, 2.2, 3, 4, 5.5, 7, 9, 11.5, 14, 17, 21]
const DIRECTIONS = 24

/** Farther from its mark a name is joined to it, mm. */
const BESIDE = 2

/** A leader shorter than this tells nothing, mm. */
const SHORTEST = 1

/** Farther away no name is sought, mm. */
const MOST = 26

/** What a leader that crosses a line inside the piece costs, mm of distance. */
const CROSSING = 5

/** Half of a leader's breadth, mm. */
const HALF = 0.1

/** Where a leader may meet the side of a name, from its middle, as shares of half its width. */
const SIDE_ENDS = [-0.7, -0.4, 0, 0.4, 0.7]

/** Where names can stand, and what a leader must not run over or had better not. */
export interface NameRooms {
  /** Free of all ink. */
  readonly free: Room
  /** Edges, notches, darts and text. */
  readonly closed: Room
  /** Lines inside the piece. */
  readonly crossed: Room
}

/** The rooms of a piece: all its ink, the part that leaders must not cross, the part that they may. */
export function nameRooms(free: Room, edges: readonly Segment[], lines: readonly Segment[]): NameRooms {
  return { free, closed: openRoom(edges), crossed: openRoom(lines) }
}

/** From now on no name and no leader is set there. */
export function takeRoom({ free, closed }: NameRooms, box: TurnedBox): void {
  free.take(box)
  closed.take(box)
}

export interface PointName {
  /** Unique on the piece. */
  readonly id: string
  readonly text: string
  /** Em, mm. */
  readonly size: number
  /** The mark: its point, or the ends of its ticks. */
  readonly anchors: readonly Point[]
  /** Clear space between the mark and a leader, mm. */
  readonly clear: number
  /** The farthest that it may be from its mark, a crossing counted as 5 mm; 26 when absent. */
  readonly most?: number
}

interface Placed {
  readonly box: TurnedBox
  readonly leader: readonly [from: Point, to: Point] | undefined
}

/** A name as near to its mark as there is room, level, joined to it by a thin line where it is not beside it; none without room. */
export function pointName(rooms: NameRooms, name: PointName): Mark[] {
  const placed = nearest(rooms, name)
  if (!placed) return []
  const { box, leader } = placed
  takeRoom(rooms, box)
  const text = centeredText('label', `${name.id} name`, name.text, name.size, box.center, 0)
  if (!leader) return [text]
  takeRoom(rooms, leaderBox(...leader))
  return [{ type: 'stroke', kind: 'label', id: `${name.id} leader`, paths: [polyline(leader)], weight: 0.15 }, text]
}

function nearest(rooms: NameRooms, { text, size, anchors, clear, most = MOST }: PointName): Placed | undefined {
  const level = textBox(centeredText('label', '', text, size, { x: 0, y: 0 }, 0))
  let best: Placed | undefined
  let least = most
  for (const gap of GAPS) {
    if (gap >= least) break
    for (const anchor of anchors) {
      for (let k = 0; k < DIRECTIONS; k++) {
        const direction = heading((k / DIRECTIONS) * 2 * Math.PI)
        const support = level.halfWidth * Math.abs(direction.x) + level.halfHeight * Math.abs(direction.y)
        const box = { ...level, center: add(anchor, scale(direction, gap + support)) }
        if (!rooms.free.fits(box, TEXT_CLEARANCE / 2)) continue
        for (const end of endsOn(box, anchor)) {
          const away = distance(anchor, end)
          if (away >= least) continue
          const from = along(anchor, heading(angleOf({ x: end.x - anchor.x, y: end.y - anchor.y })), clear)
          const line = leaderBox(from, end)
          if (away > clear && !rooms.closed.fits(line, HALF)) continue
          const cost = away + CROSSING * rooms.crossed.touches(line, 0)
          if (cost >= least) continue
          least = cost
          best = { box, leader: cost > Math.max(BESIDE, clear + SHORTEST) ? [from, end] : undefined }
        }
      }
    }
  }
  return best
}

/** Where a leader may end on a level box: at the point nearest to its mark, or farther along that side. */
function endsOn({ center, halfWidth, halfHeight }: TurnedBox, { x, y }: Point): Point[] {
  const within = (value: number, middle: number, half: number) =>
    Math.min(Math.max(value, middle - half), middle + half)
  const end = { x: within(x, center.x, halfWidth), y: within(y, center.y, halfHeight) }
  const more = Math.abs(y - center.y) > halfHeight ? SIDE_ENDS : []
  return [end, ...more.map((shift) => ({ x: center.x + shift * halfWidth, y: end.y }))]
}

function leaderBox(from: Point, to: Point): TurnedBox {
  return {
    center: { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 },
    along: heading(angleOf({ x: to.x - from.x, y: to.y - from.y })),
    halfWidth: distance(from, to) / 2,
    halfHeight: HALF,
  }
}
