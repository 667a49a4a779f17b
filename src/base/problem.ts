/** Where something is: in a file, on a piece, or in a fitting. Lines and columns count from 1. */
export interface Place {
  /** Name of the file, as it was given to the reader. */
  readonly file?: string
  /** Line of the file, from 1. */
  readonly line?: number
  /** Column of that line, from 1. */
  readonly column?: number
  /** Dotted path in the performer file, for example `body.bust girth`. */
  readonly field?: string
  /** Id of the piece. */
  readonly piece?: string
  /** Id of the seam. */
  readonly seam?: string
  /** Id of the join. */
  readonly join?: string
  /** Label of the fitting. */
  readonly fitting?: string
  /** Number of the correction in its fitting, from 1. */
  readonly correction?: number
}

/** A change of the performer file that makes a problem go away: `set` is merged deeply into the file. */
export interface Remedy {
  /** What to change, in words with units. */
  readonly say: string
  /** The change itself, keys as in the performer file, lengths as text with their unit. */
  readonly set: Readonly<Record<string, unknown>>
}

/**
 * Input that cannot be used, or a correction that cannot be applied. `actual` and `expected` are words with
 * units; `hint` is something the draper can do.
 */
export interface Problem {
  /** Stable, kebab-case, for other people's programs. */
  readonly code: string
  /** Where it is, as far as that is known. */
  readonly where: Place
  /** What was found, in words with units. */
  readonly actual: string
  /** What would do, in words with units. */
  readonly expected: string
  /** What to do about it. */
  readonly hint: string
  /** Changes any one of which makes the problem go away; present where measures and choices contradict each other. */
  readonly remedies?: readonly Remedy[]
}

/** error: cannot be sewn or cut; warning: look again; note: good to know. */
export type Severity = 'error' | 'warning' | 'note'

/** What a check noticed. Checks return findings and never throw. */
export interface Finding {
  /** Stable, kebab-case, for other people's programs. */
  readonly code: string
  /** How much it matters. */
  readonly severity: Severity
  /** Where to look. */
  readonly where: Place
  /** What was found, in words with units. */
  readonly actual: string
  /** What would do, in words with units. */
  readonly expected: string
  /** What to do about it. */
  readonly hint: string
  /** A correction, as it would stand in the performer file, that would mend it. */
  readonly mend?: string
}
