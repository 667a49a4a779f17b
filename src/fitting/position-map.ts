import { SAME_POINT } from '../geometry/defaults.ts'
import type { Point } from '../geometry/point.ts'

/** A place on a stitching line: mm of sewn length from the seam's start, darts closed. */
export interface SeamPosition {
  /** Id of the piece. */
  readonly piece: string
  /** Id of the seam. */
  readonly seam: string
  /** mm of sewn length from the seam's start. */
  readonly along: number
}

/** A point of a piece, not tied to a seam. */
export interface PiecePoint {
  /** Id of the piece. */
  readonly piece: string
  /** The point, mm, in the piece's frame. */
  readonly at: Point
}

/** A place that an operation removed, and in what way. */
export interface Gone {
  /** Why it is no more, in words. */
  readonly gone: string
}

/** A place as it is now, or that it is gone. */
export type Moved<T> = T | Gone

/**
 * Where the places of a pattern are after an operation. One old place becomes several when a piece is split
 * into left and right. Along each seam the map is monotone: the order of two places never turns round.
 */
export interface PositionMap {
  /** Where a place on a seam is now: one entry, or one for each piece that it is on now. */
  seam(position: SeamPosition): readonly Moved<SeamPosition>[]
  /** Where a point inside a piece is now, the same way. */
  point(position: PiecePoint): readonly Moved<PiecePoint>[]
}

/** The map of an operation that changed nothing. */
export const IDENTITY: PositionMap = {
  seam: (position) => [position],
  point: (position) => [position],
}

/** True for a place that an operation removed. */
export function isGone<T extends object>(moved: Moved<T>): moved is Gone {
  return 'gone' in moved
}

/** First one map, then the other; what is gone stays gone for the first reason. */
export function composeMaps(first: PositionMap, second: PositionMap): PositionMap {
  if (first === IDENTITY) return second
  if (second === IDENTITY) return first
  return {
    seam: (position) => followed(first.seam(position), second.seam),
    point: (position) => followed(first.point(position), second.point),
  }
}

function followed<T extends object>(
  places: readonly Moved<T>[],
  next: (place: T) => readonly Moved<T>[],
): readonly Moved<T>[] {
  const [only] = places
  // Nearly always: a place becomes several only where a piece is split.
  if (places.length === 1 && only) return isGone(only) ? places : next(only)
  return places.flatMap((moved) => (isGone(moved) ? [moved] : next(moved)))
}

/** The same map with the reason of everything that it removes put in other words, for example naming the correction. */
export function attributeMap(map: PositionMap, word: (reason: string) => string): PositionMap {
  if (map === IDENTITY) return map
  const reworded = <T extends object>(places: readonly Moved<T>[]): readonly Moved<T>[] =>
    places.some(isGone) ? places.map((moved) => (isGone(moved) ? { gone: word(moved.gone) } : moved)) : places
  return {
    seam: (position) => reworded(map.seam(position)),
    point: (position) => reworded(map.point(position)),
  }
}

/** Old position along one seam to the new one, or gone. */
export type AlongMap = (along: number) => number | Gone

/**
 * The map that moves positions along some seams of one piece; every other seam, every other piece and all inside
 * points stay where they are: a shifted stitching line does not move the cloth.
 */
export function seamMap(piece: string, seams: ReadonlyMap<string, AlongMap>): PositionMap {
  return {
    seam: (position) => {
      const move = position.piece === piece ? seams.get(position.seam) : undefined
      if (!move) return [position]
      const along = move(position.along)
      return typeof along === 'number' ? [{ ...position, along }] : [along]
    },
    point: (position) => [position],
  }
}

/**
 * The piecewise linear map through pairs of old and new positions, both strictly increasing. Positions beyond the
 * first and the last pair keep their distance from it. Throws when the pairs do not increase: such a map would
 * turn places round.
 */
export function tableMap(old: readonly number[], now: readonly number[]): (along: number) => number {
  if (old.length < 2 || old.length !== now.length) throw new RangeError('a table needs two or more pairs')
  for (let i = 1; i < old.length; i++) {
    if (!((old[i] as number) > (old[i - 1] as number)) || !((now[i] as number) >= (now[i - 1] as number))) {
      throw new RangeError(`pair ${i} of a table of positions does not increase`)
    }
  }
  const last = old.length - 1
  return (along) => {
    const first = old[0] as number
    const end = old[last] as number
    if (along <= first + SAME_POINT)
      return (now[0] as number) + (Math.abs(along - first) <= SAME_POINT ? 0 : along - first)
    if (along >= end - SAME_POINT)
      return (now[last] as number) + (Math.abs(along - end) <= SAME_POINT ? 0 : along - end)
    let low = 0
    let high = last
    while (high - low > 1) {
      const middle = (low + high) >> 1
      if ((old[middle] as number) <= along) low = middle
      else high = middle
    }
    const a = old[low] as number
    const b = old[high] as number
    const from = now[low] as number
    return from + ((now[high] as number) - from) * ((along - a) / (b - a))
  }
}
