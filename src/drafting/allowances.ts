import { OPENING_ALLOWANCE } from './defaults.ts'

/** Seam allowances in mm by seam id, `cap`, `underarm seam` and `default`. */
export type SeamAllowances = Readonly<Record<string, number>>

/** What a mock-up is cut with unless the performer file says otherwise: 1 in, neckline 1/2 in (common practice). */
export const MOCK_UP_ALLOWANCES: SeamAllowances = { default: 25.4, neckline: 12.7 }

const FAMILIES: Readonly<Record<string, string>> = {
  'front cap': 'cap',
  'back cap': 'cap',
  'front underarm seam': 'underarm seam',
  'back underarm seam': 'underarm seam',
}

/** The allowance of a seam: named itself, by its family (`cap`, `underarm seam`), or the default. */
export function allowanceFor(allowances: SeamAllowances, seam: string): number {
  const named = allowances[seam] ?? allowances[FAMILIES[seam] ?? seam]
  return named ?? allowances['default'] ?? (MOCK_UP_ALLOWANCES['default'] as number)
}

/** The allowance of an edge of the center opening: named, or room for a closing. */
export function openingAllowance(allowances: SeamAllowances, seam: string): number {
  return allowances[seam] ?? OPENING_ALLOWANCE
}
