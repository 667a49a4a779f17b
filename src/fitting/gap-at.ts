import { endOf, type Path, startOf } from '../geometry/path.ts'
import { pathLength } from '../geometry/path-length.ts'
import { distance, type Point } from '../geometry/point.ts'
import type { Dart, Piece } from '../pattern/piece.ts'
import { dartPlace } from './dart-place.ts'
import type { ReplacedSeam } from './replace-seams.ts'
import { straightenDart } from './straighten-dart.ts'

/** The gap of a seam at a place of the old one; throws where the new one runs on without a gap. */
export function gapAt({ seam, map }: ReplacedSeam, along: number): readonly [Point, Point] {
  const there = map(along)
  let rest = typeof there === 'number' ? there : Number.NaN
  for (let i = 0; i + 1 < seam.parts.length; i++) {
    rest -= pathLength(seam.parts[i] as Path)
    if (Math.abs(rest) < 1e-3) return [endOf(seam.parts[i] as Path), startOf(seam.parts[i + 1] as Path)]
  }
  throw new RangeError(`the ${seam.id} has no gap at ${along} mm`)
}

/**
 * A dart whose seam was replaced or whose point moved: its mouth where its seam now breaks, its legs equal again. The
 * same object where nothing about it changed.
 */
export function followDart(
  piece: Piece,
  dart: Dart,
  seams: ReadonlyMap<string, ReplacedSeam>,
  inside: (at: Point) => Point,
): Dart {
  const replaced = seams.get(dart.seam)
  const point = inside(dart.point)
  const mouth = replaced ? gapAt(replaced, dartPlace(piece, dart).along) : dart.mouth
  const same = distance(point, dart.point) === 0 && mouth.every((p, i) => distance(p, dart.mouth[i] as Point) === 0)
  return same ? dart : straightenDart({ ...dart, mouth, point })
}
