import { formatLength } from '../base/format-length.ts'
import { type LengthUnit, MM_PER_INCH } from '../base/units.ts'
import type { WrittenCorrection } from './check.ts'

/** The marks of a tape, mm: sixteenths of an inch, or millimetres. */
const MARK: Readonly<Record<LengthUnit, number>> = { in: MM_PER_INCH / 16, cm: 1, mm: 1 }

/** The correction with its `by`, given in mm, in this unit and up to the next mark of its tape. */
export function roundUp(written: WrittenCorrection, unit: LengthUnit): WrittenCorrection {
  const mm = Number(/^([\d.]+) mm$/.exec(written.by ?? '')?.[1])
  if (!(mm > 0)) return written
  return { ...written, by: formatLength(Math.ceil(mm / MARK[unit] - 1e-9) * MARK[unit], unit) }
}
