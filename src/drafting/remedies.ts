import type { Problem } from '../base/problem.ts'
import type { LengthUnit } from '../base/units.ts'
import { type Asked, applyChange, bothChanges, type Change, remedyOf } from './change.ts'
import type { Ladder } from './ladder.ts'
import { changeInUnit } from './remedy-in-unit.ts'
import { laddersFor } from './remedy-ladders.ts'
import type { SidedProblem } from './sided-problem.ts'

/** Says what problems a body with these choices has; none where it drafts. */
type Draft = (asked: Asked) => readonly SidedProblem[]

/** After a failure the next try is this much farther, so that a long ladder takes few tries. */
const STRIDE = 1.4

/**
 * The problems with the remedies that work. Each was tried by drafting with it applied: its own problem is then gone
 * and no new one has come. Where a remedy has an amount it is the least that works, to one step of its kind. Where no
 * single change does, a change and a second one for what it brings up; at last, to measure again. With a `unit` amounts
 * are then rounded to the marks of its tape where they still work.
 */
export function withRemedies(
  problems: readonly SidedProblem[],
  asked: Asked,
  draft: Draft,
  unit: LengthUnit | undefined,
): Problem[] {
  return problems.map((one) => {
    const others = new Set(problems.filter((other) => other !== one).map(keyOf))
    const isFine = (left: readonly SidedProblem[]) => left.every((p) => keyOf(p) !== keyOf(one) && others.has(keyOf(p)))
    const works = (change: Change) => draftedWith(change, asked, draft, isFine)
    const { own, last } = laddersFor(one, asked)
    const tries = [
      () => own.flatMap((ladder) => leastThatWorks(ladder, works)),
      () => inTwoSteps(one, own, asked, draft, works).slice(0, 2),
      () => last.flatMap((ladder) => leastThatWorks(ladder, works)).slice(0, 1),
    ]
    for (const attempt of tries) {
      const found = attempt()
      if (found.length === 0) continue
      const said = unit === undefined ? found : found.map((change) => changeInUnit(change, asked, unit, works))
      return { ...one.problem, remedies: said.map((change) => remedyOf(change, unit ?? 'mm')) }
    }
    const { remedies: _, ...without } = one.problem
    return without
  })
}

function draftedWith(
  change: Change,
  asked: Asked,
  draft: Draft,
  isFine: (left: readonly SidedProblem[]) => boolean,
): boolean {
  const changed = applyChange(asked, change)
  return changed !== undefined && isFine(draft(changed))
}

/** For each change that only brings up another problem: the same with a change for that one. */
function inTwoSteps(
  one: SidedProblem,
  own: readonly Ladder[],
  asked: Asked,
  draft: Draft,
  works: (change: Change) => boolean,
): Change[] {
  const isGone = (left: readonly SidedProblem[]) => left.every((p) => keyOf(p) !== keyOf(one))
  return own.flatMap((ladder) => {
    const [first] = leastThatWorks(ladder, (change) => draftedWith(change, asked, draft, isGone))
    const changed = first && applyChange(asked, first)
    const next = changed && draft(changed)[0]
    if (!changed || !next) return []
    for (const second of laddersFor(next, changed).own) {
      const both: Ladder = { steps: second.steps, at: (step) => bothChanges(first, second.at(step)) }
      const found = leastThatWorks(both, works)
      if (found.length > 0) return found
    }
    return []
  })
}

function keyOf({ problem, side }: SidedProblem): string {
  return `${problem.code} ${problem.where.field ?? ''} ${side ?? ''}`
}

/** The lowest step that works, by growing strides up the ladder and halving back; none where no stride meets one. */
function leastThatWorks({ steps, at }: Ladder, works: (change: Change) => boolean): Change[] {
  const tryStep = (step: number): Change | undefined => {
    const change = at(step)
    return change && works(change) ? change : undefined
  }
  let bad = 0
  let good = 1
  let best: Change | undefined
  while (bad < steps) {
    best = tryStep(good)
    if (best) break
    bad = good
    good = Math.min(steps, Math.max(good + 1, Math.floor(good * STRIDE)))
  }
  while (best && good - bad > 1) {
    const middle = Math.floor((bad + good) / 2)
    const change = tryStep(middle)
    best = change ?? best
    if (change) good = middle
    else bad = middle
  }
  return best ? [best] : []
}
