import type { BodySide } from '../base/side.ts'
import type { Asked, Change } from './change.ts'
import type { ChoicesTree } from './written-choices.ts'

/** One kind of change with growing amounts: steps count from 1, the gentlest. */
export interface Ladder {
  readonly steps: number
  /** Undefined where this step makes no sense. */
  readonly at: (step: number) => Change | undefined
}

/** Steps of 2 mm: finer than anyone pins, coarse enough to be found at once. */
export const STEP = 2

/** A ladder for what was asked; `side` is that of the problem. Undefined where there is nothing of its kind to change. */
export type Maker = (asked: Asked, side: BodySide | undefined) => Ladder | undefined

/** A change without an amount. */
export function once(change: Change): Ladder {
  return { steps: 1, at: () => change }
}

/** A change of the `draft` section alone. */
export function setDraft(say: string, draft: ChoicesTree): Maker {
  return () => once({ say, draft })
}
