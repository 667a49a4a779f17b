import { percent } from '../base/percent.ts'
import type { Problem, Remedy } from '../base/problem.ts'
import type { Cap, CapGiven } from './cap.ts'
import type { CapChoice } from './choose-cap.ts'
import { CAP, CLOTH_EASE } from './defaults.ts'
import type { UpperArm } from './ease.ts'
import { lengthText } from './written-choices.ts'

/** No cap as high as is accepted: what decides is the width of the sleeve, or the height that was given. */
export function capTooLow({ choices, arm, armscye }: CapChoice, cap: Cap | undefined): Problem {
  const least = choices.leastCapRatio ?? CAP.leastRatio
  const width = choices.bicepsWidth ?? arm.width
  const given = choices.capHeight !== undefined
  return {
    code: 'cap-too-low',
    where: { field: given ? 'draft.cap height' : fieldOfWidth(choices, arm) },
    actual: cap
      ? `a cap ${cap.height.toFixed(0)} mm high on an armscye of ${armscye.toFixed(0)} mm and a biceps line of ${cap.width.toFixed(0)} mm`
      : `no cap on a biceps line of ${width.toFixed(0)} mm is as short as its armscye of ${armscye.toFixed(0)} mm with ease`,
    expected: `a cap height of at least ${percent(least)} of the armscye, ${(least * armscye).toFixed(0)} mm`,
    hint: given
      ? 'give a higher cap, or leave the cap height out'
      : 'lower the underarm (a longer armscye), or take width from the sleeve; measure the upper arm and the scye depth again',
  }
}

/** Where the width of the sleeve comes from. */
function fieldOfWidth({ bicepsWidth, ease }: CapChoice['choices'], { from }: UpperArm): string {
  if (bicepsWidth !== undefined) return 'draft.biceps width'
  const name = from === 'flexed' ? 'upper arm flexed' : 'upper arm'
  if ((ease[name] ?? 0) < 0) return `draft.ease.${name}`
  return from === 'flexed' ? 'body.upper arm girth flexed' : 'body.upper arm girth'
}

/** Cap height with a width or an ease that no cap has together. */
export function noSuchCap({ armscye }: CapChoice, given: CapGiven): Problem {
  const height = 'height' in given ? given.height : 0
  const other =
    'width' in given
      ? `a biceps line of ${given.width.toFixed(0)} mm`
      : `${'ease' in given ? given.ease.toFixed(0) : 0} mm of cap ease`
  return {
    code: 'no-such-cap',
    where: { field: 'draft.cap height' },
    actual: `no cap ${height.toFixed(0)} mm high with ${other} fits an armscye of ${armscye.toFixed(0)} mm`,
    expected: 'a cap height of a quarter to a third of the armscye',
    hint: 'look at the unit of the cap height, or leave it out',
  }
}

/** Three figures of which any two give another third. */
export function contradiction(
  { solve }: CapChoice,
  { width, height, ease }: { readonly width: number; readonly height: number; readonly ease: number },
  cap: Cap | undefined,
): Problem {
  const byEase = solve({ height, ease })
  const byWidth = solve({ height, width })
  const makes = cap
    ? `a biceps line of ${width.toFixed(1)} mm with ${ease.toFixed(1)} mm of cap ease makes a cap ${cap.height.toFixed(1)} mm high, not ${height.toFixed(1)} mm`
    : `no cap has a biceps line of ${width.toFixed(1)} mm and ${ease.toFixed(1)} mm of cap ease`
  const third = [
    byEase ? `${height.toFixed(1)} mm high with that ease it is ${byEase.width.toFixed(1)} mm wide` : '',
    byWidth ? `${height.toFixed(1)} mm high with that width its ease is ${byWidth.ease.toFixed(1)} mm` : '',
  ].filter((text) => text !== '')
  return {
    code: 'cap-contradicts-itself',
    where: { field: 'draft.cap height' },
    actual: [makes, ...third].join('; '),
    expected: 'any two of biceps width, cap height and cap ease',
    hint: 'leave one of the three out, or take one of the figures that agree with the other two',
    remedies: [
      ...(cap ? [figure('cap height', cap.height)] : []),
      ...(byEase ? [figure('biceps width', byEase.width)] : []),
      ...(byWidth ? [figure('cap ease', byWidth.ease)] : []),
    ],
  }
}

/** A figure as a remedy, to a hundredth of a millimetre. */
function figure(name: 'cap height' | 'biceps width' | 'cap ease', mm: number): Remedy {
  const text = lengthText(Math.round(mm * 100) / 100)
  return { say: `${name} ${text}`, set: { draft: name === 'cap ease' ? { ease: { cap: text } } : { [name]: text } } }
}

/** A cap shorter than its armscye; the figures that give it the cloth's ease are its remedies. */
export function capTooShort({ choices, armscye, solve }: CapChoice, cap: Cap): Problem {
  const ease = CLOTH_EASE[choices.cloth].asked * armscye
  const higher = solve({ width: cap.width, ease })
  const wider = solve({ height: cap.height, ease })
  return {
    code: 'cap-too-short',
    where: { field: 'draft.cap height' },
    actual: `a cap ${cap.height.toFixed(1)} mm high on a biceps line of ${cap.width.toFixed(1)} mm is ${(-cap.ease).toFixed(1)} mm shorter than its armscye of ${armscye.toFixed(0)} mm`,
    expected: 'a cap at least as long as its armscye',
    hint: `give a higher cap or a wider biceps line, or leave the cap height out`,
    remedies: [
      ...(higher ? [withEase(figure('cap height', higher.height), ease)] : []),
      ...(wider ? [withEase(figure('biceps width', wider.width), ease)] : []),
    ],
  }
}

function withEase({ say, set }: Remedy, ease: number): Remedy {
  return { say: `${say}: the cap then has ${ease.toFixed(0)} mm of ease`, set }
}

/** A sleeve narrower than the arm in it: given so, or what the given height and ease come to. */
export function armTooThick({ choices, arm }: CapChoice, cap: Cap): Problem {
  const girth = Math.max(arm.body, arm.flexed ?? 0)
  const solved = choices.bicepsWidth === undefined && choices.capHeight !== undefined && choices.capEase !== undefined
  return {
    code: 'sleeve-narrower-than-arm',
    where: { field: solved ? 'draft.cap height' : fieldOfWidth(choices, arm) },
    actual: `a biceps line of ${cap.width.toFixed(0)} mm on an upper arm of ${girth.toFixed(0)} mm${girth === arm.flexed ? ', flexed' : ''}`,
    expected: 'a sleeve at least as wide as the arm',
    hint: solved
      ? 'give a lower cap or more cap ease, or leave one of them out'
      : 'give more width, or leave it to the fit',
  }
}
