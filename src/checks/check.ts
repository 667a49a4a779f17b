import type { Finding } from '../base/problem.ts'
import type { LengthUnit } from '../base/units.ts'
import type { Body } from '../body/body.ts'
import type { Cloth } from '../drafting/choices.ts'
import type { MeasureRow } from '../drafting/draft.ts'
import type { CornerMade } from '../fitting/operation.ts'
import type { Pattern } from '../pattern/pattern.ts'

/** What a check may look at. */
export interface CheckContext {
  /** The pattern as it stands, after every fitting that counts. */
  readonly pattern: Pattern
  /** What was asked, beside what this pattern measures. */
  readonly measures: readonly MeasureRow[]
  /** The unit in which findings speak; numbers stay mm everywhere else. */
  readonly units: LengthUnit
  /** The body, for what no line of the pattern shows: whether the hand passes; not looked at when absent. */
  readonly body?: Body
  /** What is cut, for how much of a cap it takes; what the joins declare when absent. */
  readonly cloth?: Cloth
  /** Corners that corrections meant to make and have explained; none when absent. */
  readonly corners?: readonly CornerMade[]
}

/** A correction as a performer file has it: `do` first, then `side` and its settings, lengths with their unit. */
export type WrittenCorrection = Readonly<Record<string, string>> & {
  /** Name of the correction. */
  readonly do: string
}

/** What a check found, and the corrections that could mend it, the likeliest first; `runChecks` tries them. */
export interface Found extends Finding {
  /** None where no correction would mend it. */
  readonly tries?: readonly WrittenCorrection[]
}

/**
 * One check: what it looks at, in a few words, and the findings it returns. It never throws and never changes
 * anything; an own check is an object like these, given to `runChecks`.
 */
export interface Check {
  /** Unique among the checks, in the words of the report. */
  readonly name: string
  /** What it looks at, in a few words. */
  readonly looksAt: string
  /** Codes of the draft's own findings that this check says of the pattern as it stands, so that they are not said twice. */
  readonly replaces?: readonly string[]
  /** Whether nothing that it finds is ever an error: a mend that is tried need not be shown to it again. */
  readonly mild?: boolean
  /** What it finds, in the order in which a draper would look; nothing where all is well. */
  readonly run: (context: CheckContext) => Found[]
}
