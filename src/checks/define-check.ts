import type { Check, CheckContext, Found } from './check.ts'

/** A finding with one of these codes. */
export interface FoundAs<Code extends string> extends Found {
  /** Stable, kebab-case, for other people's programs. */
  readonly code: Code
}

/** A check before it goes into a list: its findings have no codes but those it names. */
export interface CheckDefinition<Code extends string> {
  /** Unique among the checks, in the words of the report. */
  readonly name: string
  /** What it looks at, in a few words. */
  readonly looksAt: string
  /** The codes of its findings, kebab-case. */
  readonly codes: readonly Code[]
  /** Codes of the draft's own findings that it says in their place. */
  readonly replaces?: readonly string[]
  /** Whether none of its findings is ever an error. */
  readonly mild?: boolean
  /** What it finds on a pattern; nothing where all is well. It never throws and never changes anything. */
  readonly run: (context: CheckContext) => readonly FoundAs<NoInfer<Code>>[]
}

/**
 * An own check for a list: give `[...CHECKS, mine]` to `makePattern` or `runChecks`. A finding with another code or
 * another severity than there is does not compile.
 */
/* @__NO_SIDE_EFFECTS__ */
export function defineCheck<const Code extends string>(definition: CheckDefinition<Code>): Check {
  return { ...definition, run: (context) => [...definition.run(context)] }
}
