import { contains } from '../geometry/contains.ts'
import type { Path } from '../geometry/path.ts'
import { between, type Point } from '../geometry/point.ts'
import type { Segment } from './ink.ts'
import { type InkRun, inkRuns } from './ink-runs.ts'

/** A rectangle at any angle: its center, the unit direction of its width, half its width and height, mm. */
export interface TurnedBox {
  readonly center: Point
  readonly along: Point
  readonly halfWidth: number
  readonly halfHeight: number
}

/** The free room on a piece or a page: knows the ink that is there and what was put down since. */
export interface Room {
  /** Whether the box, grown by `clearance` on every side, touches no ink and lies inside the outline. */
  fits(box: TurnedBox, clearance: number): boolean
  /** How many pieces of ink the box touches. */
  touches(box: TurnedBox, clearance: number): number
  /** From now on nothing else fits there. */
  take(box: TurnedBox): void
  /** The same room without its walls, for what finds no place between them. */
  readonly acrossWalls?: Room
}

/** A room with this ink, bounded by a closed path when one is given; `walls` are kept clear like ink, see `acrossWalls`. */
export function openRoom(ink: readonly Segment[], outline?: Path, walls: readonly Segment[] = []): Room {
  const taken: InkRun[] = []
  const runs = inkRuns(ink)
  const plain = roomOf(runs, taken, outline)
  return walls.length === 0 ? plain : { ...roomOf([...runs, ...inkRuns(walls)], taken, outline), acrossWalls: plain }
}

function roomOf(ink: readonly InkRun[], taken: InkRun[], outline: Path | undefined): Room {
  /** Where the last box that did not fit lay on ink: the next one is often tried beside it. */
  let last: InkRun | undefined
  const hits = (box: TurnedBox, clearance: number, first: boolean) => {
    // As far as any corner of the grown box can be from its center, level or upright.
    const most = box.halfWidth + box.halfHeight + 2 * clearance
    const { x, y } = box.center
    let count = 0
    for (const list of first && last ? [[last], ink, taken] : [ink, taken]) {
      for (const run of list) {
        const { box: around, half, segments } = run
        const reach = most + half
        if (around.left > x + reach || around.right < x - reach) continue
        if (around.bottom > y + reach || around.top < y - reach) continue
        for (const segment of segments) {
          if (!segmentTouches(segment, box, clearance)) continue
          count++
          if (!first) continue
          last = run
          return count
        }
      }
    }
    return count
  }
  return {
    // With no ink of the outline on the box, one point inside means that all of it is.
    fits: (box, clearance) => hits(box, clearance, true) === 0 && (!outline || contains(outline, box.center)),
    touches: (box, clearance) => hits(box, clearance, false),
    take: (box) => taken.push(...inkRuns(boxSegments(box))),
  }
}

/** The corners, anticlockwise from the lower left as the box reads. */
function cornersOf(box: TurnedBox): [Point, Point, Point, Point] {
  const { center, along, halfWidth: w, halfHeight: h } = box
  const corner = (a: number, b: number) => ({
    x: center.x + a * w * along.x - b * h * along.y,
    y: center.y + a * w * along.y + b * h * along.x,
  })
  return [corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)]
}

/** Lower than any text, mm: between two of a box's segments nothing fits. */
const HATCH = 2.5

/** The edges of a box and lines along it so near to each other that a small box inside a large one is noticed. */
export function boxSegments(box: TurnedBox): Segment[] {
  const [a, b, c, d] = cornersOf(box)
  const rows = Math.ceil((2 * box.halfHeight) / HATCH)
  const along = Array.from({ length: rows + 1 }, (_, k) => edge(between(a, d, k / rows), between(b, c, k / rows)))
  return [...along, edge(a, d), edge(b, c)]
}

function edge(a: Point, b: Point): Segment {
  return { a, b, half: 0 }
}

/** Whether the segment with its pen comes within `clearance` of the box. */
export function segmentTouches(segment: Segment, box: TurnedBox, clearance: number): boolean {
  const w = box.halfWidth + clearance + segment.half
  const h = box.halfHeight + clearance + segment.half
  const { x: cx, y: cy } = box.center
  const reach = w + h
  const ax = segment.a.x - cx
  const bx = segment.b.x - cx
  if ((ax > reach && bx > reach) || (ax < -reach && bx < -reach)) return false
  const ay = segment.a.y - cy
  const by = segment.b.y - cy
  if ((ay > reach && by > reach) || (ay < -reach && by < -reach)) return false
  const { x: ux, y: uy } = box.along
  const px = ax * ux + ay * uy
  const py = ay * ux - ax * uy
  const dx = bx * ux + by * uy - px
  const dy = by * ux - bx * uy - py
  // Liang–Barsky, written out because it runs a million times: the part of the segment inside both slabs.
  let low = 0
  let high = 1
  if (dx === 0) {
    if (Math.abs(px) > w) return false
  } else {
    const near = (dx > 0 ? -w - px : w - px) / dx
    const far = (dx > 0 ? w - px : -w - px) / dx
    if (near > low) low = near
    if (far < high) high = far
  }
  if (dy === 0) return Math.abs(py) <= h && low <= high
  const near = (dy > 0 ? -h - py : h - py) / dy
  const far = (dy > 0 ? h - py : -h - py) / dy
  return Math.max(low, near) <= Math.min(high, far)
}
