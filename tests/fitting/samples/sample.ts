import type { Pattern } from '../../../src/pattern/pattern.ts'

/** What was measured on the pattern, what it should be and how near, all in one unit. */
export interface Measured {
  readonly what: string
  readonly is: number
  readonly should: number
  readonly within: number
}

/** A correction as a performer file in mm has it. */
export interface Written {
  readonly do: string
  readonly settings: Readonly<Record<string, unknown>>
}

/**
 * A way of writing a correction that the tests of every correction and the gallery use. `measure` must not share
 * arithmetic with the correction: lengths and distances by dense samples of the lines.
 */
export interface Sample {
  readonly name: string
  readonly written: (amount: number) => Readonly<Record<string, unknown>>
  /** Amounts that can be met on every body of the tests. */
  readonly amounts: readonly [least: number, most: number]
  /** The pieces that it changes, by their names while they are pairs; every other piece stays the same object. */
  readonly pieces: readonly string[]
  readonly measure: (before: Pattern, after: Pattern, amount: number) => readonly Measured[]
  /** The settings, as read, with an amount of zero; `by` is zero when absent. */
  readonly zero?: (settings: Readonly<Record<string, unknown>>, pattern: Pattern) => unknown
  /** A correction that lies apart from this one, so that their order does not matter. */
  readonly apart?: Written
  /** False where it is only ever for both sides. */
  readonly oneSided?: boolean
}
