import * as z from 'zod'
import type { Problem } from '../base/problem.ts'
import { type Readers, raise } from '../base/readers.ts'
import { failure, type Result, success } from '../base/result.ts'
import { along, between, distance, type Point, subtract, unit } from '../geometry/point.ts'
import { landmarkPoint, pointOnSeam } from '../pattern/seam.ts'
import { baseName, namedSide } from '../pattern/side-names.ts'
import { type BodiceHalf, outward } from './bodice-half.ts'
import { namedPlaces } from './named-places.ts'
import { placeReader, type SeamPlace } from './position.ts'
import { isGone, type PiecePoint, type PositionMap } from './position-map.ts'
import { sayPlace } from './resolve-place.ts'
import { seamPosition, seamRun } from './seam-run.ts'

/** A point inside a piece, by one name of a mark or by two: measured on the straight line from one to the other. */
export type InnerPlace = Exclude<SeamPlace, { readonly line: string }>

const EXPECTED = 'a point by one mark or two, such as { from: bust point, toward: underarm, distance: 1/2 }'

/** Reads a point inside a piece: written as a place on a seam is, only that no line and no side of the cap will do. */
export function innerPlaceReader(read: Readers) {
  return placeReader(read).transform((place, context): InnerPlace => {
    if (!('line' in place) && place.half === undefined) return place
    raise(context, {
      code: 'place-incomplete',
      actual: sayPlace(place, (mm) => `${mm.toFixed(1)} mm`),
      expected: EXPECTED,
      hint: 'name a mark; or from, toward and distance; or between and share',
    })
    return z.NEVER
  })
}

/** The point that is meant on a half of the bodice. Problem: a name that it does not have (the hint lists those it has). */
export function resolveInner(place: InnerPlace, half: BodiceHalf): Result<PiecePoint> {
  const points = namedPoints(half)
  const names = 'landmark' in place ? [place.landmark] : 'between' in place ? place.between : [place.from, place.toward]
  const unknown = names.find((name) => !points.has(name))
  if (unknown !== undefined) return failure(unknownMark(unknown, half, [...points.keys()]))
  const [a, b] = names.map((name) => points.get(name) as Point) as [Point, Point?]
  const piece = half.piece.id
  if (!b) return success({ piece, at: a })
  if ('between' in place) return success({ piece, at: between(a, b, place.share) })
  if ('landmark' in place || distance(a, b) === 0) return success({ piece, at: a })
  return success({ piece, at: along(a, unit(subtract(b, a)), place.distance) })
}

/** Where points of the mock-up as worn now are on a half; a problem when one is gone. */
export function innerNow(places: readonly PiecePoint[], since: PositionMap, half: BodiceHalf): Result<Point[]> {
  const found: Point[] = []
  for (const place of places) {
    for (const moved of since.point(place)) {
      if (isGone(moved)) return failure(pointGone(half, moved.gone))
      const isHere = moved.piece === half.piece.id && moved.at.x * outward(half).x > -1e-6
      if (isHere) found.push(moved.at)
    }
  }
  return success(found)
}

/** Everything on a half that a draper can name, by its name: marks inside, points of darts, places on the seams. */
function namedPoints({ piece, side }: BodiceHalf): Map<string, Point> {
  const points = new Map<string, Point>()
  const isHere = (id: string) => piece.side !== 'whole' || (namedSide(id) ?? side) === side
  const add = (name: string, at: Point) => points.has(name) || points.set(name, at)
  for (const mark of piece.landmarks) if (isHere(mark.id)) add(baseName(mark.id), landmarkPoint(piece, mark))
  for (const dart of piece.darts) if (isHere(dart.id)) add(`${baseName(dart.id)} point`, dart.point)
  for (const seam of piece.seams) {
    if (!isHere(seam.id)) continue
    const run = seamRun(piece, [seam.id])
    for (const { name, at } of namedPlaces(run)) add(name, pointOnSeam(seam, seamPosition(run, at).along))
  }
  return points
}

function unknownMark(name: string, { piece }: BodiceHalf, names: readonly string[]): Problem {
  return {
    code: 'unknown-place',
    where: { piece: piece.id },
    actual: `"${name}", which is not on the ${piece.id}`,
    expected: `a mark of the ${piece.id}: ${names.join(', ')}`,
    hint: 'use one of these names, or measure from one toward another',
  }
}

function pointGone({ piece }: BodiceHalf, reason: string): Problem {
  return {
    code: 'place-gone',
    where: { piece: piece.id },
    actual: `the point inside the ${piece.id} is gone: ${reason}`,
    expected: 'a place that earlier corrections of the same fitting left on the pattern',
    hint: 'name another place, or put this correction before the one that removed it',
  }
}
