import { formatLength } from './base/format-length.ts'
import type { LengthUnit } from './base/units.ts'
import { MOCK_UP_ALLOWANCES } from './drafting/allowances.ts'
import { CLOTHS, EASE_NAMES, ELBOW_DARTS, FITS, OPENINGS, STANDARD_CHOICES } from './drafting/choices.ts'
import { CAP, ELBOW, SHOULDER_DART } from './drafting/defaults.ts'
import { easeFor } from './drafting/ease.ts'
import type { WrittenChoices } from './drafting/read-choices.ts'

/** One line of a section to be filled in: what would stand there, and what there is to know. */
interface Offered {
  readonly value: string | readonly string[]
  /** Written as it is; else behind `#`, to be taken out of it. */
  readonly active?: boolean
  readonly remark: string
}

/** The draft choices, each with what holds without it; lengths in the unit, without saying it. */
export function offeredChoices(unit: LengthUnit): Readonly<Record<keyof WrittenChoices, Offered>> {
  const length = (mm: number) => bareLength(mm, unit)
  const { fit, cloth, opening } = STANDARD_CHOICES
  const eases = EASE_NAMES.map((name) => `${name}: ${length(easeFor(STANDARD_CHOICES, name))}`)
  return {
    fit: { value: fit, active: true, remark: `or ${others(FITS, fit)}` },
    cloth: { value: cloth, active: true, remark: `or ${others(CLOTHS, cloth)}` },
    opening: { value: opening, active: true, remark: `or ${others(OPENINGS, opening)}` },
    ease: {
      value: [...eases, 'cap: 6 %'],
      remark: `give what differs from these of ${fit} fit`,
    },
    'bust dart': { value: length(20), remark: 'such an intake; or flat, or eased' },
    bust: { value: 'flat', remark: 'the same as bust dart: flat' },
    'elbow darts': { value: 'two', remark: `or ${others(ELBOW_DARTS, 'two')}` },
    'elbow intake': { value: length(ELBOW.intake), remark: 'of the elbow darts together' },
    'shoulder dart': { value: length(SHOULDER_DART.most), remark: 'such an intake, in place of ease' },
    'biceps width': { value: length(356), remark: 'such a width, in place of ease' },
    'cap height': { value: length(140), remark: 'such a height, in place of cap ease' },
    'least cap height': { value: `${CAP.leastRatio * 100} %`, remark: 'of the armscye; lower is refused' },
  }
}

/** The built-in allowances of a mock-up as a section in one line. */
export function standardAllowance(unit: LengthUnit): string {
  const each = Object.entries(MOCK_UP_ALLOWANCES).map(([name, mm]) => `${name}: ${bareLength(mm, unit)}`)
  return `{ ${each.join(', ')} }`
}

/** A length in the file's unit, which then need not be said. */
export function bareLength(mm: number, unit: LengthUnit): string {
  return formatLength(mm, unit).replace(/ \w+$/, '')
}

function others(names: readonly string[], taken: string): string {
  const rest = names.filter((name) => name !== taken)
  return rest.length < 2 ? rest.join('') : `${rest.slice(0, -1).join(', ')} or ${rest[rest.length - 1]}`
}
