import { type Cubic, isLine, line } from '../geometry/cubic.ts'
import { endOf, type Path, startOf } from '../geometry/path.ts'
import { pathLength } from '../geometry/path-length.ts'
import { cross, distance, subtract, unit } from '../geometry/point.ts'
import type { Move } from '../geometry/transform.ts'
import { cutPath } from './cut-path.ts'
import { type WarpedPath, warpPath } from './warp-path.ts'

/** A stitching line that was cut at one place, whose two sides went apart or over each other. */
export interface CutLine {
  readonly path: Path
  /** Where it is cut, mm from its start. */
  readonly at: number
  /** The move of the side before the cut and of the side after it, as shares of `move`: one is 0, the other 1. */
  readonly shares: readonly [number, number]
  /** Share 0 leaves everything where it is, 1 is the whole move. */
  readonly move: (share: number) => Move
  /** Over how many mm on each side the line is drawn again; 0 bridges the gap by a straight line. */
  readonly blend: number
}

/** The line would run back on itself: so much is taken out, and so much of it there is to draw it again. */
export interface TooShort {
  readonly taken: number
  readonly room: number
}

/** Directions nearer than this are one straight line, radians. */
const STRAIGHT = 1e-9

/** A place this near to a cut is at the cut, mm. */
const AT_CUT = 2e-6

/** What is left of a mm of line where it is drawn again; less would crowd its marks. */
const LEAST_LEFT = 0.25

/**
 * The line made whole again after its two sides moved. A straight line is drawn again straight from end to end, a
 * curve by easing the move in over `blend` mm on both sides, which keeps its directions there; without a blend the gap is
 * bridged by a straight line. Places keep their distance from the ends of the line up to the blend; between, they
 * spread evenly. Says when the line is too short for what is taken out of it.
 */
export function closeCut(cut: CutLine): WarpedPath | TooShort {
  const { path, at, shares, move, blend } = cut
  const length = pathLength(path)
  const before = carry(cutPath(path, 0, at), move(shares[0]), shares[0])
  const after = carry(cutPath(path, at, length), move(shares[1]), shares[1])
  const gap = distance(endOf(before), startOf(after))
  if (blend === 0) {
    const bridge = gap > 0 ? [line(endOf(before), startOf(after))] : []
    return {
      path: [...before, ...bridge, ...after],
      old: [0, at, at + AT_CUT, length],
      now: [0, at, at + gap + AT_CUT, length + gap],
    }
  }
  if (isStraight(path)) return straightAgain(cut, length, startOf(before), endOf(after))
  return eased(cut, length, before, after)
}

function straightAgain(cut: CutLine, length: number, from: Path[number]['p0'], to: Path[number]['p0']) {
  const now = distance(from, to)
  const change = now - length
  const reach = Math.max(cut.blend, -2 * change)
  const a = Math.max(0, cut.at - reach)
  const b = Math.min(length, cut.at + reach)
  if (b + change - a < LEAST_LEFT * (b - a)) return { taken: -change, room: length }
  const table = { old: [0, a, b, length], now: [0, a, b + change, now] }
  return { path: [line(from, to)], ...increasing(table) }
}

function eased(cut: CutLine, length: number, before: Path, after: Path): WarpedPath | TooShort {
  const { path, at, shares, move } = cut
  const size = distance(endOf(before), startOf(after))
  const reach = Math.max(cut.blend, 2 * size)
  const a = at - reach < AT_CUT ? 0 : at - reach
  const b = at + reach > length - AT_CUT ? length : at + reach
  const width = b - a
  const [one, other] = shares
  const middle = warpPath(cutPath(path, a, b), (p, along) => {
    const u = Math.min(1, Math.max(0, along / width))
    return move(one + (other - one) * u * u * (3 - 2 * u))(p)
  })
  const end = middle.now[middle.now.length - 1] as number
  if (!runsOn(middle)) return { taken: size, room: width }
  const head = a > 0 ? carry(cutPath(path, 0, a), move(one), one) : []
  const tail = b < length ? carry(cutPath(path, b, length), move(other), other) : []
  const table = {
    old: [0, ...middle.old.map((x) => a + x), length],
    now: [0, ...middle.now.map((x) => a + x), a + end + (length - b)],
  }
  return { path: welded(head, middle.path, tail), ...increasing(table) }
}

/** Whether the line keeps running forward at no less than a quarter of its pace. */
function runsOn({ old, now }: WarpedPath): boolean {
  return old.every((x, i) => {
    if (i === 0) return true
    const step = x - (old[i - 1] as number)
    return (now[i] as number) - (now[i - 1] as number) >= LEAST_LEFT * step - 1e-9
  })
}

/** A table without places that coincide. */
function increasing({ old, now }: { readonly old: readonly number[]; readonly now: readonly number[] }) {
  const kept = old.map((x, i) => i === 0 || x > (old[i - 1] as number) + 1e-9)
  return { old: old.filter((_, i) => kept[i]), now: now.filter((_, i) => kept[i]) }
}

function carry(path: Path, move: Move, share: number): Path {
  return share === 0 ? path : path.map((c) => moved(c, move))
}

function moved(c: Cubic, move: Move): Cubic {
  return { p0: move(c.p0), p1: move(c.p1), p2: move(c.p2), p3: move(c.p3) }
}

/** The three put together; the middle takes over the very points of its neighbours. */
function welded(head: Path, middle: Path, tail: Path): Path {
  const path = [...middle]
  if (head.length > 0) path[0] = { ...(path[0] as Cubic), p0: endOf(head) }
  if (tail.length > 0) path[path.length - 1] = { ...(path[path.length - 1] as Cubic), p3: startOf(tail) }
  return [...head, ...path, ...tail]
}

/** Whether the whole path is one straight line, of one or more cubics. */
export function isStraight(path: Path): boolean {
  const along = unit(subtract(endOf(path), startOf(path)))
  return path.every((c) => isLine(c) && Math.abs(cross(unit(subtract(c.p3, c.p0)), along)) < STRAIGHT)
}
