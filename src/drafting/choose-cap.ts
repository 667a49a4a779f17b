import type { Problem } from '../base/problem.ts'
import { failure, type Result, success } from '../base/result.ts'
import type { Cap, CapGiven } from './cap.ts'
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

/**
 * The cap for what was chosen: of biceps width, cap height and cap ease any two decide the third; without a height,
 * the upper arm and the cloth's ease. Problems: no such cap, one lower than is accepted, one shorter than its armscye,
 * a biceps line narrower than the arm, or three figures that contradict each other, with the numbers.
 */
export function chooseCap({ choices, arm, armscye, solve }: CapChoice): Result<Cap> {
  const { capHeight: height, bicepsWidth } = choices
  const width = bicepsWidth ?? arm.width
  const ease = capEaseAsked(choices, armscye)
  const three = height !== undefined && bicepsWidth !== undefined && choices.capEase !== undefined
  const given: CapGiven =
    height === undefined || three
      ? { width, ease }
      : choices.capEase !== undefined
        ? { height, ease }
        : { width, height }
  const cap = solve(given)
  const least = choices.leastCapRatio ?? CAP.leastRatio
  if (!cap || cap.height < least * armscye) return failure(capTooLow(cap, armscye, width, least))
  if (three && Math.abs(cap.height - height) > AGREES) return failure(contradiction(cap, height, solve))
  if (cap.ease < 0) return failure(capTooShort(cap, armscye))
  if (cap.width < Math.max(arm.body, arm.flexed ?? 0)) return failure(armTooThick(cap, arm))
  return success(cap)
}

function capTooLow(cap: Cap | undefined, armscye: number, width: number, least: number): Problem {
  return {
    code: 'cap-too-low',
    where: { field: 'body.upper arm girth' },
    actual: cap
      ? `a cap ${cap.height.toFixed(0)} mm high on an armscye of ${armscye.toFixed(0)} mm`
      : `no cap on a biceps line of ${width.toFixed(0)} mm is as short as its armscye of ${armscye.toFixed(0)} mm with ease`,
    expected: `a cap height of at least ${(least * 100).toFixed(0)} % of the armscye`,
    hint: 'lower the underarm (a longer armscye), or take ease from the upper arm; check upper arm girth and scye depth',
  }
}

function contradiction(cap: Cap, height: number, solve: CapChoice['solve']): Problem {
  const byEase = solve({ height, ease: cap.ease })
  const byWidth = solve({ height, width: cap.width })
  return {
    code: 'cap-contradicts-itself',
    where: { field: 'draft.cap height' },
    actual: `a biceps line of ${cap.width.toFixed(1)} mm with ${cap.ease.toFixed(1)} mm of cap ease makes a cap ${cap.height.toFixed(1)} mm high, not ${height.toFixed(1)} mm`,
    expected: 'any two of biceps width, cap height and cap ease',
    hint: 'leave one of the three out, or take one of the figures that agree with the other two',
    remedies: [
      { say: `cap height ${cap.height.toFixed(2)} mm`, set: { draft: { 'cap height': `${cap.height.toFixed(2)} mm` } } },
      ...(byEase && byEase.width > 0
        ? [{ say: `biceps width ${byEase.width.toFixed(2)} mm`, set: { draft: { 'biceps width': `${byEase.width.toFixed(2)} mm` } } }]
        : []),
      ...(byWidth && byWidth.ease >= 0
        ? [{ say: `cap ease ${byWidth.ease.toFixed(2)} mm`, set: { draft: { ease: { cap: `${byWidth.ease.toFixed(2)} mm` } } } }]
        : []),
    ],
  }
}

function capTooShort(cap: Cap, armscye: number): Problem {
  return {
    code: 'cap-too-short',
    where: { field: 'draft.cap height' },
    actual: `a cap ${cap.height.toFixed(1)} mm high on a biceps line of ${cap.width.toFixed(1)} mm is ${(-cap.ease).toFixed(1)} mm shorter than its armscye of ${armscye.toFixed(0)} mm`,
    expected: 'a cap at least as long as its armscye',
    hint: 'give a higher cap or a wider biceps line, or leave the cap height out',
    remedies: [{ say: 'leave the cap height out: upper arm and cap ease then decide it', set: { draft: { 'cap height': null } } }],
  }
}

function armTooThick(cap: Cap, arm: UpperArm): Problem {
  return {
    code: 'sleeve-narrower-than-arm',
    where: { field: 'draft.cap height' },
    actual: `a biceps line of ${cap.width.toFixed(0)} mm on an upper arm of ${arm.body.toFixed(0)} mm`,
    expected: 'a sleeve at least as wide as the arm',
    hint: 'give a lower cap or less cap ease, or leave the cap height out',
    remedies: [{ say: 'leave the cap height out: upper arm and cap ease then decide it', set: { draft: { 'cap height': null } } }],
  }
}
