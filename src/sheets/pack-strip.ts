import type { Box } from '../geometry/bounds.ts'
import { type Arrangement, GAP } from './arrange.ts'
import type { Segment } from './ink.ts'
import type { PieceDrawing } from './scene.ts'
import { FEW, type Silhouette, SLICE, silhouette, silhouetteOf } from './silhouette.ts'

/** With more pieces than this, a few sensible orders are tried instead of all. */
const ALL_ORDERS = 4

/** A drawing seen from above, slice by slice, and the same with the gap to its neighbours round it. */
interface Shape {
  readonly drawing: PieceDrawing
  readonly slices: Silhouette
  readonly kept: Silhouette
}

/** What `packStrip` packs. */
export interface StripShapes {
  readonly drawings: readonly PieceDrawing[]
  readonly shapes: readonly Shape[]
}

/** The drawings as they are packed, with their ink. */
export function stripShapes(
  drawings: readonly PieceDrawing[],
  ink: ReadonlyMap<PieceDrawing, readonly Segment[]>,
): StripShapes {
  return { drawings, shapes: drawings.map((drawing) => shapeOf(drawing, ink.get(drawing) ?? [])) }
}

/**
 * Puts the drawings, upright as they are, into a strip of this width, each as high and then as far left as it can
 * go beside those before it, in every order of up to four pieces and in some orders of more: bottom-left filling,
 * upside down. Pieces keep the gap between them and reach into each other's hollows. Those as wide as the strip
 * or narrower fit; undefined when one is wider. The same input gives the same places.
 */
export function packStrip({ drawings, shapes }: StripShapes, width: number): Arrangement[] {
  if (drawings.some(({ box }) => widthOf(box) > width)) return []
  return ordersOf(shapes).map((order) => fill(order, drawings, width))
}

function fill(order: readonly Shape[], drawings: readonly PieceDrawing[], width: number): Arrangement {
  const places = new Map<PieceDrawing, { x: number; down: number }>()
  const put: { shape: Shape; x: number; down: number }[] = []
  let deepest = 0
  let widest = 0
  for (const shape of order) {
    const { box } = shape.drawing
    let down = 0
    let x = leftmost(shape, down, put, width)
    // Below all others there is always room.
    while (x === undefined) x = leftmost(shape, ++down, put, width)
    put.push({ shape, x, down })
    places.set(shape.drawing, { x, down })
    deepest = Math.max(deepest, down * SLICE + box.top - box.bottom)
    widest = Math.max(widest, x + box.right)
  }
  const placed = drawings.map((drawing) => {
    const { x, down } = places.get(drawing) ?? { x: 0, down: 0 }
    return { drawing, at: { x, y: deepest - down * SLICE - drawing.box.top } }
  })
  return { placed, width: widest, height: deepest }
}

/** The least x at which the shape is clear of all that is put, so many slices from the top; undefined when none. */
function leftmost(
  shape: Shape,
  down: number,
  put: readonly { shape: Shape; x: number; down: number }[],
  width: number,
): number | undefined {
  const { box } = shape.drawing
  let x = -box.left
  // A few slices show most of what is in the way; all of them then say that nothing is.
  for (const every of [FEW, 1]) {
    for (let moved = true; moved; ) {
      moved = false
      for (const other of put) {
        if (shape.slices.leftmost + x >= other.shape.kept.rightmost + other.x) continue
        const needed = clearOf(every, shape.slices, x, down, other.shape.kept, other.x, other.down)
        if (needed <= x) continue
        x = needed
        if (x + box.right > width + 1e-9) return undefined
        moved = true
      }
    }
  }
  return x
}

/** x, or the least greater x at which no slice that is in the way now still is; asked of every so many slices. */
function clearOf(
  every: number,
  a: Silhouette,
  x: number,
  downA: number,
  b: Silhouette,
  xB: number,
  downB: number,
): number {
  let needed = x
  const shift = downA - downB + REACH
  const end = Math.min(a.left.length, b.left.length - shift)
  for (let n = Math.max(0, -shift); n < end; n += every) {
    const left = b.left[n + shift] as number
    const right = b.right[n + shift] as number
    if ((a.left[n] as number) + x < right + xB && (a.right[n] as number) + x > left + xB) {
      needed = Math.max(needed, right + xB - (a.left[n] as number))
    }
  }
  return needed
}

/** Slices that the gap reaches up and down. */
const REACH = Math.ceil(GAP / SLICE)

function shapeOf(drawing: PieceDrawing, ink: readonly Segment[]): Shape {
  const turned = ink.map(({ a, b, half }) => ({ a: { x: a.x, y: -a.y }, b: { x: b.x, y: -b.y }, half }))
  const slices = silhouetteOf(turned)
  const around = <T>(values: readonly T[], n: number) => values.slice(Math.max(0, n - 2 * REACH), Math.max(0, n + 1))
  const count = slices.left.length + 2 * REACH
  const rows = Array.from({ length: count }, (_, n) => n)
  const kept = silhouette(
    slices.bottom,
    rows.map((n) => Math.min(...around(slices.left, n)) - GAP),
    rows.map((n) => Math.max(...around(slices.right, n)) + GAP),
  )
  return { drawing, slices, kept }
}

function ordersOf(shapes: readonly Shape[]): (readonly Shape[])[] {
  if (shapes.length <= ALL_ORDERS) return permutations(shapes)
  const by = (size: (box: Box) => number) => shapes.toSorted((a, b) => size(b.drawing.box) - size(a.drawing.box))
  return [shapes, by(heightOf), by(widthOf), by((box) => heightOf(box) * widthOf(box))]
}

function permutations<T>(items: readonly T[]): T[][] {
  if (items.length <= 1) return [[...items]]
  return items.flatMap((item, k) => permutations(items.toSpliced(k, 1)).map((rest) => [item, ...rest]))
}

function widthOf(box: Box): number {
  return box.right - box.left
}

function heightOf(box: Box): number {
  return box.top - box.bottom
}
