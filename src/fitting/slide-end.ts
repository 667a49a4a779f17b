import { type Cubic, isLine, line, pointAt } from '../geometry/cubic.ts'
import { SAME_POINT } from '../geometry/defaults.ts'
import { endOf, lastCubic, type Path } from '../geometry/path.ts'
import { locate, pathLength, pointAlong, tangentAt } from '../geometry/path-length.ts'
import { along, distance, dot, type Point, scale, subtract } from '../geometry/point.ts'
import type { Seam } from '../pattern/piece.ts'
import { reverseSeam, seamLength } from '../pattern/seam.ts'
import { cutPath } from './cut-path.ts'
import type { AlongMap } from './position-map.ts'

/** A neighbour that meets the moved line at less than 30° cannot sensibly follow it: it would run away. */
const LEAST_SLOPE = 0.5

/** A seam whose end has followed its moved neighbour. */
export interface SlidEnd {
  readonly seam: Seam
  /** Where its end is now. */
  readonly end: Point
  readonly map: AlongMap
}

/** Why an end cannot follow: it meets its neighbour too slantwise, or there is not enough of it to cut off. */
export type CannotSlide = 'too slanting' | { readonly room: number }

/**
 * Moves one end of a seam so that it lies `amount` mm along the unit `normal` from where it was: outwards by
 * lengthening the seam straight along its own direction, inwards by cutting it off. Everything else stays as it
 * is, so no other seam and no fold is pulled sideways. The end keeps being the end; positions that were cut off
 * are gone.
 */
export function slideEnd(seam: Seam, which: 'start' | 'end', normal: Point, amount: number): SlidEnd | CannotSlide {
  const whole = seamLength(seam)
  if (which === 'end') {
    const moved = slide(seam, normal, amount)
    if (!isSlid(moved)) return moved
    return { ...moved, map: endMap(whole, whole + moved.change) }
  }
  const moved = slide(reverseSeam(seam), normal, amount)
  if (!isSlid(moved)) return moved
  const map = endMap(whole, whole + moved.change)
  const flipped: AlongMap = (at) => {
    const there = map(whole - at)
    return typeof there === 'number' ? whole + moved.change - there : there
  }
  return { end: moved.end, seam: keepUntouched(reverseSeam(moved.seam), seam), map: flipped }
}

interface Slid {
  readonly seam: Seam
  readonly end: Point
  readonly change: number
}

function isSlid(result: Slid | CannotSlide): result is Slid {
  return typeof result === 'object' && 'seam' in result
}

export function hasSlid(result: SlidEnd | CannotSlide): result is SlidEnd {
  return typeof result === 'object' && 'seam' in result
}

function slide(seam: Seam, normal: Point, amount: number): Slid | CannotSlide {
  const part = seam.parts[seam.parts.length - 1] as Path
  const direction = tangentAt(lastCubic(part), 1)
  // The seam may run out through its neighbour's line or in from it; lengthening goes with the outward normal.
  const slope = dot(direction, normal)
  if (slope < LEAST_SLOPE) return 'too slanting'
  const length = pathLength(part)
  const moved =
    amount >= 0 ? lengthened(part, scale(direction, amount / slope)) : cutOff(part, length, normal, -amount, slope)
  if (!moved) return { room: length }
  const parts = [...seam.parts.slice(0, -1), moved]
  return { seam: { ...seam, parts }, end: endOf(moved), change: pathLength(moved) - length }
}

function lengthened(part: Path, by: Point): Path {
  const last = lastCubic(part)
  const end = along(last.p3, by, 1)
  if (isLine(last)) return [...part.slice(0, -1), line(last.p0, end)]
  return [...part, line(last.p3, end)]
}

/** The path without its last bit, ending `depth` mm inside its old end as measured along the normal. */
function cutOff(part: Path, length: number, normal: Point, depth: number, slope: number): Path | undefined {
  const end = endOf(part)
  let cut = depth / slope
  for (let i = 0; i < 50; i++) {
    if (!(cut < length - SAME_POINT)) return undefined
    const { index, t } = locate(part, length - cut)
    const c = part[index] as Cubic
    const miss = depth - dot(subtract(end, pointAt(c, t)), normal)
    if (Math.abs(miss) < 1e-9) break
    cut += miss / Math.max(LEAST_SLOPE, dot(tangentAt(c, t), normal))
  }
  const last = lastCubic(part)
  // A straight seam stays one straight line of even speed.
  if (part.length === 1 && isLine(last)) return [line(last.p0, pointAlong(part, length - cut))]
  return cutPath(part, 0, length - cut)
}

function endMap(before: number, now: number): AlongMap {
  return (at) => {
    if (Math.abs(at - before) <= SAME_POINT) return now
    if (at > now) return { gone: 'the end of the seam was cut off there' }
    return at
  }
}

/** Reversing twice makes new cubics of the same numbers; the untouched parts are to be the same objects. */
function keepUntouched(now: Seam, before: Seam): Seam {
  const lastNow = now.parts.length - 1
  const parts = now.parts.map((part, i) => {
    if (i > 0) return before.parts[before.parts.length - 1 - (lastNow - i)] as Path
    const old = before.parts[0] as Path
    // The first part lost or gained cubics at its start only: share the ones at its end.
    return part.map((c, k) => {
      const twin = old[old.length - (part.length - k)]
      return twin && distance(twin.p0, c.p0) === 0 && distance(twin.p3, c.p3) === 0 && distance(twin.p1, c.p1) === 0
        ? twin
        : c
    })
  })
  return { ...now, parts }
}
