import { line } from '../geometry/cubic.ts'
import { endOf, type Path, startOf } from '../geometry/path.ts'
import { pathLength } from '../geometry/path-length.ts'
import {
  add,
  along as alongBy,
  cross,
  distance,
  dot,
  type Point,
  rotateAbout,
  subtract,
  turnBetween,
  unit,
} from '../geometry/point.ts'
import { seamLength } from '../pattern/seam.ts'
import { type BodiceHalf, draftedParts, halfSeam, seamIdOf, withDraftedParts } from './bodice-half.ts'
import { isStraight } from './close-cut.ts'
import { cutPath } from './cut-path.ts'
import type { SeamMoved } from './operation.ts'
import { type AlongMap, tableMap } from './position-map.ts'
import type { ReplacedSeam } from './replace-seams.ts'
import { type Warp, warpPath } from './warp-path.ts'
import { withStart } from './weld-seams.ts'

/** A seam of a half with new parts and a map, both counted in the order of the draft, as it lies on the piece. */
export function replacedHalf(half: BodiceHalf, name: string, parts: readonly Path[], map: AlongMap): ReplacedSeam {
  const seam = withDraftedParts(half, name, parts)
  if (half.asDrafted) return { seam, map }
  const before = seamLength(halfSeam(half, name))
  const now = seamLength(seam)
  return {
    seam,
    map: (along) => {
      const there = map(before - along)
      return typeof there === 'number' ? now - there : there
    },
  }
}

/**
 * A seam of a half with every point between two places passed through `warp`, `along` counted in the order of the draft;
 * outside them it stays the same numbers. Default: the whole seam.
 */
export function warpHalfSeam(
  half: BodiceHalf,
  name: string,
  warp: Warp,
  { from = 0, to = Number.POSITIVE_INFINITY }: { readonly from?: number; readonly to?: number } = {},
): ReplacedSeam {
  const old: number[] = [0]
  const now: number[] = [0]
  const step = (x: number, y: number) => {
    if (x <= (old[old.length - 1] as number) + 1e-9) return
    old.push(x)
    now.push(y)
  }
  let start = 0
  let startNow = 0
  const parts = draftedParts(half, name).map((part): Path => {
    const length = pathLength(part)
    const a = Math.min(length, Math.max(0, from - start))
    const b = Math.max(a, Math.min(length, to - start))
    const head = a > 0 ? (a < length ? cutPath(part, 0, a) : part) : []
    const tail = b < length ? (b > 0 ? cutPath(part, b, length) : part) : []
    const middle = a < b ? warpPath(cutPath(part, a, b), (at, along) => warp(at, start + a + along)) : undefined
    if (a > 0) step(start + a, startNow + a)
    for (const [i, x] of middle?.old.entries() ?? []) step(start + a + x, startNow + a + (middle?.now[i] as number))
    const change = middle ? (middle.now[middle.now.length - 1] as number) - (b - a) : 0
    step(start + length, startNow + length + change)
    start += length
    startNow += length + change
    if (!middle) return part
    const moved = head.length > 0 ? withStart(middle.path, endOf(head)) : middle.path
    return [...head, ...moved, ...(tail.length > 0 ? withStart(tail, endOf(moved)) : [])]
  })
  return replacedHalf(half, name, parts, tableMap(old, now))
}

/** Over how many mm from a moved end the places of a seam spread or crowd; at least three times the amount. */
const REACH = 20

/** What is left of a mm of seam where its end comes nearer; less and it would run back on itself. */
const LEAST_LEFT = 0.25

/**
 * A seam of a half whose end (in the order of the draft) moves by a vector: straight again, or eased in over its last part.
 * Undefined where that part is too short for what the vector takes out of it.
 */
export function moveHalfEnd(half: BodiceHalf, name: string, by: Point): ReplacedSeam | undefined {
  const parts = draftedParts(half, name)
  const last = parts[parts.length - 1] as Path
  const length = pathLength(last)
  const straight = isStraight(last)
  // Eased in, the middle of the part takes half as much again as the whole.
  const taken = -dot(by, unit(subtract(endOf(last), startOf(last)))) * (straight ? 1 : 1.5)
  if (taken > (1 - LEAST_LEFT) * length) return undefined
  const moved = straight
    ? [line(startOf(last), add(endOf(last), by))]
    : warpPath(last, (at, along) => {
        const u = Math.min(1, Math.max(0, along / length))
        return alongBy(at, by, u * u * (3 - 2 * u))
      }).path
  const before = parts.slice(0, -1).reduce((sum, part) => sum + pathLength(part), 0)
  const change = pathLength(moved) - length
  const from = Math.max(before, before + length - Math.max(REACH, 3 * Math.abs(change)))
  const whole = before + length
  const table =
    from > 1e-6
      ? { old: [0, from, whole], now: [0, from, whole + change] }
      : { old: [0, whole], now: [0, whole + change] }
  return replacedHalf(half, name, [...parts.slice(0, -1), moved], tableMap(table.old, table.now))
}

/**
 * The shoulder drawn straight from a new shoulder point to the neck point, a dart on it folded: the mouth slides along the
 * legs, so that they stay equal and the folded shoulder is straight. Undefined with two darts on it.
 */
export function straightShoulder(half: BodiceHalf, tip: Point): { readonly shoulder: ReplacedSeam } | undefined {
  const parts = draftedParts(half, 'shoulder')
  const neck = endOf(parts[parts.length - 1] as Path)
  if (parts.length > 2) return undefined
  const now = parts.length === 1 ? [[line(tip, neck)]] : darted(half, parts, tip, neck)
  if (!now) return undefined
  const ends = (list: readonly Path[]) =>
    [0, ...list.keys()].map((_, k) => list.slice(0, k).reduce((sum, part) => sum + pathLength(part), 0))
  return { shoulder: replacedHalf(half, 'shoulder', now, tableMap(ends(parts), ends(now))) }
}

function darted(half: BodiceHalf, parts: readonly Path[], tip: Point, neck: Point): Path[] | undefined {
  const outer = endOf(parts[0] as Path)
  const inner = startOf(parts[1] as Path)
  const dart = half.piece.darts.find(({ mouth }) => mouth.some((p) => distance(p, outer) < 0.01))
  if (!dart) return undefined
  const { point } = dart
  const closed = rotateAbout(tip, point, turnBetween(subtract(outer, point), subtract(inner, point)))
  const leg = unit(subtract(inner, point))
  const way = subtract(closed, neck)
  // Where the line from the neck point to the folded shoulder point meets the inner leg.
  const reach = cross(subtract(neck, point), way) / cross(leg, way)
  const mouth = [alongBy(point, unit(subtract(outer, point)), reach), alongBy(point, leg, reach)] as const
  return [[line(tip, mouth[0])], [line(mouth[1], neck)]]
}

/** The effect of a seam of a half that moved along the whole of it, `amount` mm outwards where it moved most. */
export function movedAll(
  half: BodiceHalf,
  name: string,
  seams: ReadonlyMap<string, ReplacedSeam>,
  amount: number,
): SeamMoved {
  const id = seamIdOf(half, name)
  const to = seamLength((seams.get(id) as ReplacedSeam).seam)
  return { kind: 'seam moved', piece: half.piece.id, seam: id, amount, from: 0, to }
}

/** The armscye of a half, underarm to shoulder, whatever way it runs. */
export function armscyeUp(half: BodiceHalf): Path {
  return draftedParts(half, 'armscye').flat()
}
