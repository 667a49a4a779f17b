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

/**
 * The rows of the bench, the draft of these bodies among them, by what is timed in one process: what another row does
 * with the same functions would change how they are compiled.
 */
export function benchGroups(bodies: readonly Body[]): Readonly<Record<string, readonly BenchCase[]>> {
  return {
    curves: [...lengthCases, ...offsetCases, ...curveCases],
    patterns: patternCases,
    bodies: [draftCase(bodies), surveyCase(bodies, false), surveyCase(bodies, true)],
    pages: pageCases,
    casts: castCases,
    commands: [...castCommandCases, ...startUpCases],
  }
}

/** All of them. */
export function benchCases(bodies: readonly Body[]): BenchCase[] {
  return Object.values(benchGroups(bodies)).flat()
}
