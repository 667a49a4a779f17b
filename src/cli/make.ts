import { type MadePattern, makePattern, type Problem, type Result } from '../index.ts'
import type { CommonOptions } from './common-options.ts'
import { type Input, readInput } from './input.ts'

/** One file of a run: its pattern, or why there is none. */
interface Made {
  readonly file: string
  readonly result: Result<MadePattern>
}

/** What a run has read and made, and the texts that its problems point into. */
export interface MadeAll {
  readonly each: readonly Made[]
  readonly textOf: (file: string) => string | undefined
}

/** Reads every file and makes its pattern; one bad file never stops the others. */
export function makeAll({ files, until, raw }: CommonOptions): MadeAll {
  const inputs: Input[] = []
  const each = files.map((file): Made => {
    const input = readInput(file)
    if (!input.ok) return { file, result: input }
    inputs.push(input.value)
    const { text, name } = input.value
    return { file, result: makePattern(text, name, { raw, ...(until === undefined ? {} : { until }) }) }
  })
  return { each, textOf: (name) => inputs.find((input) => input.name === name)?.text }
}

export function problemsIn(results: readonly Result<unknown>[]): Problem[] {
  return results.flatMap((result) => (result.ok ? [] : result.problems))
}
