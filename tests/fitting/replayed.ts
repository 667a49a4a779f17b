// Corrections as a draper writes them, on a pattern, for the tests of the corrections.
import { makeReaders } from '../../src/base/readers.ts'
import type { Result } from '../../src/base/result.ts'
import { correctionNamed } from '../../src/fitting/corrections.ts'
import { type OperationResult, runOperations } from '../../src/fitting/operation.ts'
import { composeMaps, IDENTITY } from '../../src/fitting/position-map.ts'
import type { CorrectionSide } from '../../src/fitting/record.ts'
import { type Replayed, replay } from '../../src/fitting/replay.ts'
import type { Pattern } from '../../src/pattern/pattern.ts'
import { pieceOf } from '../../src/pattern/seam.ts'
import { lengthOf, seam } from './measure.ts'

const read = makeReaders('in')

export type Step = readonly [name: string, written: Record<string, unknown>, side?: CorrectionSide]

/** Corrections one after the other, each a fitting of its own, on the pattern that the one before left. */
export function corrected(pattern: Pattern, ...steps: readonly Step[]): Result<OperationResult> {
  let done: OperationResult = { pattern, map: IDENTITY, effects: [] }
  for (const [name, written, side = 'both'] of steps) {
    const correction = correctionNamed(name)
    if (!correction) throw new Error(`no ${name}`)
    const operations = correction.compile({ worn: done.pattern, side }, correction.settings(read).parse(written))
    if (!operations.ok) return operations
    const next = runOperations(done.pattern, IDENTITY, operations.value)
    if (!next.ok) return next
    done = {
      pattern: next.value.pattern,
      map: composeMaps(done.map, next.value.map),
      effects: [...done.effects, ...next.value.effects],
    }
  }
  return { ok: true, value: done }
}

export function done(...args: Parameters<typeof corrected>): OperationResult {
  const result = corrected(...args)
  if (!result.ok) throw new Error(result.problems.map((p) => `${p.code}: ${p.actual}`).join('; '))
  return result.value
}

/** The code of the first problem; undefined where there is none. */
export function codeOf(result: Result<unknown>): string | undefined {
  return result.ok ? undefined : result.problems[0]?.code
}

/** Sewn length of one side of a join by dense sampling, whole seams and parts of them, mm. */
export function sewn(pattern: Pattern, id: string, side: 'a' | 'b'): number {
  const join = pattern.joins.find((j) => j.id === id)
  if (!join) throw new Error(`no join ${id}`)
  return join[side].reduce((sum, part) => {
    const length = lengthOf(seam(pieceOf(pattern, part.piece), part.seam))
    return sum + (part.to ?? length) - (part.from ?? 0)
  }, 0)
}

/** Ease of a join: length of a less length of b, mm. */
export function ease(pattern: Pattern, id: string): number {
  return sewn(pattern, id, 'a') - sewn(pattern, id, 'b')
}

/** Cut with enough for what the tests let out, mm. */
const ALLOWANCES = { standard: { default: 50.8, neckline: 12.7 }, byMockUp: {} }

/** One fitting with these corrections and nothing trued, with its slip. */
export function fitted(pattern: Pattern, ...steps: readonly Step[]): Replayed {
  const corrections = steps.map(([name, written, side = 'both']) => ({
    do: name,
    side,
    settings: correctionNamed(name)?.settings(read).parse(written),
    where: {},
  }))
  const result = replay(pattern, [{ label: 'first fitting', mockUp: 1, corrections, where: {} }], ALLOWANCES, {
    units: 'in',
    raw: true,
  })
  if (!result.ok) throw new Error(result.problems.map((p) => `${p.code}: ${p.actual}`).join('; '))
  return result.value
}
