import { distance } from '../geometry/point.ts'
import type { Segment } from './ink.ts'
import type { PieceDrawing, PlacedDrawing } from './scene.ts'
import { overlaps, type Silhouette, SLICE, silhouetteOf } from './silhouette.ts'

/** Step of the search, mm. */
const STEP = 12

/** Rounds of moving each piece in turn; later ones hardly ever gain a page. */
const ROUNDS = 2

/** The windows that the pieces lie under, every `stepX` and `stepY` mm from the upper left. */
export interface Windows {
  readonly columns: number
  readonly rows: number
  readonly stepX: number
  readonly stepY: number
  /** Size of the whole, mm; a little more than the steps: the last windows reach further. */
  readonly width: number
  readonly height: number
  /** Clear space at the outer edge, mm. */
  readonly padding: number
}

/**
 * Moves pieces, upright as they are, so that together they lie under fewer windows, never nearer to each other
 * than the gap between pieces. A search by hand's rule (one piece at a time, to the nearest place that saves
 * most), not the best of all nestings. The same input gives the same places.
 */
export function nest(
  placed: readonly PlacedDrawing[],
  ink: ReadonlyMap<PieceDrawing, readonly Segment[]>,
  windows: Windows,
): PlacedDrawing[] {
  const shapes = placed.map(({ drawing }) => silhouetteOf(ink.get(drawing) ?? []))
  const places = placed.map((p) => p.at)
  for (let round = 0; round < ROUNDS; round++) {
    let moved = false
    for (let k = 0; k < places.length; k++) {
      const better = betterPlace(k, shapes, places, windows, placed[k] as PlacedDrawing)
      if (!better) continue
      places[k] = better
      moved = true
    }
    if (!moved) break
  }
  return placed.map(({ drawing }, k) => ({ drawing, at: places[k] as PlacedDrawing['at'] }))
}

type Place = PlacedDrawing['at']

function betterPlace(
  k: number,
  shapes: readonly Silhouette[],
  places: readonly Place[],
  windows: Windows,
  piece: PlacedDrawing,
): Place | undefined {
  const taken = new Array<boolean>(windows.columns * windows.rows).fill(false)
  for (const [n, at] of places.entries()) {
    if (n === k) continue
    const other = shapes[n] as Silhouette
    for (const { row, left, right } of bandsOf(other, at.y, windows)) {
      const last = lastColumn(right + at.x, windows)
      for (let column = firstColumn(left + at.x, windows); column <= last; column++) {
        taken[row * windows.columns + column] = true
      }
    }
  }
  const shape = shapes[k] as Silhouette
  const here = places[k] as Place
  /** Windows that nothing else lies under; counted no further than one above `most`. */
  const cost = (bands: readonly Band[], x: number, most: number) => {
    let fresh = 0
    for (const { row, left, right } of bands) {
      const start = row * windows.columns
      const last = lastColumn(right + x, windows)
      for (let column = firstColumn(left + x, windows); column <= last; column++) {
        if (!taken[start + column] && ++fresh > most) return fresh
      }
    }
    return fresh
  }
  const { box } = piece.drawing
  const { padding } = windows
  let best: Place | undefined
  let least = cost(bandsOf(shape, here.y, windows), here.x, Number.POSITIVE_INFINITY)
  let nearest = 0
  for (let y = padding - box.bottom; y <= windows.height - padding - box.top + 1e-9; y += STEP) {
    const bands = bandsOf(shape, y, windows)
    const fewest = leastFresh(bands, taken, windows)
    // A place that saves no more than the best one has to be nearer.
    const most = (away: number) => (best && away < nearest ? least : least - 1)
    if (fewest > most(Math.abs(y - here.y))) continue
    for (let x = padding - box.left; x <= windows.width - padding - box.right + 1e-9; x += STEP) {
      const at = { x, y }
      const away = distance(at, here)
      const enough = most(away)
      if (fewest > enough) continue
      const fresh = cost(bands, x, enough)
      if (fresh > enough) continue
      if (places.some((other, n) => n !== k && overlaps(shape, at, shapes[n] as Silhouette, other))) continue
      best = at
      least = fresh
      nearest = away
    }
  }
  return best
}

/** No more windows than the bands lie under alone wherever they are moved sideways, each by itself. */
function leastFresh(bands: readonly Band[], taken: readonly boolean[], w: Windows): number {
  // The last window reaches further than the others: so much of a band may lie beyond all of them.
  const beyond = w.width - w.columns * w.stepX
  let sum = 0
  for (const { row, left, right } of bands) {
    const touched = Math.floor((right - left - beyond) / w.stepX - 1e-9) + 1
    if (touched < 1) continue
    let fewest = touched
    for (let first = 0; first + touched <= w.columns; first++) {
      let fresh = 0
      for (let column = first; column < first + touched; column++) if (!taken[row * w.columns + column]) fresh++
      fewest = Math.min(fewest, fresh)
    }
    sum += fewest
  }
  return sum
}

/** How far a silhouette reaches left and right under one row of windows, before it is moved sideways. */
interface Band {
  readonly row: number
  readonly left: number
  readonly right: number
}

/** The rows of windows that the silhouette lies under, filled: a page inside a piece is wanted anyhow. */
function bandsOf(shape: Silhouette, y: number, w: Windows): Band[] {
  const bands: Band[] = []
  const count = shape.left.length
  const low = shape.bottom + y
  const bandOf = (height: number) => Math.min(w.rows - 1, Math.max(0, Math.floor((w.height - height) / w.stepY)))
  let n = 0
  while (n < count) {
    const row = bandOf(low + n * SLICE)
    // All slices that begin in this row of windows, and the one below it that reaches in.
    let left = Number.POSITIVE_INFINITY
    let right = Number.NEGATIVE_INFINITY
    const floor = w.height - (row + 1) * w.stepY
    for (let k = Math.max(0, Math.min(n, Math.ceil((floor - low) / SLICE) - 1)); k < count; k++) {
      if (k >= n && bandOf(low + k * SLICE) !== row) break
      left = Math.min(left, shape.left[k] as number)
      right = Math.max(right, shape.right[k] as number)
      n = Math.max(n, k + 1)
    }
    bands.push({ row, left, right })
  }
  return bands
}

/** The first window of its row that a band touches whose left end lies there. */
function firstColumn(left: number, { stepX }: Windows): number {
  return Math.max(0, Math.floor(left / stepX))
}

/** The last one, by the right end. */
function lastColumn(right: number, { columns, stepX }: Windows): number {
  return Math.min(columns - 1, Math.floor(right / stepX))
}
