import { OPENING_ALLOWANCE } from './defaults.ts'

/** Seam allowances in mm by seam id, `cap`, `underarm seam` and `default`. */
export type SeamAllowances = Readonly<Record<string, number>>

/** Seam allowances of a performer's mock-ups; `byMockUp` replaces those of one mock-up, by its number. */
export interface MockUpAllowances {
  /** Of every mock-up that has none of its own, mm. */
  readonly standard: SeamAllowances
  /** Of single mock-ups, by number from 1, mm; seams not named there keep the standard. */
  readonly byMockUp: Readonly<Record<number, SeamAllowances>>
}

/** What a mock-up is cut with unless the performer file says otherwise: 1 in, neckline 1/2 in (common practice). */
export const MOCK_UP_ALLOWANCES: SeamAllowances = { default: 25.4, neckline: 12.7 }

const FAMILIES: Readonly<Record<string, string>> = {
  'front cap': 'cap',
  'back cap': 'cap',
  'front underarm seam': 'underarm seam',
  'back underarm seam': 'underarm seam',
}

const CENTER = /^center (back|front)$/

/**
 * What the table says of a seam, mm: named itself, by its family (`cap`, `underarm seam`), or the default. The default
 * is not for the edges of the center opening: they have room for a closing unless they are named.
 */
export function statedAllowance(allowances: SeamAllowances, seam: string): number | undefined {
  const named = allowances[seam] ?? allowances[FAMILIES[seam] ?? seam]
  return named ?? (CENTER.test(seam) ? undefined : allowances.default)
}

/** The allowance that a seam is drafted with, mm. */
export function allowanceFor(allowances: SeamAllowances, seam: string): number {
  return statedAllowance(allowances, seam) ?? (MOCK_UP_ALLOWANCES.default as number)
}

/** The allowance of an edge of the center opening: named, or room for a closing. */
export function openingAllowance(allowances: SeamAllowances, seam: string): number {
  return statedAllowance(allowances, seam) ?? OPENING_ALLOWANCE
}
