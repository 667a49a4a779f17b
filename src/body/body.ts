import type { MeasureName } from './measure.ts'

/** One measure as it goes into the draft; mm or radians. */
export interface Measure {
  /** mm, or radians where the measure is an angle. */
  readonly value: number
  /** True where nobody took it and a regression or a ratio stands in; always said on every output. */
  readonly estimated: boolean
  /** Standard error of an estimate, in the measure's unit, where one is known. */
  readonly standardError?: number
  /** Where an estimate comes from: its source in a few words. */
  readonly source?: string
}

/** One side of a body: every measure measured or estimated, except checks that nobody took. */
export type BodyHalf = Readonly<Partial<Record<MeasureName, Measure>>>

/** A body ready to be drafted. Measures without sides are the same on both halves. */
export interface Body {
  /** The wearer's left. */
  readonly left: BodyHalf
  /** The wearer's right. */
  readonly right: BodyHalf
}

/** The value of a measure in mm or radians; throws where it is neither measured nor estimated. */
export function measureOf(half: BodyHalf, name: MeasureName): number {
  const measure = half[name]
  if (!measure) throw new RangeError(`${name} is neither measured nor estimated`)
  return measure.value
}
