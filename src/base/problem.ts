/** Where something is: in a file, on a piece, or in a fitting. Lines and columns count from 1. */
export interface Place {
  readonly file?: string
  readonly line?: number
  readonly column?: number
  /** Dotted path in the performer file, for example `body.bust girth`. */
  readonly field?: string
  readonly piece?: string
  readonly seam?: string
  readonly join?: string
  /** Label of the fitting. */
  readonly fitting?: string
  /** Number of the correction in its fitting, from 1. */
  readonly correction?: number
}

/** A change of the performer file that makes a problem go away: `set` is merged deeply into the file. */
export interface Remedy {
  readonly say: string
  readonly set: Readonly<Record<string, unknown>>
}

/**
 * Input that cannot be used, or a correction that cannot be applied. `actual` and `expected` are words with
 * units; `hint` is something the draper can do.
 */
export interface Problem {
  /** Stable, kebab-case, for other people's programs. */
  readonly code: string
  readonly where: Place
  readonly actual: string
  readonly expected: string
  readonly hint: string
  readonly remedies?: readonly Remedy[]
}

/** error: cannot be sewn or cut; warning: look again; note: good to know. */
export type Severity = 'error' | 'warning' | 'note'

/** What a check noticed. Checks return findings and never throw. */
export interface Finding {
  readonly code: string
  readonly severity: Severity
  readonly where: Place
  readonly actual: string
  readonly expected: string
  readonly hint: string
  /** A correction, as it would stand in the performer file, that would mend it. */
  readonly mend?: string
}
