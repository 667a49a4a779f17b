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

/** How far the ends of each stretch land beside amount times normal, and the darts that move. */
export interface Joints {
  readonly extras: readonly { readonly start?: Point; readonly end?: Point }[]
  readonly darts: ReadonlyMap<string, Point>
}

/**
 * Makes the stretches of a moved line meet again: at a slight corner on the two moved lines' crossing, at a dart
 * both mouth points by the same vector, square to the mouth, so that the dart moves as it is and keeps its
 * intake, length and legs. Problems: a real corner inside the moved line, or a gap without a dart.
 */
export function shiftJoints(run: SeamRun, profile: Profile, ends: JointShift): Result<Joints> {
  const extras: { start?: Point; end?: Point }[] = run.stretches.map(() => ({}))
  const darts = new Map<string, Point>()
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
    let vector: Point
    if (touches(before, after)) {
      if (Math.abs(turnBetween(into, out)) > CORNER) return failure(cornerInside(run.piece, before, after))
      const sum = add(rightOf(into), rightOf(out))
      vector = scale(sum, amount / (1 + dot(into, out)))
    } else {
      const dart = dartBetween(run.piece, before, after)
      if (!dart) return failure(gapWithoutDart(run.piece, before))
      vector = scale(rightOf(unit(subtract(dart.mouth[1], dart.mouth[0]))), amount)
      darts.set(dart.id, vector)
    }
    set(extras[i - 1], 'end', beside(vector, into, amount))
    set(extras[i], 'start', beside(vector, out, amount))
  }
  return success({ extras, darts })
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
