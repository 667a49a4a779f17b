import { failure, type Result, success } from '../base/result.ts'
import { type BodyHalf, measureOf } from '../body/body.ts'
import { type Point, point } from '../geometry/point.ts'
import type { Choices } from './choices.ts'
import { BUST_DART } from './defaults.ts'

export interface BustBalance {
  /** Height of the front side neck point over the back one, mm; negative on a round or long back. */
  readonly balance: number
  /** What the bust dart (or ease in the side seam) takes: the balance, never below 0. */
  readonly intake: number
  readonly from: 'measured' | 'given' | 'estimated'
  readonly point: Point
}

/**
 * Where the bust lies and how much longer the front is than the back. With a measured front waist length,
 * |side neck point − bust point| + height of the bust point = front waist length decides; otherwise the given
 * intake, or an estimate (common practice). Heights in mm above the waist; the front side neck point stands
 * `neckX` mm from the center, the back one at height `backNeckHeight`.
 */
export function bustBalance(
  half: BodyHalf,
  choices: Choices,
  backNeckHeight: number,
  neckX: number,
  waistDrop: number,
): Result<BustBalance> {
  const toBust = measureOf(half, 'neck to bust point')
  const x = measureOf(half, 'bust point width') / 2
  const across = neckX - x
  if (toBust <= Math.abs(across)) {
    return failure({
      code: 'bust-point-out-of-reach',
      where: { field: 'body.neck to bust point' },
      actual: `neck to bust point ${toBust.toFixed(0)} mm does not reach a bust point ${Math.abs(across).toFixed(0)} mm to the side`,
      expected: 'a bust point below the side of the neck',
      hint: 'measure from the side of the neck base to the bust point, and from bust point to bust point',
    })
  }
  const down = Math.sqrt(toBust * toBust - across * across)
  const measured = half['front waist length']
  if (measured) {
    const height = measured.value - toBust - waistDrop
    const balance = height + down - backNeckHeight
    return success({ balance, intake: Math.max(balance, 0), from: 'measured', point: point(x, height) })
  }
  const { intake, from } = unmeasuredIntake(half, choices)
  return success({ balance: intake, intake, from, point: point(x, backNeckHeight + intake - down) })
}

function unmeasuredIntake(half: BodyHalf, choices: Choices): Pick<BustBalance, 'intake' | 'from'> {
  if (choices.bustDart === 'flat') return { intake: 0, from: 'given' }
  if (typeof choices.bustDart === 'number') return { intake: choices.bustDart, from: 'given' }
  const upperChest = half['upper chest girth']
  if (!upperChest) return { intake: BUST_DART.unknown, from: 'estimated' }
  const estimate = BUST_DART.perChestDifference * (measureOf(half, 'bust girth') - upperChest.value) + BUST_DART.plus
  return { intake: Math.min(Math.max(estimate, 0), BUST_DART.most), from: 'estimated' }
}
