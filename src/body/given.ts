import type { BodySide } from '../base/side.ts'
import type { MeasureName } from './measure.ts'

/** What was measured and nothing else, as read from a performer file: mm or radians, one value or a side each. */
export type GivenMeasures = Readonly<Partial<Record<MeasureName, number | Readonly<Partial<Record<BodySide, number>>>>>>
