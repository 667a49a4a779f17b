import type { LengthUnit } from '../base/units.ts'
import { MM_PER_INCH } from '../base/units.ts'
import { lengthLabel } from '../sheets/length-label.ts'
import type { SaidNumber } from './step.ts'

/** What a ruler of the reader shows, mm: sixteenths of an inch, or millimetres. */
export function rulerStep(units: LengthUnit): number {
  return units === 'in' ? MM_PER_INCH / 16 : 1
}

/** The nearest length that the ruler shows; 0 is never negative. */
export function onRuler(mm: number, units: LengthUnit): number {
  const step = rulerStep(units)
  const count = Math.round(mm / step)
  return count === 0 ? 0 : count * step
}

/** Says numbers and keeps them. */
export interface Speaker {
  /** A length as the ruler shows it. */
  readonly ruled: (mm: number) => string
  /** A measure or an ease, as it was given. */
  readonly given: (mm: number) => string
  /** An angle in radians. */
  readonly angle: (radians: number) => string
  readonly percent: (share: number) => string
  readonly said: SaidNumber[]
}

export function openSpeaker(units: LengthUnit): Speaker {
  const said: SaidNumber[] = []
  const keep = (says: string, value: number, unit: SaidNumber['unit']) => {
    said.push({ says, value, unit })
    return says
  }
  return {
    said,
    ruled: (mm) => keep(lengthLabel(onRuler(mm, units), units), onRuler(mm, units), 'mm'),
    given: (mm) => keep(lengthLabel(mm, units), mm, 'mm'),
    angle: (radians) => {
      const degrees = (radians * 180) / Math.PI
      return keep(`${degrees.toFixed(1)}°`, degrees, 'deg')
    },
    percent: (share) => keep(`${(share * 100).toFixed(0)} %`, share, 'share'),
  }
}
