/** Work that is timed; the number it returns depends on all of it, so that nothing of it can be left out. */
export type Work = () => number

/** One row of the bench: the same task done by the project and, where there is one, by a library. */
export interface BenchCase {
  readonly name: string
  /** Results made by one call: times are printed for one of them. */
  readonly count: number
  readonly ours: Work
  readonly theirs?: { readonly library: string; readonly work: Work }
  readonly wanted?: Wanted
  /** Timed call by call: one call does a different thing each time, and the median over them is asked for. */
  readonly oneByOne?: number
  /** Processes of their own: timed by the clock. */
  readonly elsewhere?: boolean
  /** How far the results of both, or ours and what they must be, are apart; computed, not timed. */
  readonly agree: () => Agreement
}

/** At most this many times the library's time, or at most so many milliseconds. */
export type Wanted = { readonly ratio: number } | { readonly milliseconds: number }

export interface Agreement {
  readonly apart: number
  /** Not more than this, in the same unit. */
  readonly within: number
  readonly what: string
}

/** Whether a row is as fast as wanted; undefined where nothing is wanted. Times in ms. */
export function isMet(wanted: Wanted | undefined, time: number, ratio: number | undefined): boolean | undefined {
  if (!wanted) return undefined
  if ('milliseconds' in wanted) return time <= wanted.milliseconds
  return ratio !== undefined && ratio <= wanted.ratio
}
