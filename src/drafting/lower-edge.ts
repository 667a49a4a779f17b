import type { Problem } from '../base/problem.ts'
import { failure, type Result, success } from '../base/result.ts'
import { asin } from '../base/trig.ts'
import { type Point, point } from '../geometry/point.ts'
import { WAIST } from './defaults.ts'
import { doesNotSettle } from './does-not-settle.ts'
import type { SideSeam } from './side-seam.ts'
import type { DartShare } from './suppression.ts'
import { intakeForLength, type WaistPlan, type WaistSeam, waistSeam } from './waist-seam.ts'

export interface LowerPlan {
  readonly frame: { readonly underarm: Point }
  /** The side seam from where it meets the waist, or why there is none. */
  readonly sideFor: (waist: Point) => Result<SideSeam>
  readonly darts: DartShare
  readonly part: 'back' | 'front'
  /** Where the waist dart stands, or the middle of two; and how high its point lies. */
  readonly dartX: number
  readonly dartHeight: number
  /** What this half of the side seam takes of the suppression, mm; negative where it flares. */
  readonly sideShare: number
}

export interface LowerEdge {
  readonly waist: WaistSeam
  readonly side: SideSeam
}

/** The length of the waist is met to this, mm. */
const ACCURACY = 1e-8

/** The side seam moves by what is missing: what is left shrinks a hundredfold a round. */
const ROUNDS = 40

/**
 * Waist and side seam of one half, the waist exactly as long as the suppression leaves it (to 1e-8 mm): the darts take
 * what is needed, without darts the side seam moves. Problems: a part too short for a dart or for a side seam, darts
 * without room, those of the side seam, and a waist that does not settle.
 */
export function lowerEdge(plan: LowerPlan): Result<LowerEdge> {
  const { darts, frame } = plan
  if (plan.dartHeight < (darts.count > 0 ? WAIST.shortest : 0)) return failure(tooShort(plan))
  if (!roomForDarts(plan)) return failure(noRoomForDarts(plan))
  const length = frame.underarm.x - plan.sideShare - darts.intake
  let x = frame.underarm.x - plan.sideShare
  for (let round = 0; round < ROUNDS; round++) {
    const at = point(x, 0)
    const side = plan.sideFor(at)
    if (!side.ok) return side
    const seam: WaistPlan = { side: at, sideUp: side.value.upAtWaist, darts: dartPlaces(plan) }
    if (darts.count > 0) {
      const intake = intakeForLength(seam, length, darts.intake / darts.count)
      if (intake === undefined) break
      return success({ waist: waistSeam(seam, intake), side: side.value })
    }
    const waist = waistSeam(seam, 0)
    if (Math.abs(waist.length - length) < ACCURACY) return success({ waist, side: side.value })
    x += length - waist.length
  }
  return failure(
    doesNotSettle(
      `bodice ${plan.part}`,
      'waist',
      'body.waist girth',
      `the ${plan.part} waist of ${length.toFixed(0)} mm`,
    ),
  )
}

/** Whether the waist darts stand clear of center and side seam. */
function roomForDarts(plan: LowerPlan): boolean {
  const { darts, frame, sideShare } = plan
  const places = dartPlaces(plan)
  const [first] = places
  const last = places[places.length - 1]
  if (!first || !last) return true
  const half = darts.intake / darts.count / 2
  const side = frame.underarm.x - sideShare
  return first.x - half >= WAIST.clear && last.x + half <= side - WAIST.clear && half <= WAIST.widest * plan.dartHeight
}

function tooShort({ dartHeight, darts, part }: LowerPlan): Problem {
  const front = part === 'front'
  return {
    code: front ? 'bust-point-too-low' : 'back-too-short',
    where: { field: front ? 'body.neck to bust point' : 'body.back waist length' },
    actual: `${(dartHeight + WAIST.shortOf).toFixed(0)} mm from the ${front ? 'bust point' : 'underarm'} to the waist`,
    expected: `at least ${WAIST.shortOf + (darts.count > 0 ? WAIST.shortest : 0)} mm${darts.count > 0 ? ', for a waist dart' : ''}`,
    hint: front
      ? 'measure neck to bust point and front waist length again, from the side of the neck base'
      : 'measure back waist length and scye depth again, from the nape bone',
  }
}

function noRoomForDarts({ darts, part }: LowerPlan): Problem {
  return {
    code: 'no-room-for-waist-darts',
    where: { field: 'body.waist girth' },
    actual: `${darts.intake.toFixed(0)} mm to take in between bust and waist on each ${part} half`,
    expected: 'a bust and a waist of one body',
    hint: 'measure bust girth and waist girth again, and look at the unit they were written in',
  }
}

function dartPlaces({ darts, dartX, dartHeight }: LowerPlan): WaistPlan['darts'] {
  const each = darts.intake / darts.count
  // The strip between two darts is square to both: it bends by the angle of a dart, and its allowance must not fold over.
  const bent = 2 * asin(Math.min(each / 2 / dartHeight, WAIST.widest)) * WAIST.stripRadius
  // And one dart pressed onto the strip, allowance and all, must not reach the other.
  const pressed = (each / 2) * (1 + WAIST.pressedBelow / dartHeight)
  const step = each + Math.max(WAIST.betweenDarts, bent, pressed)
  return Array.from({ length: darts.count }, (_, k) => ({
    x: dartX + (k - (darts.count - 1) / 2) * step,
    pointHeight: dartHeight,
  }))
}
