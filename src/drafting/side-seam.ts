import type { Problem } from '../base/problem.ts'
import { failure, type Result, success } from '../base/result.ts'
import type { Path } from '../geometry/path.ts'
import { polyline } from '../geometry/path.ts'
import { along, cross, distance, heading, type Point, rotateAbout, subtract, unit } from '../geometry/point.ts'
import type { Dart } from '../pattern/piece.ts'
import { BUST_DART } from './defaults.ts'

export interface SideSeam {
  /** From the waist to the underarm; two parts where a bust dart opens on it. */
  readonly parts: readonly Path[]
  readonly dart?: Dart
  /** Unit direction upwards at the waist and at the underarm. */
  readonly upAtWaist: Point
  readonly upAtUnderarm: Point
}

/** A straight side seam. */
export function plainSideSeam(waist: Point, underarm: Point): SideSeam {
  const up = unit(subtract(underarm, waist))
  return { parts: [polyline([waist, underarm])], upAtWaist: up, upAtUnderarm: up }
}

/**
 * A side seam with a bust dart whose point is `dartPoint`: with the dart folded, the seam is one straight line
 * of `length` mm. The part below the dart turns about the dart's point until the seam has that length; both
 * mouth points lie at the same distance from the point, the axis level where the seam allows it and otherwise
 * falling so that at least 25 mm of seam stay above the dart. Problem (`no-room-for-bust-dart`): no turn gives that
 * length, legs shorter than 40 mm, or less than 25 mm of seam below the dart.
 */
export function sideSeamWithDart(waist: Point, underarm: Point, dartPoint: Point, length: number): Result<SideSeam> {
  const folded = (angle: number) => rotateAbout(waist, dartPoint, angle)
  const excess = (angle: number) => distance(underarm, folded(angle)) - length
  let low = 0
  let high = Math.PI / 2
  if (excess(low) < 0 || excess(high) > 0) return failure(noRoom(waist, dartPoint))
  // Bisection between signs that differ: right to rounding.
  for (let i = 0; i < 60 && high - low > 1e-13; i++) {
    const middle = (low + high) / 2
    if (excess(middle) > 0) low = middle
    else high = middle
  }
  const angle = (low + high) / 2
  const down = unit(subtract(folded(angle), underarm))
  const ray = heading(angle / 2)
  // The upper leg meets the folded seam where both lines cross.
  const level = cross(subtract(dartPoint, underarm), ray) / cross(down, ray)
  const above = Math.max(level, BUST_DART.belowUnderarm)
  const upper = along(underarm, down, above)
  const lower = rotateAbout(upper, dartPoint, -angle)
  const leg = distance(dartPoint, upper)
  if (!(upper.x > dartPoint.x && leg >= BUST_DART.shortest && length - above >= BUST_DART.aboveWaist)) {
    return failure(noRoom(waist, dartPoint))
  }
  return success({
    parts: [polyline([waist, lower]), polyline([upper, underarm])],
    dart: { id: 'bust dart', seam: 'side seam', mouth: [lower, upper], point: dartPoint },
    upAtWaist: unit(subtract(lower, waist)),
    upAtUnderarm: unit(subtract(underarm, upper)),
  })
}

function noRoom(waist: Point, dartPoint: Point): Problem {
  const x = dartPoint.x - BUST_DART.shortOf
  const { shortOf, shortest, aboveWaist } = BUST_DART
  return {
    code: 'no-room-for-bust-dart',
    where: { field: 'body.neck to bust point', piece: 'bodice front', seam: 'side seam' },
    actual: `the bust point lies ${x.toFixed(0)} mm from the center and ${dartPoint.y.toFixed(0)} mm above the waist on a front ${waist.x.toFixed(0)} mm wide at the waist`,
    expected: `at least ${shortOf + shortest} mm from bust point to side seam, and ${aboveWaist} mm of side seam below the dart`,
    hint: 'measure front waist length, neck to bust point and bust point width again, or ease the bust in without a dart',
  }
}
