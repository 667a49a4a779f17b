import * as z from 'zod'
import type { Problem } from '../../base/problem.ts'
import type { Readers } from '../../base/readers.ts'
import { collect, failure, type Result, success } from '../../base/result.ts'
import { isLine, line as straight } from '../../geometry/cubic.ts'
import { add, between, cross, distance, magnitude, type Point, scale, subtract, unit } from '../../geometry/point.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import type { Dart, Landmark, Line, Piece } from '../../pattern/piece.ts'
import { directionOnSeam, pieceOf, seamOf } from '../../pattern/seam.ts'
import { baseName, namedSide } from '../../pattern/side-names.ts'
import { amountWithin } from '../amount-within.ts'
import { type BodiceHalf, bodiceHalves, outward } from '../bodice-half.ts'
import { defineCorrection } from '../correction.ts'
import { dartPlace } from '../dart-place.ts'
import { eachHalf } from '../each-half.ts'
import { dartsOf } from '../half-darts.ts'
import { inSetting } from '../in-setting.ts'
import { innerNow, innerPlaceReader, resolveInner } from '../inner-place.ts'
import { type OperationResult, type PatternOperation, runOperations, unchanged } from '../operation.ts'
import { IDENTITY, type PositionMap } from '../position-map.ts'
import { SAME_PLACE } from '../rotate-dart.ts'
import { sayPlaces } from '../say-places.ts'
import { setDart } from '../set-dart.ts'
import { slideDart } from '../slide-dart.ts'

/** The most, mm. Our own: farther, it is another bust, to be measured. */
const MOST = 50
const WHY = 'farther is another bust to measure'

/** A dart whose point lies within this of the bust point belongs to it, mm: points end 20 to 40 mm short (common practice). */
const AIMS_AT = 60

function settings(read: Readers) {
  return z.strictObject({
    by: read.positiveLength().optional(),
    direction: read.name('direction', ['up', 'down', 'in', 'out']).optional(),
    to: innerPlaceReader(read).optional(),
  })
}

type BustPointSettings = z.output<ReturnType<typeof settings>>

/** How far the bust point of a half goes, and where to. */
type MoveOf = (half: BodiceHalf, mark: AtPoint, since: PositionMap) => Result<Point>

/**
 * Moves the bust point, by an amount or to a point measured between two marks, and with it the points of the darts that end near it: a dart across the move slides along its
 * seam, one along it is lengthened or shortened. Intakes stay.
 */
export const moveBustPoint = defineCorrection({
  name: 'move bust point',
  does: 'moves the bust point and the darts that aim at it; their intakes stay',
  answers: ['fullness above or below the bust', 'darts that point beside the bust'],
  settings,
  defaults: [],
  compile: ({ worn, side }, given) => {
    const large = amountWithin(given.by ?? 0, { correction: 'move bust point', most: MOST, why: WHY })
    if (large) return failure(large)
    const halves = bodiceHalves(worn, side, ['front'])
    if (!halves.some((half) => bustPoint(half))) return failure(noBustPoint())
    if (given.by === 0) return success([])
    const move = moveFor(halves, given)
    if (!move.ok) return move
    return success(
      eachHalf(worn, side, ['front'], (pattern, half, since) => {
        const mark = bustPoint(half)
        if (!mark) return success(unchanged(pattern))
        const vector = move.value(half, mark, since)
        return vector.ok ? moveOn(pattern, half, mark, vector.value) : vector
      }),
    )
  },
  word: (given, say) => ({
    what: `move the bust point ${
      given.to !== undefined
        ? `to ${sayPlaces([given.to], say)}`
        : `${{ up: 'up', down: 'down', in: 'toward the center', out: 'toward the side' }[given.direction ?? 'up']} by ${say(given.by ?? 0)}`
    }`,
    where: 'with the points of the darts that aim at it; the intakes stay',
  }),
})

type AtPoint = Extract<Landmark, { readonly at: Point }>

function bustPoint({ piece, side }: BodiceHalf): AtPoint | undefined {
  return piece.landmarks.find(
    (mark): mark is AtPoint =>
      'at' in mark && baseName(mark.id) === 'bust point' && (namedSide(mark.id) ?? side) === side,
  )
}

function moveFor(halves: readonly BodiceHalf[], { by, direction, to }: BustPointSettings): Result<MoveOf> {
  if (to === undefined && by !== undefined && direction !== undefined) {
    return success((half) => success(scale(wayOf(half, direction), by)))
  }
  if (to === undefined || by !== undefined || direction !== undefined) return failure(contradicts())
  const places = collect(halves.map((half) => resolveInner(to, half)))
  if (!places.ok) return inSetting('to', places)
  return success((half, mark, since) => {
    const found = innerNow(places.value, since, half)
    if (!found.ok) return inSetting('to', found)
    const vector = subtract(found.value[0] ?? mark.at, mark.at)
    const large = amountWithin(magnitude(vector), { correction: 'move bust point', most: MOST, why: WHY, field: 'to' })
    return large ? failure(large) : success(vector)
  })
}

function wayOf(half: BodiceHalf, direction: 'up' | 'down' | 'in' | 'out'): Point {
  if (direction === 'up' || direction === 'down') return { x: 0, y: direction === 'up' ? 1 : -1 }
  return scale(outward(half), direction === 'out' ? 1 : -1)
}

function moveOn(pattern: Pattern, half: BodiceHalf, mark: AtPoint, vector: Point): Result<OperationResult> {
  if (magnitude(vector) < 1e-9) return success(unchanged(pattern))
  const aiming = dartsOf(half).filter((dart) => distance(dart.point, mark.at) <= AIMS_AT)
  const id = half.piece.id
  return runOperations(pattern, IDENTITY, [
    ...aiming.flatMap((dart): PatternOperation[] => [
      (now) => slideAcross(now, id, dart.id, vector),
      (now) => setDart(now, { piece: id, dart: dart.id, point: add(dart.point, vector) }),
    ]),
    (now) => success({ pattern: withBustPoint(now, pieceOf(now, id), mark, vector), map: IDENTITY, effects: [] }),
  ])
}

/** Slides the dart along its seam by the part of the move that lies across its axis. */
function slideAcross(pattern: Pattern, id: string, dartId: string, vector: Point): Result<OperationResult> {
  const piece = pieceOf(pattern, id)
  const dart = piece.darts.find((d) => d.id === dartId) as Dart
  const { seam, along } = dartPlace(piece, dart)
  const axis = unit(subtract(dart.point, between(dart.mouth[0], dart.mouth[1], 0.5)))
  const way = directionOnSeam(seamOf(piece, seam), along)
  // So that the axis, carried along the seam, passes through the moved point.
  const by = cross(axis, vector) / cross(axis, way)
  if (!(Math.abs(by) >= SAME_PLACE && Math.abs(by) < Number.POSITIVE_INFINITY))
    return success({ pattern, map: IDENTITY, effects: [] })
  return slideDart(pattern, { piece: id, dart: dartId, by })
}

function withBustPoint(pattern: Pattern, piece: Piece, mark: AtPoint, vector: Point): Pattern {
  const landmarks = piece.landmarks.map((m) => (m.id === mark.id ? { ...mark, at: add(mark.at, vector) } : m))
  const lines = piece.lines.map((line) =>
    baseName(line.id) === 'bust line' ? movedLine(line, mark.at, vector, piece) : line,
  )
  const now: Piece = { ...piece, landmarks, lines }
  return { ...pattern, pieces: pattern.pieces.map((p) => (p === piece ? now : p)) }
}

/** The bust line: its end at the bust point goes with it, and the line stays level where it meets a center edge. */
function movedLine(line: Line, at: Point, vector: Point, piece: Piece): Line {
  if (!line.path.some((c) => distance(c.p0, at) < 0.05 || distance(c.p3, at) < 0.05)) return line
  // On a piece that was opened each half takes the joint on the center half of the way.
  const level = { x: 0, y: vector.y * (piece.side === 'whole' ? 0.5 : 1) }
  const move = (p: Point): Point => (distance(p, at) < 0.05 ? add(p, vector) : Math.abs(p.x) < 0.05 ? add(p, level) : p)
  const path = line.path.map((c) =>
    isLine(c) ? straight(move(c.p0), move(c.p3)) : { ...c, p0: move(c.p0), p3: move(c.p3) },
  )
  return { ...line, path }
}

function noBustPoint(): Problem {
  return {
    code: 'no-bust-point',
    where: {},
    actual: 'no bust point on this pattern',
    expected: 'a bodice front with its bust point',
    hint: 'record this on a pattern with a bodice front',
  }
}

function contradicts(): Problem {
  return {
    code: 'places-contradict',
    where: { field: 'to' },
    actual: 'to together with by and direction, or neither',
    expected: 'by and direction; or to: and a point, such as { from: bust point, toward: underarm, distance: 1/2 }',
    hint: 'keep the one that was meant',
  }
}
