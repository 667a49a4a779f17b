import * as z from 'zod'
import type { Place, Problem } from '../base/problem.ts'
import { READ_ONCE } from '../base/read-once.ts'
import { type CorrectionReaders, type Readers, raise } from '../base/readers.ts'
import { readingProblems, valueAt } from '../base/reading-problems.ts'
import { isSection, type Tree, type TreePath, type YamlDocument } from '../base/yaml-document.ts'
import type { CorrectionRecord, CorrectionSide, FittingRecord } from './record.ts'

const SIDES = ['left', 'right', 'both'] as const satisfies readonly CorrectionSide[]

/** What every correction has beside its own settings. */
const COMMON_KEYS = ['do', 'side', 'seen', 'voided'] as const

type WrittenFittings = z.output<ReturnType<typeof fittingsSchema>>
type WrittenCorrection = z.output<ReturnType<typeof correctionSchema>>

/** The schema of the `fittings` list; the settings of a correction stay as they are for `readFittings`. */
export function fittingsSchema(read: Readers, corrections: CorrectionReaders) {
  const fitting = z.strictObject({
    label: read.text(),
    date: read.date().optional(),
    'mock up': read.count().optional(),
    provisional: remark(read, 'stand-in or dress form').optional(),
    corrections: z.array(correctionSchema(read, corrections), { error: 'a list of corrections' }).optional(),
  })
  return z.array(fitting, { error: 'a list of fittings' })
}

/** The problems of labels that were given before, whatever else the file has wrong. */
export function labelProblems(document: YamlDocument): Problem[] {
  const labels = listAt(document.tree, ['fittings']).map((path) => {
    const label = valueAt(document.tree, [...path, 'label'])
    return { path: [...path, 'label'], label: typeof label === 'string' ? label.replace(/\s+/g, ' ').trim() : '' }
  })
  return labels
    .filter(({ label }, index) => label !== '' && labels.findIndex((other) => other.label === label) < index)
    .map(({ path, label }) => ({ ...sameLabel(label), where: document.placeOf(path) }))
}

function sameLabel(label: string) {
  return {
    code: 'duplicate-label',
    actual: `"${label}" a second time`,
    expected: 'a label of its own for every fitting',
    hint: 'call it second fitting, or by its date',
  }
}

function correctionSchema(read: Readers, corrections: CorrectionReaders) {
  return z.looseObject({
    do: read.name('correction', corrections.names),
    side: read.name('side', SIDES).default('both'),
    seen: read.text().optional(),
    voided: read.text().transform(reason).optional(),
  })
}

/** `no` is no remark; a bare `yes` stands for the usual one. */
function remark(read: Readers, usual: string) {
  return read.text().transform((text) => (isNo(text) ? undefined : isYes(text) ? usual : text))
}

function reason(text: string, context: z.RefinementCtx): string | undefined {
  if (isNo(text)) return undefined
  if (!isYes(text)) return text
  raise(context, {
    code: 'reason-missing',
    actual: `"${text}"`,
    expected: 'the reason why the correction no longer counts',
    hint: 'write the reason, such as voided: pinned on the wrong side',
  })
  return z.NEVER
}

function isNo(text: string): boolean {
  return /^(?:no|false)$/i.test(text)
}

function isYes(text: string): boolean {
  return /^(?:yes|true)$/i.test(text)
}

/** The problems of the corrections' own settings, whatever else the file has wrong. */
export function settingsProblems(document: YamlDocument, read: Readers, corrections: CorrectionReaders): Problem[] {
  const names = read.name('correction', corrections.names)
  return correctionPaths(document.tree).flatMap((path) => {
    const written = valueAt(document.tree, path)
    const name = names.safeParse(valueAt(document.tree, [...path, 'do']), READ_ONCE)
    const schema = name.success ? corrections.settingsOf(name.data)?.(read) : undefined
    const parsed = schema?.safeParse(settingsOf(written ?? null), READ_ONCE)
    if (!schema || !parsed || parsed.success) return []
    return readingProblems(parsed.error.issues, schema, document, path, COMMON_KEYS)
  })
}

function correctionPaths(tree: Tree): TreePath[] {
  return listAt(tree, ['fittings']).flatMap((fitting) =>
    listAt(tree, [...fitting, 'corrections']).filter((path) => isSection(valueAt(tree, path))),
  )
}

function listAt(tree: Tree, path: TreePath): TreePath[] {
  const value = valueAt(tree, path)
  return Array.isArray(value) ? value.map((_, index) => [...path, index]) : []
}

function settingsOf(written: unknown): Record<string, unknown> {
  const entries = Object.entries((written ?? {}) as Record<string, unknown>)
  return Object.fromEntries(entries.filter(([key]) => !(COMMON_KEYS as readonly string[]).includes(key)))
}

/** Where a place in the `fittings` list belongs: the fitting's label and the correction's number. */
export function fittingPlace(place: Place, document: YamlDocument): Place {
  const [section, fitting, list, correction] = (place.field ?? '').split('.')
  if (section?.toLowerCase() !== 'fittings' || fitting === undefined) return place
  const label = valueAt(document.tree, ['fittings', Number(fitting) - 1, 'label'])
  return {
    ...place,
    ...(typeof label === 'string' ? { fitting: label.trim() } : {}),
    ...(list?.toLowerCase() === 'corrections' && correction !== undefined ? { correction: Number(correction) } : {}),
  }
}

/**
 * The fittings as records. Every correction's settings must have been found without problems before
 * (`settingsProblems`); throws when they were not. A fitting without a `mock-up` is of the previous one's, the first of 1.
 */
export function readFittings(
  written: WrittenFittings,
  document: YamlDocument,
  read: Readers,
  corrections: CorrectionReaders,
): FittingRecord[] {
  let mockUp = 1
  return written.map((fitting, index) => {
    mockUp = fitting['mock up'] ?? mockUp
    const path = ['fittings', index]
    return {
      label: fitting.label,
      ...(fitting.date === undefined ? {} : { date: fitting.date }),
      mockUp,
      ...(fitting.provisional === undefined ? {} : { provisional: fitting.provisional }),
      corrections: (fitting.corrections ?? []).map((correction, number) =>
        readCorrection(correction, [...path, 'corrections', number], document, read, corrections),
      ),
      where: { ...document.placeOf(path), fitting: fitting.label },
    }
  })
}

function readCorrection(
  written: WrittenCorrection,
  path: TreePath,
  document: YamlDocument,
  read: Readers,
  corrections: CorrectionReaders,
): CorrectionRecord {
  const schema = corrections.settingsOf(written.do)
  if (!schema) throw new RangeError(`"${written.do}" is among the corrections' names but has no settings`)
  return {
    do: written.do,
    side: written.side,
    ...(written.seen === undefined ? {} : { seen: written.seen }),
    ...(written.voided === undefined ? {} : { voided: written.voided }),
    settings: schema(read).parse(settingsOf(written), READ_ONCE),
    where: fittingPlace(document.placeOf(path), document),
    places: settingPlaces(written, path, document),
  }
}

/** Where the values of a correction's settings and its side stand, lists also entry by entry. */
function settingPlaces(written: object, path: TreePath, document: YamlDocument) {
  const at = (way: TreePath) => fittingPlace(document.placeOf([...path, ...way]), document)
  return Object.fromEntries(
    Object.entries(written).flatMap(([name, value]) => [
      [name, at([name])] as const,
      ...(Array.isArray(value) ? value.map((_, i) => [`${name}.${i + 1}`, at([name, i])] as const) : []),
    ]),
  )
}
