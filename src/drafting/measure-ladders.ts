import { BODY_SIDES, type BodySide } from '../base/side.ts'
import { MEASURE_NAMES, MEASURES, type MeasureName } from '../body/measure.ts'
import type { Asked } from './change.ts'
import { type Maker, once, STEP } from './ladder.ts'
import { lengthText } from './written-choices.ts'

/** A measure at most a quarter off what was given: farther off it was not a slip of the tape. */
const SLIP = 0.25

/** The measure smaller, in steps. */
export function smaller(name: MeasureName): Maker {
  return measureLadder(name, -1)
}

/** The measure larger, in steps. */
export function larger(name: MeasureName): Maker {
  return measureLadder(name, 1)
}

/** Where left and right are apart only the side with the problem changes. */
function measureLadder(name: MeasureName, sign: 1 | -1): Maker {
  return ({ body: { left, right } }, side) => {
    const values = { left: left[name], right: right[name] }
    const one = values[side ?? 'right']
    if (!one || !values.left || !values.right) return undefined
    const apart = MEASURES[name].sided && values.left.value !== values.right.value
    const now = one.estimated ? 'estimated as' : 'now'
    return {
      steps: Math.floor((SLIP * one.value) / STEP),
      at: (step) => {
        const by = sign * step * STEP
        const value = rounded(one.value + by)
        const sides = Object.fromEntries(
          BODY_SIDES.map((s) => [s, rounded((values[s]?.value ?? 0) + (side === undefined || side === s ? by : 0))]),
        ) as Record<BodySide, number>
        return {
          say: `${apart && side ? `${side} ` : ''}${name} ${lengthText(value)}, if that is what the tape says: ${now} ${lengthText(one.value)}`,
          body: { [name]: apart ? sides : value },
        }
      },
    }
  }
}

/** A measure that was taken and is not needed, left blank. */
export function blank(name: MeasureName): Maker {
  return ({ body: { left, right } }) => {
    const measured = [left, right].some((half) => half[name] && !half[name].estimated)
    if (!measured || MEASURES[name].required) return undefined
    return once({
      say: `leave the ${name} blank until it is measured again: it is then estimated`,
      body: { [name]: null },
    })
  }
}

/** Every measure that was taken and is not needed. */
export function takenWithoutNeed({ body: { left, right } }: Asked): MeasureName[] {
  return MEASURE_NAMES.filter(
    (name) => !MEASURES[name].required && [left, right].some((half) => half[name]?.estimated === false),
  )
}

function rounded(mm: number): number {
  return Math.round(mm * 1000) / 1000
}
