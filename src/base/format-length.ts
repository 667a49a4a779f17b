import { type LengthUnit, MM_PER_INCH } from './units.ts'

/** The finest division of the tapes in the shop. */
const SIXTEENTHS = 16

/**
 * A length in mm as text with its unit, as a draper writes it: inches to the nearest sixteenth as a fraction in
 * lowest terms (`15 1/2 in`, half a sixteenth = 0.8 mm at most from the true length), cm with two decimals at most
 * and mm with one (0.05 mm). `parseLength` reads it back. Throws for a length that is not finite.
 */
export function formatLength(mm: number, unit: LengthUnit): string {
  if (!Number.isFinite(mm)) throw new RangeError(`${mm} is no length`)
  if (unit === 'in') return `${inches(mm)} in`
  const decimals = unit === 'cm' ? 2 : 1
  const rounded = Number((unit === 'cm' ? mm / 10 : mm).toFixed(decimals))
  return `${rounded === 0 ? 0 : rounded} ${unit}`
}

function inches(mm: number): string {
  const sixteenths = Math.round((Math.abs(mm) / MM_PER_INCH) * SIXTEENTHS)
  if (sixteenths === 0) return '0'
  const whole = Math.floor(sixteenths / SIXTEENTHS)
  let numerator = sixteenths % SIXTEENTHS
  let denominator = SIXTEENTHS
  while (numerator > 0 && numerator % 2 === 0) {
    numerator /= 2
    denominator /= 2
  }
  const parts = [whole > 0 ? `${whole}` : '', numerator > 0 ? `${numerator}/${denominator}` : '']
  return `${mm < 0 ? '-' : ''}${parts.filter((part) => part !== '').join(' ')}`
}
