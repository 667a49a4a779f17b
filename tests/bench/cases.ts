import type { BenchCase } from './bench-case.ts'
import { curveCases } from './curve-cases.ts'
import { lengthCases } from './length-cases.ts'
import { offsetCases } from './offset-cases.ts'
import { patternCases } from './pattern-cases.ts'

export const CASES: readonly BenchCase[] = [...lengthCases, ...offsetCases, ...curveCases, ...patternCases]
