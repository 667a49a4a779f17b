import { failure, type Result, success } from '../base/result.ts'
import type { Cap, CapGiven } from './cap.ts'
import { armTooThick, capTooLow, capTooShort, contradiction, noSuchCap } from './cap-problems.ts'
import type { Choices } from './choices.ts'
import { CAP } from './defaults.ts'
import { capEaseAsked, type UpperArm } from './ease.ts'

export interface CapChoice {
  readonly choices: Choices
  readonly arm: UpperArm
  /** Length of the armscye, mm. */
  readonly armscye: number
  readonly solve: (given: CapGiven) => Cap | undefined
}

/** How far a third figure may be from what the other two give, mm. */
const AGREES = 0.5

/** A solved width or ease may be a rounding short, mm. */
const ROUNDING = 1e-6

/**
 * The cap for what was chosen: of biceps width, cap height and cap ease any two decide the third; without a height,
 * the upper arm and the cloth's ease. Problems: no such cap, one lower than is accepted, one shorter than its armscye,
 * a biceps line narrower than the arm, or three figures that contradict each other, with the numbers.
 */
export function chooseCap(request: CapChoice): Result<Cap> {
  const { choices, arm, armscye, solve } = request
  const { capHeight: height, bicepsWidth } = choices
  const ease = capEaseAsked(choices, armscye)
  const width = bicepsWidth ?? arm.width
  const three = height !== undefined && bicepsWidth !== undefined && choices.capEase !== undefined
  const given: CapGiven =
    height === undefined || three
      ? { width, ease }
      : choices.capEase !== undefined
        ? { height, ease }
        : { width, height }
  const cap = solve(given)
  if (three && (!cap || Math.abs(cap.height - height) > AGREES)) {
    return failure(contradiction(request, { width, height, ease }, cap))
  }
  if (!cap) return failure(height === undefined ? capTooLow(request, undefined) : noSuchCap(request, given))
  if (cap.width < Math.max(arm.body, arm.flexed ?? 0) - ROUNDING) return failure(armTooThick(request, cap))
  if (cap.height < (choices.leastCapRatio ?? CAP.leastRatio) * armscye) return failure(capTooLow(request, cap))
  if (cap.ease < -ROUNDING) return failure(capTooShort(request, cap))
  return success(cap)
}
