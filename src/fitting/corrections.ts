import type { CorrectionReaders } from '../base/readers.ts'
import type { Correction } from './correction.ts'
import { letOut } from './corrections/let-out.ts'
import { takeIn } from './corrections/take-in.ts'
import { underarmReach } from './corrections/underarm-reach.ts'

/** Every trade correction, in the order in which they are listed for a draper. */
export const CORRECTIONS: readonly Correction[] = [letOut, takeIn, underarmReach]

/** The correction of this name; undefined when there is none. */
export function correctionNamed(name: string, table: readonly Correction[] = CORRECTIONS): Correction | undefined {
  return table.find((correction) => correction.name === name)
}

/** What `readPerformer` needs to know of the corrections: their names and the schemas of their settings. */
export function readersOf(corrections: readonly Correction[]): CorrectionReaders {
  return {
    names: corrections.map((correction) => correction.name),
    settingsOf: (name) => correctionNamed(name, corrections)?.settings,
  }
}

/** `readersOf` the trade corrections. */
export const correctionReaders = readersOf(CORRECTIONS)
