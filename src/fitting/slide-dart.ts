import type { Problem } from '../base/problem.ts'
import { failure, type Result, success } from '../base/result.ts'
import { add, between, distance, point as pointOf, rotateAbout, subtract, turnBetween } from '../geometry/point.ts'
import type { Pattern } from '../pattern/pattern.ts'
import { directionOnSeam, pieceOf, seamLength, seamOf } from '../pattern/seam.ts'
import { dartPlace } from './dart-place.ts'
import { type OperationResult, runOperations, unchanged } from './operation.ts'
import { IDENTITY } from './position-map.ts'
import { rotateDart } from './rotate-dart.ts'
import { setDart } from './set-dart.ts'

/** A dart to be moved along its seam. */
export interface SlideDartOptions {
  /** Id of the piece. */
  readonly piece: string
  /** Id of the dart. */
  readonly dart: string
  /** How far it goes along its seam, mm of sewn length; negative toward the seam's start. */
  readonly by: number
}

const ORIGIN = pointOf(0, 0)

/**
 * The dart at another place of its seam, with the same intake and length and standing on the seam as it did: it is
 * turned there about its point, then its point goes along. Sewn lengths stay within 0.5 mm for moves of up to 20 mm.
 * Zero returns the same pattern. Problems: as `rotateDart` and `setDart`, a place off the seam, another dart on
 * the way. Throws when there is
 * no such dart.
 */
export function slideDart(
  pattern: Pattern,
  { piece: id, dart: dartId, by }: SlideDartOptions,
): Result<OperationResult> {
  const piece = pieceOf(pattern, id)
  const dart = piece.darts.find((d) => d.id === dartId)
  if (!dart) throw new RangeError(`no dart "${dartId}" on ${id}`)
  if (by === 0) return success(unchanged(pattern))
  const { seam, along } = dartPlace(piece, dart)
  const length = seamLength(seamOf(piece, seam))
  if (along + by < 1 || along + by > length - 1) return failure(offSeam(id, seam, dartId, along + by, length))
  const over = piece.darts.find((other) => {
    if (other === dart || other.seam !== seam) return false
    const there = dartPlace(piece, other).along
    return (there - along) * (there - along - by) < 0
  })
  if (over) return failure(inTheWay(id, seam, dartId, over.id))
  const [a, b] = dart.mouth
  const at = (place: number) => directionOnSeam(seamOf(piece, seam), place)
  // On one side of the dart, so that its own wedge is no turn of the seam.
  const seamTurn =
    by < 0 ? turnBetween(at(along - 0.01), at(along + by)) : turnBetween(at(along + 0.01), at(along + by))
  return runOperations(pattern, IDENTITY, [
    (now) => rotateDart(now, { piece: id, dart: dartId, to: { seam, along: along + by } }),
    (now) => {
      const turned = pieceOf(now, id).darts.find((d) => d.id === dartId)
      if (!turned) throw new RangeError(`${dartId} was lost`)
      const middle = between(turned.mouth[0], turned.mouth[1], 0.5)
      // Parallel to where it stood, turned only as far as the seam turns on the way.
      const point = add(middle, rotateAbout(subtract(dart.point, between(a, b, 0.5)), ORIGIN, seamTurn))
      return setDart(now, { piece: id, dart: dartId, intake: distance(a, b), point })
    },
  ])
}

function inTheWay(piece: string, seam: string, dart: string, other: string): Problem {
  return {
    code: 'dart-in-the-way',
    where: { piece, seam },
    actual: `the ${dart} would be moved over the ${other}`,
    expected: 'darts of a seam in the order in which they are',
    hint: `move the ${other} first, or the ${dart} by less`,
  }
}

function offSeam(piece: string, seam: string, dart: string, along: number, length: number): Problem {
  return {
    code: 'dart-off-seam',
    where: { piece, seam },
    actual: `the ${dart} would open ${along.toFixed(1)} mm along the ${seam}`,
    expected: `a place within its ${length.toFixed(1)} mm`,
    hint: 'move it by less',
  }
}
