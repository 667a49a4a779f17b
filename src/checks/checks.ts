import type { Finding } from '../base/problem.ts'
import { allowances } from './allowances.ts'
import { asAsked } from './as-asked.ts'
import { capEase } from './cap-ease.ts'
import { capHeight } from './cap-height.ts'
import { capInflections } from './cap-inflections.ts'
import type { Check, CheckContext } from './check.ts'
import { cutLineClear } from './cut-line.ts'
import { dartLegs } from './dart-legs.ts'
import { dartMouths } from './dart-mouths.ts'
import { grain } from './grain.ts'
import { handPasses } from './hand-passes.ts'
import { hems } from './hems.ts'
import { joinsSmooth } from './joins-smooth.ts'
import { withMend, withoutTries } from './mend.ts'
import { notches } from './notches.ts'
import { outline } from './outline.ts'
import { selfCrossing } from './self-crossing.ts'
import { sides } from './sides.ts'
import { sortFindings } from './sort-findings.ts'
import { squareCorners } from './square-corners.ts'
import { underarmSeams } from './underarm-seams.ts'
import { walk } from './walk.ts'
import { wearingEase } from './wearing-ease.ts'

/** Every check, in the order in which a draper would look: can it be cut, can it be sewn, does it fit. */
export const CHECKS: readonly Check[] = [
  outline,
  selfCrossing,
  allowances,
  cutLineClear,
  hems,
  grain,
  sides,
  dartLegs,
  dartMouths,
  walk,
  notches,
  underarmSeams,
  joinsSmooth,
  squareCorners,
  capInflections,
  capHeight,
  capEase,
  wearingEase,
  handPasses,
  asAsked,
]

/** What is asked beside what the checks find. */
export interface RunChecksOptions {
  /**
   * Whether corrections that could mend a finding are tried on the pattern and the first that does is named; default true.
   * While a pattern is being dragged about nobody reads them, and trying them takes about half the time.
   */
  readonly mends?: boolean
}

/**
 * What the checks find, errors first, otherwise in the order of the checks, each with the correction that would mend it where
 * there is one. Own checks are added to the list.
 */
export function runChecks(
  context: CheckContext,
  checks: readonly Check[] = CHECKS,
  { mends = true }: RunChecksOptions = {},
): Finding[] {
  const found = checks.map((check) => ({ check, ofCheck: check.run(context) }))
  if (!mends) return sortFindings(found.flatMap(({ ofCheck }) => ofCheck.map(withoutTries)))
  const all = found.flatMap(({ ofCheck }) => ofCheck)
  return sortFindings(
    found.flatMap(({ check, ofCheck }) => {
      // Its own check tells soonest that a correction does not mend it; of the others only new errors count.
      const ordered = [check, ...checks.filter((other) => other !== check && !other.mild)]
      return ofCheck.map((one) => withMend(one, all, context, ordered))
    }),
  )
}
