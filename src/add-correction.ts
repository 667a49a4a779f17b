import { nearestName } from './base/names.ts'
import type { Problem } from './base/problem.ts'
import { valueAt } from './base/reading-problems.ts'
import { failure, type Result, success } from './base/result.ts'
import { readYaml, type Tree, type TreePath } from './base/yaml-document.ts'
import { insertYaml } from './base/yaml-insert.ts'
import type { FittingRecord } from './fitting/record.ts'

/** Lists that are written with a dash and a line for each entry. */
const BLOCK = ['fittings', 'corrections'] as const

/** A correction as it is to stand in a performer file, and the fitting it belongs to. */
export interface NewCorrection {
  /** Label of a fitting there is, or of a new one. */
  readonly fitting: string
  /** Of a new fitting, ISO 8601; of one there is, the same as in the file. */
  readonly date?: string
  /** Number of the mock-up that was on the body, likewise. */
  readonly mockUp?: string
  /** Fitted on this instead of the performer. */
  readonly provisional?: string
  /** `do` first, then its settings as they are written, `side`, `seen`. */
  readonly correction: Readonly<Record<string, Tree>>
}

/** A performer file with one thing more in it, and what that is. */
export interface RecordedText {
  /** The whole file as it is to be. */
  readonly text: string
  /** Label of the fitting. */
  readonly fitting: string
  /** Number of the correction in its fitting, from 1, as on the slip. */
  readonly correction: number
  /** Whether the fitting is a new one. */
  readonly isNew: boolean
  /** The field of the correction in the new text, as problems name it. */
  readonly field: string
}

/**
 * The text of a performer file with a correction added at the end of its fitting; `fittings` are those it has. Nothing
 * else in it changes. Whether it can be replayed is for `makePattern` to say. Problems: what is said of the fitting is
 * not what the file says; a label so near to another's that it may be that one; no place to put it in.
 */
export function addCorrection(
  text: string,
  file: string,
  fittings: readonly FittingRecord[],
  added: NewCorrection,
): Result<RecordedText> {
  const index = fittings.findIndex(({ label }) => label === added.fitting)
  const known = fittings[index]
  if (!known) return addFitting(text, file, fittings, added)
  const differs = disagreements(known, added)
  if (differs.length > 0) return failure(...differs)
  const path: TreePath = ['fittings', index, 'corrections']
  const number = known.corrections.length
  const yaml = readYaml(text, file)
  if (!yaml.ok) return yaml
  const isList = Array.isArray(valueAt(yaml.value.tree, path))
  const result = isList
    ? insertYaml(text, file, [...path, number], added.correction, BLOCK)
    : insertYaml(text, file, path, [added.correction], BLOCK)
  if (!result.ok) return result
  const field = `fittings.${index + 1}.corrections.${number + 1}`
  return success({ text: result.value, fitting: known.label, correction: number + 1, isNew: false, field })
}

/** The text with `voided: why` at a correction, numbered in its fitting as on the slip. Problems: no such one; voided already. */
export function voidCorrection(
  text: string,
  file: string,
  fittings: readonly FittingRecord[],
  { fitting, correction, why }: { readonly fitting: string; readonly correction: number; readonly why: string },
): Result<RecordedText> {
  const index = fittings.findIndex(({ label }) => label === fitting)
  const known = fittings[index]
  if (!known) return failure(noFitting(fitting, fittings))
  const record = known.corrections[correction - 1]
  if (!record) return failure(noCorrection(correction, known))
  if (record.voided !== undefined) return failure(voidedAlready(correction, record.voided, known))
  const path: TreePath = ['fittings', index, 'corrections', correction - 1, 'voided']
  const result = insertYaml(text, file, path, why, BLOCK)
  if (!result.ok) return result
  const field = `fittings.${index + 1}.corrections.${correction}`
  return success({ text: result.value, fitting, correction, isNew: false, field })
}

function addFitting(
  text: string,
  file: string,
  fittings: readonly FittingRecord[],
  { fitting, date, mockUp, provisional, correction }: NewCorrection,
): Result<RecordedText> {
  const near = nearestName(
    fitting,
    fittings.map(({ label }) => label),
  )
  if (near !== undefined && digits(near) === digits(fitting)) return failure(unsure(fitting, near))
  const entry: Tree = {
    label: fitting,
    ...(date === undefined ? {} : { date }),
    ...(mockUp === undefined ? {} : { 'mock-up': mockUp }),
    ...(provisional === undefined ? {} : { provisional }),
    corrections: [correction],
  }
  const result =
    fittings.length > 0
      ? insertYaml(text, file, ['fittings', fittings.length], entry, BLOCK)
      : inEmptyList(text, file, entry)
  if (!result.ok) return result
  const field = `fittings.${fittings.length + 1}.corrections.1`
  return success({ text: result.value, fitting, correction: 1, isNew: true, field })
}

function inEmptyList(text: string, file: string, entry: Tree): Result<string> {
  const yaml = readYaml(text, file)
  if (!yaml.ok) return yaml
  return Array.isArray(valueAt(yaml.value.tree, ['fittings']))
    ? insertYaml(text, file, ['fittings', 0], entry, BLOCK)
    : insertYaml(text, file, ['fittings'], [entry], BLOCK)
}

/** Labels that count are different labels: fitting 1, fitting 2. */
function digits(label: string): string {
  return label.replace(/\D+/g, ' ').trim()
}

function disagreements(known: FittingRecord, { date, mockUp, provisional }: NewCorrection): Problem[] {
  const said: [string, string | undefined, string | undefined][] = [
    ['date', date, known.date],
    ['mock-up', mockUp, String(known.mockUp)],
    ['provisional', provisional, known.provisional],
  ]
  return said.flatMap(([name, now, before]) =>
    now === undefined || now.trim() === before
      ? []
      : [
          {
            code: 'fitting-says-otherwise',
            where: { ...known.where, field: `--${name}` },
            actual: `${name} ${now}, where ${known.label} has ${before ?? 'none'}`,
            expected: 'the same, or another fitting',
            hint: `leave --${name} out, name another fitting with --fitting, or change it in the file`,
          },
        ],
  )
}

function unsure(label: string, near: string): Problem {
  return {
    code: 'fitting-unsure',
    where: { field: '--fitting' },
    actual: `"${label}", which the file does not have, and which is very near to "${near}"`,
    expected: 'the label of a fitting in the file, or one that cannot be taken for another',
    hint: `did you mean "${near}"? Else write another label for the new fitting`,
  }
}

function noFitting(label: string, fittings: readonly FittingRecord[]): Problem {
  const labels = fittings.map((fitting) => fitting.label)
  const near = nearestName(label, labels)
  return {
    code: 'unknown-fitting',
    where: { field: '--fitting' },
    actual: `"${label}"`,
    expected: labels.length === 0 ? 'a file with fittings' : `one of: ${labels.join(', ')}`,
    hint: near === undefined ? 'name a fitting by its label' : `did you mean "${near}"?`,
  }
}

function noCorrection(number: number, { label, corrections }: FittingRecord): Problem {
  return {
    code: 'unknown-correction',
    where: { field: '--void' },
    actual: `correction ${number} of ${label}, which has ${corrections.length}`,
    expected: corrections.length === 0 ? 'a fitting with corrections' : `a number from 1 to ${corrections.length}`,
    hint: 'the slip numbers them; name another fitting with --fitting',
  }
}

function voidedAlready(number: number, why: string, { label }: FittingRecord): Problem {
  return {
    code: 'already-voided',
    where: { field: '--void' },
    actual: `correction ${number} of ${label} is voided already: ${why}`,
    expected: 'a correction that counts',
    hint: 'nothing is to be done; the slip numbers the corrections',
  }
}
