import type { Asked, Change } from './change.ts'
import type { EaseName } from './choices.ts'
import { CAP, CLOTH_EASE } from './defaults.ts'
import { easeFor } from './ease.ts'
import { type Ladder, type Maker, STEP } from './ladder.ts'
import { lengthText } from './written-choices.ts'

export function moreEase(name: EaseName, most: number): Maker {
  return ({ choices }) => {
    const present = easeFor(choices, name)
    return {
      steps: most / STEP,
      at: (step) => easeChange(name, present + step * STEP, present),
    }
  }
}

function easeChange(name: EaseName, ease: number, present: number): Change {
  return {
    say: `${name} ease ${lengthText(ease)} instead of ${lengthText(present)}`,
    draft: { ease: { [name]: lengthText(ease) } },
  }
}

/** Relaxed and flexed ease go down together, whichever decides; a sleeve as tight as the arm is no remedy. */
export function lessUpperArmEase({ choices }: Asked): Ladder | undefined {
  if (choices.bicepsWidth !== undefined) return undefined
  const relaxed = easeFor(choices, 'upper arm')
  const flexed = easeFor(choices, 'upper arm flexed')
  return {
    steps: Math.ceil(Math.min(relaxed, flexed) / STEP) - 1,
    at: (step) => upperArmEase(relaxed, relaxed - step * STEP, flexed - step * STEP),
  }
}

export function moreUpperArmEase({ choices }: Asked): Ladder | undefined {
  if (choices.bicepsWidth !== undefined) return undefined
  const relaxed = easeFor(choices, 'upper arm')
  const flexed = easeFor(choices, 'upper arm flexed')
  return { steps: 100, at: (step) => upperArmEase(relaxed, relaxed + step * STEP, Math.max(flexed, step * STEP)) }
}

function upperArmEase(present: number, relaxed: number, flexed: number): Change {
  return {
    say: `upper arm ease ${lengthText(relaxed)} instead of ${lengthText(present)}`,
    draft: { ease: { 'upper arm': lengthText(relaxed), 'upper arm flexed': lengthText(flexed) } },
  }
}

/** More ease makes the cap taller; never more than the cloth takes. In half percents of the armscye. */
export function moreCapEase({ choices }: Asked): Ladder | undefined {
  const { asked, most } = CLOTH_EASE[choices.cloth]
  const given = choices.capEase
  if (given && 'mm' in given) return undefined
  const present = given?.share ?? asked
  return {
    steps: Math.floor((most - present) * 200 + 1e-9),
    at: (step) => {
      const percent = `${Math.round((present * 100 + step / 2) * 10) / 10} %`
      return {
        say: `cap ease of ${percent} of the armscye, which ${choices.cloth} still takes`,
        draft: { ease: { cap: percent } },
      }
    },
  }
}

const LOWEST_PERCENT = 6

export function lowerCap({ choices }: Asked): Ladder {
  const present = Math.ceil((choices.leastCapRatio ?? CAP.leastRatio) * 100)
  return {
    steps: present - LOWEST_PERCENT,
    at: (step) => ({
      say: `accept a cap as low as ${present - step} % of the armscye: a wide sleeve that folds under a hanging arm`,
      draft: { 'least cap height': `${present - step} %` },
    }),
  }
}

/** A length of the `draft` section that was given, made longer or shorter in steps. */
export function draftLength(name: string, key: 'capHeight' | 'bicepsWidth', sign: 1 | -1, most: number): Maker {
  return ({ choices }) => {
    const present = choices[key]
    if (present === undefined) return undefined
    const room = sign < 0 ? Math.min(most, present - STEP) : most
    return {
      steps: Math.max(Math.floor(room / STEP), 0),
      at: (step) => {
        const length = lengthText(present + sign * step * STEP)
        return { say: `${name} ${length} instead of ${lengthText(present)}`, draft: { [name]: length } }
      },
    }
  }
}
