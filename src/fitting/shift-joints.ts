import type { Problem } from '../base/problem.ts'
import { failure, type Result, success } from '../base/result.ts'
import { endOf, startOf } from '../geometry/path.ts'
import {
  add,
  distance,
  dot,
  magnitude,
  type Point,
  rightOf,
  scale,
  subtract,
  turnBetween,
  unit,
} from '../geometry/point.ts'
import type { Dart, Piece } from '../pattern/piece.ts'
import type { Profile } from './profile.ts'
import { directionAtEnd, directionAtStart, type SeamRun, type Stretch, touches } from './seam-run.ts'

/** A turn of the line by more than this is a corner of the garment and cannot move along normals, radians (30°). */
const CORNER = Math.PI / 6

/** A dart's mouth belongs to a gap in the seam when its points are this near to the gap's ends, mm. */
const SAME_MOUTH = 0.01

/** By how much the ends of the whole run are to move, where they do. */
export interface JointShift {
  readonly start?: Point
  readonly end?: Point
}

/** How far the ends of each stretch land beside amount times normal, and by how much the mouths of darts move. */
export interface Joints {
  readonly extras: readonly { readonly start?: Point; readonly end?: Point }[]
  readonly darts: ReadonlyMap<string, readonly [Point, Point]>
}

/** A leg that meets its seam at less than 30° cannot sensibly be lengthened to a moved one. */
const LEAST_SLOPE = 0.5

/**
 * Makes the stretches of a moved line meet again: at a slight corner on the two moved lines' crossing; at a dart both
 * legs are lengthened or shortened alike to the moved line, so that the point and the angle there stay, and with the dart
 * folded the line moves as evenly as if there were none. Problems: a real corner inside the moved line, a gap without a
 * dart, a dart that lies nearly along its seam, or one shorter than the amount.
 */
export function shiftJoints(run: SeamRun, profile: Profile, ends: JointShift): Result<Joints> {
  const extras: { start?: Point; end?: Point }[] = run.stretches.map(() => ({}))
  const darts = new Map<string, readonly [Point, Point]>()
  const first = run.stretches[0] as Stretch
  const last = run.stretches[run.stretches.length - 1] as Stretch
  const beside = (vector: Point, direction: Point, amount: number): Point | undefined => {
    const extra = subtract(vector, scale(rightOf(direction), amount))
    return magnitude(extra) > 1e-9 ? extra : undefined
  }
  set(extras[0], 'start', ends.start && beside(ends.start, directionAtStart(first.path), profile.amount(0)))
  set(
    extras[extras.length - 1],
    'end',
    ends.end && beside(ends.end, directionAtEnd(last.path), profile.amount(run.length)),
  )
  for (let i = 1; i < run.stretches.length; i++) {
    const before = run.stretches[i - 1] as Stretch
    const after = run.stretches[i] as Stretch
    const amount = profile.amount(after.start)
    if (amount === 0) continue
    const into = directionAtEnd(before.path)
    const out = directionAtStart(after.path)
    let vectors: readonly [Point, Point]
    if (touches(before, after)) {
      if (Math.abs(turnBetween(into, out)) > CORNER) return failure(cornerInside(run.piece, before, after))
      const sum = add(rightOf(into), rightOf(out))
      const vector = scale(sum, amount / (1 + dot(into, out)))
      vectors = [vector, vector]
    } else {
      const dart = dartBetween(run.piece, before, after)
      if (!dart) return failure(gapWithoutDart(run.piece, before))
      const legs = alongLegs(dart, rightOf(into), rightOf(out), amount)
      if (!legs) return failure(dartCannotFollow(run.piece, dart, amount))
      vectors = legs
      darts.set(dart.id, legs)
    }
    set(extras[i - 1], 'end', beside(vectors[0], into, amount))
    set(extras[i], 'start', beside(vectors[1], out, amount))
  }
  return success({ extras, darts })
}

/** By how much the mouth points of a dart move along its legs, alike, for the seam on both sides to move by the amount. */
function alongLegs({ mouth, point }: Dart, before: Point, after: Point, amount: number): [Point, Point] | undefined {
  const one = unit(subtract(mouth[0], point))
  const other = unit(subtract(mouth[1], point))
  const slope = (dot(one, before) + dot(other, after)) / 2
  const by = amount / slope
  if (!(slope >= LEAST_SLOPE) || -by > distance(mouth[0], point) / 2) return undefined
  return [scale(one, by), scale(other, by)]
}

function set(
  extra: { start?: Point; end?: Point } | undefined,
  which: 'start' | 'end',
  value: Point | undefined,
): void {
  if (extra && value) extra[which] = value
}

function dartBetween(piece: Piece, before: Stretch, after: Stretch): Dart | undefined {
  const from = endOf(before.path)
  const to = startOf(after.path)
  return piece.darts.find(
    ({ seam, mouth }) =>
      seam === before.seam && distance(mouth[0], from) < SAME_MOUTH && distance(mouth[1], to) < SAME_MOUTH,
  )
}

function cornerInside(piece: Piece, before: Stretch, after: Stretch): Problem {
  return {
    code: 'corner-inside-line',
    where: { piece: piece.id, seam: after.seam },
    actual: `a corner in the moved part of the ${before.seam === after.seam ? before.seam : `${before.seam} and the ${after.seam}`}`,
    expected: 'a line that runs on smoothly from taper to taper',
    hint: 'make it two corrections, one on each side of the corner',
  }
}

function gapWithoutDart(piece: Piece, before: Stretch): Problem {
  return {
    code: 'gap-without-dart',
    where: { piece: piece.id, seam: before.seam },
    actual: `the ${before.seam} is broken where no dart opens`,
    expected: 'parts of a seam that end at the mouth of a dart',
    hint: 'true the seam first',
  }
}

function dartCannotFollow(piece: Piece, dart: Dart, amount: number): Problem {
  return {
    code: 'dart-cannot-follow',
    where: { piece: piece.id, seam: dart.seam },
    actual: `the legs of ${dart.id} cannot be brought to a ${dart.seam} moved by ${Math.abs(amount).toFixed(1)} mm`,
    expected: 'a dart that stands on its seam at more than 30° and keeps half of its length',
    hint: `let the ${dart.seam} taper to nothing before the ${dart.id}, or move the dart first`,
  }
}
