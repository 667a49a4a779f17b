import type { Box } from '../geometry/bounds.ts'
import { movePath, polyline } from '../geometry/path.ts'
import { distance, type Point } from '../geometry/point.ts'
import { inkOf, textBox } from './ink.ts'
import { centeredText } from './place-text.ts'
import { openRoom, type Room } from './room.ts'
import { type Mark, placedMarks } from './scene.ts'
import { textWidth } from './text-width.ts'
import { type TileGrid, tileName, windowOf } from './tile-grid.ts'

/** Pens of the small picture: pieces stand out from the windows. */
const MAP_PIECE = 0.5
const MAP_GRID = 0.12

/** How far from the middle of its page toward the sides a name is tried, and how much smaller. */
const SHARES = [0, -0.2, 0.2, -0.4, 0.4, -0.6, 0.6, -0.8, 0.8, -1, 1]
const SMALLER = [1, 0.85, 0.7, 0.55]

/**
 * The pieces under the pages, small, in the middle of the box: each page with its name and its number in the order of
 * joining; `first` is the number of the first.
 */
export function mapPicture(grid: TileGrid, box: Box, first: number): Mark[] {
  const last = windowOf(grid, grid.columns - 1, 0)
  const scale = mapScale(grid, box)
  const left = (box.left + box.right - last.right * scale) / 2
  const foot = (box.bottom + box.top - last.top * scale) / 2
  const place = (p: Point) => ({ x: left + p.x * scale, y: foot + p.y * scale })
  const pieces = mapPieces(grid, place)
  const room = openRoom(inkOf(pieces))
  const cells: Mark[] = []
  const names: Mark[] = []
  const drawn = new Set<string>()
  const side = (id: string, a: Point, b: Point) => {
    // Neighbours share a side; drawn twice its dashes would close up.
    if (drawn.has(id)) return
    drawn.add(id)
    cells.push({
      type: 'stroke',
      kind: 'page frame',
      id: `map side ${id}`,
      paths: [polyline([place(a), place(b)])],
      weight: MAP_GRID,
    })
  }
  let order = first - 1
  for (let row = 0; row < grid.rows; row++) {
    for (let column = 0; column < grid.columns; column++) {
      if (!grid.inked[row]?.[column]) continue
      order++
      const { left: x0, bottom: y0, right: x1, top: y1 } = coreOf(grid, column, row)
      side(`across ${column} ${row}`, { x: x0, y: y1 }, { x: x1, y: y1 })
      side(`across ${column} ${row + 1}`, { x: x0, y: y0 }, { x: x1, y: y0 })
      side(`up ${column} ${row}`, { x: x0, y: y0 }, { x: x0, y: y1 })
      side(`up ${column + 1} ${row}`, { x: x1, y: y0 }, { x: x1, y: y1 })
      names.push(cellName(room, tileName(column, row), order, place({ x: x0, y: y0 }), place({ x: x1, y: y1 })))
    }
  }
  return [...cells, ...pieces, ...names]
}

/** How small the picture must be for this box. */
function mapScale(grid: TileGrid, box: Box): number {
  const last = windowOf(grid, grid.columns - 1, 0)
  return Math.min((box.right - box.left) / last.right, (box.top - box.bottom) / last.top)
}

function mapPieces(grid: TileGrid, place: (p: Point) => Point): Mark[] {
  return grid.placed.flatMap((placed) =>
    placedMarks(placed).flatMap((mark) => {
      if (mark.type !== 'stroke' || (mark.kind !== 'cutting line' && mark.kind !== 'fold line')) return []
      const id = `map ${placed.drawing.id} ${mark.id}`
      const paths = mark.paths.map((path) => movePath(path, place))
      return [
        { type: 'stroke', kind: 'page frame', id, paths, closed: mark.closed ?? false, weight: MAP_PIECE } as const,
      ]
    }),
  )
}

/** The name of a page and its number, in its cell where no line of a piece runs through it. */
function cellName(room: Room, name: string, order: number, low: Point, high: Point): Mark {
  const largest = Math.min(6, (high.x - low.x) * 0.2, (high.y - low.y) * 0.3)
  const text = `${name} · ${order}`
  const middle = { x: (low.x + high.x) / 2, y: (low.y + high.y) / 2 }
  let wished: Mark | undefined
  for (const factor of SMALLER) {
    const size = factor * largest
    const half = { x: textWidth(text, size) / 2 + 0.8, y: size * 0.5 + 0.6 }
    const places = SHARES.flatMap((v) => SHARES.map((u) => ({ u, v })))
      .map(({ u, v }) => ({
        x: middle.x + u * ((high.x - low.x) / 2 - half.x),
        y: middle.y + v * ((high.y - low.y) / 2 - half.y),
      }))
      .sort((a, b) => distance(a, middle) - distance(b, middle))
    for (const place of places) {
      const mark = centeredText('page frame', `map name ${name}`, text, size, place, 0)
      if (room.fits(textBox(mark), 0.4)) return mark
      wished ??= mark
    }
  }
  return wished as Mark
}

/** The part of a window that is seen when the pages lie over each other. */
function coreOf(grid: TileGrid, column: number, row: number): Box {
  const box = windowOf(grid, column, row)
  const right = column + 1 < grid.columns ? box.right - grid.overlap : box.right
  const bottom = row + 1 < grid.rows ? box.bottom + grid.overlap : box.bottom
  return { ...box, right, bottom }
}
