import type { Point } from '../geometry/point.ts'
import { GAP } from './arrange.ts'
import type { Segment } from './ink.ts'

/** Height of a slice, mm. */
export const SLICE = 4

/** How far each slice of a drawing reaches left and right; from its lowest ink up, in its own frame. */
export interface Silhouette {
  readonly bottom: number
  readonly left: readonly number[]
  readonly right: readonly number[]
  /** How far all of it reaches. */
  readonly leftmost: number
  readonly rightmost: number
}

/** The silhouette of this ink; a slice without any reaches from infinity to minus infinity. */
export function silhouetteOf(ink: readonly Segment[]): Silhouette {
  let bottom = Number.POSITIVE_INFINITY
  let top = Number.NEGATIVE_INFINITY
  for (const { a, b, half } of ink) {
    bottom = Math.min(bottom, Math.min(a.y, b.y) - half)
    top = Math.max(top, Math.max(a.y, b.y) + half)
  }
  const count = Math.floor((top - bottom) / SLICE) + 1
  const left = new Array<number>(count).fill(Number.POSITIVE_INFINITY)
  const right = new Array<number>(count).fill(Number.NEGATIVE_INFINITY)
  for (const { a, b, half } of ink) {
    const low = a.y < b.y ? a : b
    const high = low === a ? b : a
    const rise = high.y - low.y
    const first = Math.max(0, Math.floor((low.y - half - bottom) / SLICE))
    const last = Math.min(count - 1, Math.floor((high.y + half - bottom) / SLICE))
    for (let n = first; n <= last; n++) {
      // The part of the segment inside the slice; a level one lies in it whole.
      const t0 = rise === 0 ? 0 : Math.min(1, Math.max(0, (bottom + n * SLICE - half - low.y) / rise))
      const t1 = rise === 0 ? 1 : Math.min(1, Math.max(0, (bottom + (n + 1) * SLICE + half - low.y) / rise))
      const x0 = low.x + (high.x - low.x) * t0
      const x1 = low.x + (high.x - low.x) * t1
      left[n] = Math.min(left[n] as number, Math.min(x0, x1) - half)
      right[n] = Math.max(right[n] as number, Math.max(x0, x1) + half)
    }
  }
  return silhouette(bottom, left, right)
}

/** The silhouette with these slices. */
export function silhouette(bottom: number, left: readonly number[], right: readonly number[]): Silhouette {
  return { bottom, left, right, leftmost: Math.min(...left), rightmost: Math.max(...right) }
}

/** Every so many slices are looked at first. */
export const FEW = 12

/** Whether two silhouettes come nearer than the gap, level or up and down. */
export function overlaps(a: Silhouette, atA: Point, b: Silhouette, atB: Point): boolean {
  if (b.leftmost + atB.x >= a.rightmost + atA.x + GAP || b.rightmost + atB.x <= a.leftmost + atA.x - GAP) return false
  // Pieces that lie on each other do so in many slices: a few of them are enough to see it.
  return overlapsIn(FEW, a, atA, b, atB) || overlapsIn(1, a, atA, b, atB)
}

/** The same, asked of every so many slices of the first. */
function overlapsIn(every: number, a: Silhouette, atA: Point, b: Silhouette, atB: Point): boolean {
  const reach = Math.ceil(GAP / SLICE)
  const lift = (atA.y + a.bottom - atB.y - b.bottom) / SLICE
  const first = Math.max(0, Math.floor(-lift) - reach)
  for (let n = first; n < a.left.length; n += every) {
    const m = n + lift
    if (m > b.left.length + reach) break
    const leftA = (a.left[n] as number) + atA.x - GAP
    const rightA = (a.right[n] as number) + atA.x + GAP
    const from = Math.max(0, Math.floor(m) - reach)
    const to = Math.min(b.left.length - 1, Math.ceil(m) + reach)
    for (let k = from; k <= to; k++) {
      if ((b.left[k] as number) + atB.x < rightA && (b.right[k] as number) + atB.x > leftA) return true
    }
  }
  return false
}
