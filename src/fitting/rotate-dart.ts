import type { Problem } from '../base/problem.ts'
import { failure, type Result, success } from '../base/result.ts'
import { crossings } from '../geometry/crossings.ts'
import { line } from '../geometry/cubic.ts'
import { distance, type Point, subtract, turnBetween } from '../geometry/point.ts'
import { turn } from '../geometry/transform.ts'
import { outlineOf } from '../pattern/outline.ts'
import type { Pattern } from '../pattern/pattern.ts'
import type { Dart, Piece } from '../pattern/piece.ts'
import { pieceOf, pointOnSeam, seamLength, seamOf } from '../pattern/seam.ts'
import { baseName } from '../pattern/side-names.ts'
import { dartPlace } from './dart-place.ts'
import { moveRegions } from './move-regions.ts'
import { type OperationResult, unchanged } from './operation.ts'
import type { SeamPoint } from './outline-places.ts'

/** A dart to be closed, and where it opens. */
export interface RotateDartOptions {
  /** Id of the piece. */
  readonly piece: string
  /** Id of the dart that closes. */
  readonly dart: string
  /** Where the dart is to open: a place on a seam, or another dart with the same point, which takes it up. */
  readonly to:
    | SeamPoint
    | {
        /** Id of the dart that takes it up. */
        readonly dart: string
      }
  /** Share of the dart that goes; the rest stays where it was. Default 1, the whole dart. */
  readonly share?: number
  /** Id of the dart that opens; default the old one's, or with a share the old one's and ` 2`. */
  readonly id?: string
}

/** Points of darts nearer than this are one point, mm. */
const SAME_DART_POINT = 1e-3

/** A place this near to the dart's own is its own, mm. */
export const SAME_PLACE = 0.05

/** Seam that a new dart leaves to the next corner or dart, mm: less cannot be sewn. Our own. */
const LEAST_SEAM = 3

/** A share that misses the whole dart by less is the whole dart. */
const ROUNDING = 1e-4

/**
 * Turns a dart to another place about its own point: closes it, or a share of it, and opens as much at a cut from the
 * new place to its point. The angles at the point stay in sum, every seam keeps its sewn length exactly, and legs are
 * equal. The center of the piece, or else the longer part of the outline, stays where it is. Sharing splits a dart,
 * turning one into another joins them. Problems: a cut that leaves the piece, darts with different points, a place at
 * the dart itself, in a corner or at another dart. Throws when there is no such dart.
 */
export function rotateDart(pattern: Pattern, options: RotateDartOptions): Result<OperationResult> {
  const given = options.share ?? 1
  if (!(given >= 0 && given <= 1)) throw new RangeError('a share of a dart lies between 0 and 1')
  const share = given > 1 - ROUNDING ? 1 : given
  if (share === 0) return success(unchanged(pattern))
  const piece = pieceOf(pattern, options.piece)
  const dart = dartOf(piece, options.dart)
  const other = 'dart' in options.to ? dartOf(piece, options.to.dart) : undefined
  if (other && distance(other.point, dart.point) > SAME_DART_POINT) return failure(otherPoint(piece, dart, other))
  const at = dartPlace(piece, dart)
  const to = 'dart' in options.to ? dartPlace(piece, other as Dart) : options.to
  const opening = pointOnSeam(seamOf(piece, to.seam), to.along)
  if (to.seam === at.seam && Math.abs(to.along - at.along) < SAME_PLACE) return failure(sameDart(piece, dart))
  const crowd = other ? undefined : tooNear(piece, dart, to)
  if (crowd) return failure(crowd)
  if (!other && leaves(piece, dart, opening)) return failure(leavesPiece(piece, dart, to))
  const angle = turnBetween(subtract(dart.mouth[0], dart.point), subtract(dart.mouth[1], dart.point)) * share
  const after = staysAfter(piece, at, to)
  const whole = share === 1
  const id = options.id ?? (whole ? dart.id : `${dart.id} 2`)
  return moveRegions(pattern, {
    piece: piece.id,
    regions: [
      {
        // What lies before the mouth turns anticlockwise onto it, what lies after it the other way.
        ...(after ? { from: to, to: at } : { from: at, to }),
        inside: [dart.point],
        move: (part) => turn(dart.point, (after ? angle : -angle) * part),
        fromEnd: 'dart',
        toEnd: 'dart',
      },
    ],
    ...(whole ? { closed: [dart.id] } : {}),
    ...(other ? {} : { opened: [{ id, at: to, point: dart.point }] }),
  })
}

function dartOf(piece: Piece, id: string): Dart {
  const dart = piece.darts.find((d) => d.id === id)
  if (!dart)
    throw new RangeError(`no dart "${id}" on ${piece.id}; there are ${piece.darts.map((d) => d.id).join(', ')}`)
  return dart
}

/** Whether what is to stay lies after the old mouth: then the part from the new place to the mouth turns. */
function staysAfter(piece: Piece, at: SeamPoint, to: SeamPoint): boolean {
  const center = piece.seams.findIndex((seam) => /^center (front|back)$/.test(baseName(seam.id)))
  const a = piece.seams.findIndex((seam) => seam.id === at.seam)
  const b = piece.seams.findIndex((seam) => seam.id === to.seam)
  const count = piece.seams.length
  const steps = (from: number, until: number) => (until - from + count) % count
  if (a === b) return at.along > to.along
  if (center < 0) return steps(b, a) <= steps(a, b)
  return steps(a, center) < steps(a, b) || (steps(a, center) === 0 && center !== a)
}

/** Whether the cut to the dart's point leaves the piece or runs into another dart. */
function leaves(piece: Piece, dart: Dart, from: Point): boolean {
  const cut = [line(from, dart.point)]
  const legs = piece.darts
    .filter((other) => other !== dart)
    .map(({ mouth, point }) => [line(mouth[0], point), line(point, mouth[1])])
  return [outlineOf(piece), ...legs].some((path) =>
    crossings(cut, path).crossings.some(({ at }) => distance(at, from) > 0.5 && distance(at, dart.point) > 0.5),
  )
}

/** A dart cannot open in a corner of the piece, nor in the mouth of another one. */
function tooNear(piece: Piece, dart: Dart, to: SeamPoint): Problem | undefined {
  const length = seamLength(seamOf(piece, to.seam))
  const darts = piece.darts.filter((d) => d !== dart && d.seam === to.seam)
  const near = darts.find((d) => Math.abs(dartPlace(piece, d).along - to.along) < LEAST_SEAM)
  if (!near && to.along >= LEAST_SEAM && to.along <= length - LEAST_SEAM) return undefined
  return {
    code: 'dart-too-near',
    where: { piece: piece.id, seam: to.seam },
    actual: `the ${dart.id} would open ${near ? `at the mouth of the ${near.id}` : `in a corner of the ${to.seam}`}`,
    expected: `at least ${LEAST_SEAM} mm of seam to the next corner or dart`,
    hint: 'name a place farther away',
  }
}

function otherPoint(piece: Piece, dart: Dart, other: Dart): Problem {
  return {
    code: 'darts-do-not-share-a-point',
    where: { piece: piece.id, seam: dart.seam },
    actual: `the points of ${dart.id} and ${other.id} are ${distance(dart.point, other.point).toFixed(1)} mm apart`,
    expected: 'darts that end in one point',
    hint: `move the point of ${dart.id} to that of ${other.id} first`,
  }
}

function sameDart(piece: Piece, dart: Dart): Problem {
  return {
    code: 'dart-already-there',
    where: { piece: piece.id, seam: dart.seam },
    actual: `the ${dart.id} opens there already`,
    expected: 'another place on a seam',
    hint: 'name a place farther away, or another seam',
  }
}

function leavesPiece(piece: Piece, dart: Dart, to: SeamPoint): Problem {
  return {
    code: 'dart-leaves-piece',
    where: { piece: piece.id, seam: to.seam },
    actual: `a straight line from there to the point of ${dart.id} leaves the piece or crosses another dart`,
    expected: 'a place from which the dart can be sewn straight to its point',
    hint: 'name another place on the seam',
  }
}
