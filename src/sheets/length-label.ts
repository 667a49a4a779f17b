import { formatLength } from '../base/format-length.ts'
import type { LengthUnit } from '../base/units.ts'

const GLYPHS: Readonly<Record<string, string>> = {
  '1/2': '½',
  '1/4': '¼',
  '3/4': '¾',
  '1/8': '⅛',
  '3/8': '⅜',
  '5/8': '⅝',
  '7/8': '⅞',
}

/**
 * A length as it is set on a sheet, rounded as `formatLength` does: inches with fraction signs and a double prime
 * (`1⅜″`, `1 3⁄16″`), `2.5 cm`, `9.5 mm`.
 */
export function lengthLabel(mm: number, units: LengthUnit): string {
  const text = formatLength(mm, units)
  if (units !== 'in') return text.replace('-', '−')
  return text
    .replace(' in', '″')
    .replace('-', '−')
    .replace(/ ?(\d+\/\d+)/, (found, fraction: string) => GLYPHS[fraction] ?? found.replace('/', '⁄'))
}
