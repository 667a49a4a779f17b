import { formatAngle } from './base/angles.ts'
import { formatLength } from './base/format-length.ts'
import type { LengthUnit } from './base/units.ts'
import { MEASURES, type MeasureName } from './body/measure.ts'
import type { ReportMeasure } from './checks/report.ts'
import type { Estimate } from './sheets/estimate-words.ts'

/**
 * The drafted measures that nobody took, from whole millimetres into the reader's unit, each with its standard error where it
 * has one.
 */
export function estimatesOf(measures: readonly ReportMeasure[], units: LengthUnit): Estimate[] {
  return measures
    .filter(({ estimated }) => estimated)
    .map(({ name, side, body, standardError }) => {
      const isAngle = MEASURES[name as MeasureName].kind === 'angle'
      const say = (value: number) =>
        isAngle ? formatAngle((value * Math.PI) / 180) : formatLength(Math.round(value), units)
      return {
        measure: name,
        side,
        words: standardError === undefined ? say(body) : `${say(body)} ± ${say(standardError)}`,
      }
    })
}
