import type { Body } from '../../src/body/body.ts'
import type { BenchCase } from './bench-case.ts'
import { castCases, surveyCase } from './cast-cases.ts'
import { castCommandCases } from './cast-command-cases.ts'
import { curveCases } from './curve-cases.ts'
import { lengthCases } from './length-cases.ts'
import { offsetCases } from './offset-cases.ts'
import { pageCases } from './page-cases.ts'
import { draftCase, patternCases } from './pattern-cases.ts'
import { startUpCases } from './start-up-cases.ts'

/** Every row of the bench, the draft of these bodies among them. */
export function benchCases(bodies: readonly Body[]): BenchCase[] {
  return [
    ...lengthCases,
    ...offsetCases,
    ...curveCases,
    ...patternCases,
    draftCase(bodies),
    surveyCase(bodies),
    ...pageCases,
    ...castCases,
    ...castCommandCases,
    ...startUpCases,
  ]
}
