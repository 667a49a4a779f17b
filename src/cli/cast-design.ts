import { CORRECTIONS, type Performer, type Result, readersOf, readPerformer } from '../index.ts'
import { readInput } from './input.ts'

export interface CastDesign {
  readonly file: string
  readonly performer: Performer
}

/** The performer file whose choices and allowances others are drafted with. Problems: those of the file. */
export function readDesign(file: string | undefined): Result<CastDesign | undefined> {
  if (file === undefined) return { ok: true, value: undefined }
  const input = readInput(file)
  if (!input.ok) return input
  const read = readPerformer(input.value.text, input.value.name, readersOf(CORRECTIONS))
  return read.ok ? { ok: true, value: { file, performer: read.value } } : read
}

/** What is taken from the design and what is not, as a sentence. */
export function designWords({ file, performer }: CastDesign): string {
  return `Draft choices and mock-up allowances are those of ${performer.performer} (${file}); bodies, fittings and corrections are each performer's own.`
}
