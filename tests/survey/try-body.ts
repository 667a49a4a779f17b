import { stringify } from 'yaml'
import type { Problem, Remedy } from '../../src/base/problem.ts'
import { completeBody } from '../../src/body/complete-body.ts'
import type { GivenMeasures } from '../../src/body/given.ts'
import { CHECKS, runChecks } from '../../src/checks/checks.ts'
import type { Draft } from '../../src/drafting/draft.ts'
import { draftPattern } from '../../src/drafting/draft-pattern.ts'
import { correctionReaders } from '../../src/fitting/corrections.ts'
import { readPerformer } from '../../src/performer-file.ts'
import { patternJson } from '../../src/writers/pattern-json.ts'
import { complaints, type RawPattern, spikes } from '../independent-reader.ts'

export type Outcome =
  | { readonly kind: 'drafted'; readonly draft: Draft; readonly faults: readonly string[] }
  | { readonly kind: 'problems'; readonly problems: readonly Problem[] }

/** A performer file with these measures and changes, as text: the way everybody's measures come in. */
export function performerFile(given: GivenMeasures, ...changes: readonly Remedy['set'][]): string {
  const body = Object.fromEntries(
    Object.entries(given).map(([name, value]) => [name, name === 'shoulder slope' ? slope(value) : length(value)]),
  )
  return stringify(changes.reduce(merged, { performer: 'Lamplighter', units: 'mm', body }))
}

/**
 * Drafts the file; whatever is drafted is checked by the product and, where thorough, by a reader that shares no code
 * with it; where `fair`, armscyes and caps must be free of spikes too.
 */
export function tryFile(text: string, { thorough = true, fair = true } = {}): Outcome {
  const performer = readPerformer(text, 'survey.yaml', correctionReaders)
  if (!performer.ok) return { kind: 'problems', problems: performer.problems }
  const body = completeBody(performer.value.body)
  if (!body.ok) return { kind: 'problems', problems: body.problems }
  // Remedies on the marks of a tape in inches, the coarsest.
  const draft = draftPattern(body.value.body, performer.value.choices, performer.value.allowances.standard, 'in')
  if (!draft.ok) return { kind: 'problems', problems: draft.problems }
  return {
    kind: 'drafted',
    draft: draft.value,
    faults: [...faultsOf(draft.value, thorough), ...(fair ? spikes(jsonOf(draft.value)) : [])],
  }
}

function faultsOf({ pattern, measures }: Draft, thorough: boolean): string[] {
  const findings = runChecks({ pattern, measures, units: 'mm' }, CHECKS)
  return [
    ...findings.filter((f) => f.severity === 'error').map((f) => `${f.code}: ${f.actual}`),
    ...(thorough ? complaints(jsonOf({ pattern })) : []),
    ...measures
      .filter((row) => !(Math.abs(row.drafted - row.asked) <= 0.1))
      .map((row) => `${row.name}: asked ${row.asked}, drafted ${row.drafted}`),
  ]
}

function jsonOf({ pattern }: Pick<Draft, 'pattern'>): RawPattern {
  return patternJson(pattern, { performer: 'Lamplighter', version: 'survey' }) as unknown as RawPattern
}

/** Deeply, as a remedy is applied to a performer file. */
function merged(
  into: Readonly<Record<string, unknown>>,
  set: Readonly<Record<string, unknown>>,
): Record<string, unknown> {
  const result: Record<string, unknown> = { ...into }
  for (const [key, value] of Object.entries(set)) {
    const before = result[key]
    result[key] = isSection(value) && isSection(before) ? merged(before, value) : value
  }
  return result
}

function isSection(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}

/** To a tenth of a millimetre or of a degree: finer than any tape. */
function length(value: unknown): unknown {
  return typeof value === 'number' ? `${Math.round(value * 10) / 10} mm` : value
}

function slope(value: unknown): unknown {
  return typeof value === 'number' ? `${Math.round((value * 1800) / Math.PI) / 10} deg` : value
}
