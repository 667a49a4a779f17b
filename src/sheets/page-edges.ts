import { cubic } from '../geometry/cubic.ts'
import { type Path, polyline } from '../geometry/path.ts'
import type { Point } from '../geometry/point.ts'
import { type Segment, textBox } from './ink.ts'
import { centeredText } from './place-text.ts'
import { openRoom, type Room } from './room.ts'
import type { Mark } from './scene.ts'
import { type TileGrid, tileName, windowOf } from './tile-grid.ts'

const RING = 2.2
const ARM = 3.6
const NAME_SIZE = 3

/** Magic number of a quarter circle as a cubic. */
const QUARTER = 0.5522847498

/**
 * What neighbouring pages share, by tile name, in the grid's absolute frame: the line to which the next page is
 * laid, crosses in rings at the same places on both pages, and at each edge the name of the page beyond. They
 * keep clear of the pattern where there is room for it.
 */
export function pageEdges(grid: TileGrid, ink: readonly Segment[]): ReadonlyMap<string, Mark[]> {
  const found = new Map<string, Mark[]>()
  const put = (tile: string, ...marks: Mark[]) => found.set(tile, [...(found.get(tile) ?? []), ...marks])
  const room = openRoom(ink)
  const printed = (column: number, row: number) => grid.inked[row]?.[column] ?? false
  for (let row = 0; row < grid.rows; row++) {
    for (let column = 0; column < grid.columns; column++) {
      if (!printed(column, row)) continue
      const here = tileName(column, row)
      const box = windowOf(grid, column, row)
      if (printed(column + 1, row)) {
        const there = tileName(column + 1, row)
        const x = box.right - grid.overlap
        put(here, lapLine(`lap ${there}`, { x, y: box.bottom }, { x, y: box.top }))
        const places = placesAlong(box.bottom + grid.overlap, box.top - grid.overlap)
        const at = (y: number) => ({ x: box.right - grid.overlap / 2, y })
        const crosses = crossesAt(room, places, at, `${here} ${there}`)
        put(here, ...crosses, edgeName(room, `${there} →`, places.names, at, Math.PI / 2))
        put(there, ...crosses, edgeName(room, `← ${here}`, places.names, at, Math.PI / 2))
      }
      if (printed(column, row + 1)) {
        const there = tileName(column, row + 1)
        const y = box.bottom + grid.overlap
        put(here, lapLine(`lap ${there}`, { x: box.left, y }, { x: box.right, y }))
        const places = placesAlong(box.left + grid.overlap, box.right - grid.overlap)
        const at = (x: number) => ({ x, y: box.bottom + grid.overlap / 2 })
        const crosses = crossesAt(room, places, at, `${here} ${there}`)
        put(here, ...crosses, edgeName(room, `↓ ${there}`, places.names, at, 0))
        put(there, ...crosses, edgeName(room, `↑ ${here}`, places.names, at, 0))
      }
    }
  }
  return found
}

function lapLine(id: string, a: Point, b: Point): Mark {
  return { type: 'stroke', kind: 'page frame', id, paths: [polyline([a, b])], dash: [3, 2] }
}

/** Where along an edge the two crosses and the names are tried, the wished place first. */
interface Places {
  readonly crosses: readonly (readonly number[])[]
  readonly names: readonly number[]
}

function placesAlong(from: number, to: number): Places {
  const around = (share: number, reach: number) => {
    const wished = from + share * (to - from)
    const tries = [wished]
    for (let d = 3; d <= reach * (to - from); d += 3) tries.push(wished - d, wished + d)
    return tries
  }
  return { crosses: [around(0.2, 0.16), around(0.8, 0.16)], names: around(0.5, 0.45) }
}

function crossesAt(room: Room, places: Places, at: (along: number) => Point, edge: string): Mark[] {
  return places.crosses.map((tries, k) => {
    const box = (along: number) => ({ center: at(along), along: { x: 1, y: 0 }, halfWidth: ARM, halfHeight: ARM })
    const place = tries.find((along) => room.fits(box(along), 0.5)) ?? roomiest(room, tries, box)
    room.take(box(place))
    return { type: 'stroke', kind: 'page frame', id: `cross ${edge} ${k + 1}`, paths: ringedCross(at(place)) } as const
  })
}

function edgeName(
  room: Room,
  text: string,
  tries: readonly number[],
  at: (along: number) => Point,
  angle: number,
): Mark {
  const name = (along: number) => centeredText('page frame', `edge ${text}`, text, NAME_SIZE, at(along), angle)
  const place =
    tries.find((along) => room.fits(textBox(name(along)), 1)) ?? roomiest(room, tries, (along) => textBox(name(along)))
  const mark = name(place)
  room.take(textBox(mark))
  return mark
}

/** Of places that all touch ink, the one that touches least. */
function roomiest<T>(room: Room, tries: readonly T[], box: (t: T) => ReturnType<typeof textBox>): T {
  const touches = tries.map((t) => room.touches(box(t), 0.5))
  return tries[touches.indexOf(Math.min(...touches))] as T
}

function ringedCross(center: Point): Path[] {
  const { x, y } = center
  const at = (dx: number, dy: number) => ({ x: x + dx * RING, y: y + dy * RING })
  const q = QUARTER
  return [
    [
      cubic(at(1, 0), at(1, q), at(q, 1), at(0, 1)),
      cubic(at(0, 1), at(-q, 1), at(-1, q), at(-1, 0)),
      cubic(at(-1, 0), at(-1, -q), at(-q, -1), at(0, -1)),
      cubic(at(0, -1), at(q, -1), at(1, -q), at(1, 0)),
    ],
    polyline([
      { x: x - ARM, y },
      { x: x + ARM, y },
    ]),
    polyline([
      { x, y: y - ARM },
      { x, y: y + ARM },
    ]),
  ]
}
