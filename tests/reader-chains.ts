// Chains of straight edges for the independent reader, with a tree of boxes over each: what crosses, how far off, what
// lies inside. The boxes only pass over edges that cannot matter.
import type { Pt } from './reader-curves.ts'

/** Edges between consecutive points; a closed chain has one more, from its last point to its first. */
export interface Chain {
  readonly x: Float64Array
  readonly y: Float64Array
  /** Number of edges. */
  readonly edges: number
  readonly closed: boolean
  /** Left, low, right, high of each node of the tree; the children of node k are 2k + 1 and 2k + 2. */
  readonly boxes: Float64Array
}

/** Edges in a leaf of the tree. */
const LEAF = 4

/** Points nearer than 1e-7 mm to the one before are left out: such an edge has no direction. */
export function chainOf(points: readonly Pt[], closed: boolean): Chain {
  const kept: Pt[] = []
  for (const p of points) {
    const last = kept[kept.length - 1]
    if (!last || Math.hypot(p[0] - last[0], p[1] - last[1]) > 1e-7) kept.push(p)
  }
  const [start, end] = [kept[0], kept[kept.length - 1]]
  if (start && end && (!closed || Math.hypot(end[0] - start[0], end[1] - start[1]) > 1e-7)) {
    if (closed) kept.push(start)
  } else if (start) kept[kept.length - 1] = start
  const x = Float64Array.from(kept, (p) => p[0])
  const y = Float64Array.from(kept, (p) => p[1])
  const edges = Math.max(0, kept.length - 1)
  let nodes = 1
  while (nodes * LEAF < edges * 2) nodes *= 2
  const boxes = new Float64Array(4 * (4 * nodes + 3))
  const fill = (node: number, from: number, to: number): void => {
    const at = 4 * node
    if (to - from <= LEAF) {
      let [left, low, right, high] = [Infinity, Infinity, -Infinity, -Infinity]
      for (let i = from; i <= to; i++) {
        const [px, py] = [x[i] as number, y[i] as number]
        if (px < left) left = px
        if (px > right) right = px
        if (py < low) low = py
        if (py > high) high = py
      }
      boxes.set([left, low, right, high], at)
      return
    }
    const middle = (from + to) >> 1
    fill(2 * node + 1, from, middle)
    fill(2 * node + 2, middle, to)
    const [a, b] = [4 * (2 * node + 1), 4 * (2 * node + 2)]
    const box = (k: number) => boxes[k] as number
    boxes.set(
      [
        Math.min(box(a), box(b)),
        Math.min(box(a + 1), box(b + 1)),
        Math.max(box(a + 2), box(b + 2)),
        Math.max(box(a + 3), box(b + 3)),
      ],
      at,
    )
  }
  if (edges > 0) fill(0, 0, edges)
  return { x, y, edges, closed, boxes }
}

export function signedArea({ x, y, edges }: Chain): number {
  let twice = 0
  for (let i = 0; i < edges; i++)
    twice += (x[i] as number) * (y[i + 1] as number) - (x[i + 1] as number) * (y[i] as number)
  return twice / 2
}

export function isWithin({ x, y, edges }: Chain, [px, py]: Pt): boolean {
  let inside = false
  for (let i = 0; i < edges; i++) {
    const [ax, ay, bx, by] = [x[i], y[i], x[i + 1], y[i + 1]] as [number, number, number, number]
    if (ay > py !== by > py && px < ax + ((py - ay) / (by - ay)) * (bx - ax)) inside = !inside
  }
  return inside
}

/** How many pairs of edges cross properly: of a chain with itself, or of two. */
export function crossings(one: Chain, other: Chain = one): number {
  if (one.edges === 0 || other.edges === 0) return 0
  let found = 0
  const itself = one === other
  const a = one.boxes
  const b = other.boxes
  const visit = (m: number, from: number, to: number, n: number, start: number, end: number): void => {
    // Of a chain with itself each pair of nodes once, the earlier first.
    if (itself && start < from) return
    const [p, q] = [4 * m, 4 * n]
    if ((a[p] as number) > (b[q + 2] as number) || (b[q] as number) > (a[p + 2] as number)) return
    if ((a[p + 1] as number) > (b[q + 3] as number) || (b[q + 1] as number) > (a[p + 3] as number)) return
    const [large, wide] = [to - from > LEAF, end - start > LEAF]
    if (!large && !wide) {
      for (let i = from; i < to; i++) {
        for (let j = itself ? Math.max(start, i + 2) : start; j < end; j++) {
          if (itself && one.closed && i === 0 && j === one.edges - 1) continue
          if (doCross(one, i, other, j)) found++
        }
      }
      return
    }
    const [middle, center] = [(from + to) >> 1, (start + end) >> 1]
    if (itself && m === n) {
      visit(2 * m + 1, from, middle, 2 * m + 1, from, middle)
      visit(2 * m + 1, from, middle, 2 * m + 2, middle, to)
      visit(2 * m + 2, middle, to, 2 * m + 2, middle, to)
    } else if (large && (!wide || to - from >= end - start)) {
      visit(2 * m + 1, from, middle, n, start, end)
      visit(2 * m + 2, middle, to, n, start, end)
    } else {
      visit(m, from, to, 2 * n + 1, start, center)
      visit(m, from, to, 2 * n + 2, center, end)
    }
  }
  visit(0, 0, one.edges, 0, 0, other.edges)
  return found
}

function doCross(one: Chain, i: number, other: Chain, j: number): boolean {
  const [px, py, qx, qy] = [one.x[i], one.y[i], one.x[i + 1], one.y[i + 1]] as [number, number, number, number]
  const [rx, ry, sx, sy] = [other.x[j], other.y[j], other.x[j + 1], other.y[j + 1]] as [number, number, number, number]
  const r = (qx - px) * (ry - py) - (qy - py) * (rx - px)
  const s = (qx - px) * (sy - py) - (qy - py) * (sx - px)
  if (r * s >= -1e-9) return false
  const p = (sx - rx) * (py - ry) - (sy - ry) * (px - rx)
  const q = (sx - rx) * (qy - ry) - (sy - ry) * (qx - rx)
  return p * q < -1e-9
}

/** Nodes still to be visited: node, first edge, end. Deeper trees than 40 levels have more edges than memory. */
const STACK = new Int32Array(3 * 80)

/** The distance from p to the chain where it is less than `bound`; Infinity otherwise. */
export function distanceWithin({ x, y, boxes, edges }: Chain, px: number, py: number, bound: number): number {
  let least = bound * bound
  let top = 0
  if (edges > 0) {
    STACK[0] = 0
    STACK[1] = 0
    STACK[2] = edges
    top = 3
  }
  while (top > 0) {
    top -= 3
    const node = STACK[top] as number
    const from = STACK[top + 1] as number
    const to = STACK[top + 2] as number
    if (squareToBox(boxes, node, px, py) >= least) continue
    if (to - from <= LEAF) {
      for (let i = from; i < to; i++) least = Math.min(least, squareToEdge(x, y, i, px, py))
      continue
    }
    const middle = (from + to) >> 1
    const one = 2 * node + 1
    const other = one + 1
    // The nearer one last: it is taken first.
    const nearer = squareToBox(boxes, one, px, py) <= squareToBox(boxes, other, px, py)
    const a = nearer ? top + 3 : top
    const b = nearer ? top : top + 3
    STACK[a] = one
    STACK[a + 1] = from
    STACK[a + 2] = middle
    STACK[b] = other
    STACK[b + 1] = middle
    STACK[b + 2] = to
    top += 6
  }
  return least < bound * bound ? Math.sqrt(least) : Infinity
}

function squareToEdge(x: Float64Array, y: Float64Array, i: number, px: number, py: number): number {
  const ax = x[i] as number
  const ay = y[i] as number
  const dx = (x[i + 1] as number) - ax
  const dy = (y[i + 1] as number) - ay
  const t = Math.min(1, Math.max(0, ((px - ax) * dx + (py - ay) * dy) / (dx * dx + dy * dy)))
  return (px - ax - t * dx) ** 2 + (py - ay - t * dy) ** 2
}

function squareToBox(boxes: Float64Array, node: number, px: number, py: number): number {
  const at = 4 * node
  const left = boxes[at] as number
  const low = boxes[at + 1] as number
  const right = boxes[at + 2] as number
  const high = boxes[at + 3] as number
  const dx = px < left ? left - px : px > right ? px - right : 0
  const dy = py < low ? low - py : py > high ? py - high : 0
  return dx * dx + dy * dy
}
