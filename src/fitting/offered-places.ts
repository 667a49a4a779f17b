import { makeReaders } from '../base/readers.ts'
import type { LengthUnit } from '../base/units.ts'
import type { Pattern } from '../pattern/pattern.ts'
import { baseName } from '../pattern/side-names.ts'
import type { Correction } from './correction.ts'
import { namedPlaces } from './named-places.ts'
import type { CorrectionSide } from './record.ts'
import { SEAM_NAME_LIST, seamLines } from './seam-names.ts'
import { seamRun } from './seam-run.ts'
import { type SettingKind, settingKinds } from './setting-kinds.ts'

/** What is known of a correction before its places. */
export interface OfferedOptions {
  /** The mock-up as it was on the body. */
  readonly worn: Pattern
  /** Which side it is for. */
  readonly side: CorrectionSide
  /** What plain numbers among the settings mean. */
  readonly units: LengthUnit
  /** Settings already written. */
  readonly settings: Readonly<Record<string, unknown>>
}

/** Problems of a place itself: not there, or none beside those that are said already. */
const NO_PLACE = ['unknown-place', 'places-contradict']

/**
 * The places that a correction's setting can name on the mock-up as worn, in the words of the slip: every mark, corner
 * and balance line there is, less those that the correction itself says it does not know.
 */
export function offeredPlaces(correction: Correction, setting: string, options: OfferedOptions): string[] {
  const { worn, side, units, settings } = options
  const read = makeReaders(units)
  const schema = correction.settings(read)
  const kinds = settingKinds(correction, read).filter((kind) => kind.place && kind.name !== setting)
  const required = kinds.filter((kind) => kind.required)
  // A span has two ends: each is tried with the other, which is asked for later.
  const partners = kinds.filter((kind) => !kind.required && !kind.list && !(kind.name in settings))
  const knows = (name: string, half?: string) => {
    const plain = / line$/.test(name) ? { line: name } : { landmark: name }
    const place = half === undefined ? plain : { ...plain, 'side of cap': half }
    const all = (more: readonly SettingKind[]) => Object.fromEntries(more.map((kind) => [kind.name, place]))
    return [[], ...partners.map((partner) => [partner])].some((more) => {
      const parsed = schema.safeParse({ ...all([...required, ...more]), ...settings, [setting]: place })
      if (!parsed.success) return false
      const compiled = correction.compile({ worn, side }, parsed.data)
      return compiled.ok || compiled.problems.every(({ code }) => !NO_PLACE.includes(code))
    })
  }
  return candidates(worn)
    .filter((name) => knows(name))
    .flatMap((name) => {
      // A line meets a cap in front and at the back: each alone, or both.
      const halves = / line$/.test(name) ? ['front', 'back'].filter((half) => knows(name, half)) : []
      return halves.length === 2 ? [name, ...halves.map((half) => `${name}, ${half}`)] : [name]
    })
}

/** The names of darts that the pattern has, front and back. */
export function offeredDarts(worn: Pattern): string[] {
  return distinct(worn.pieces.filter(isBodice).flatMap((piece) => piece.darts.map((dart) => baseName(dart.id))))
}

/** The seams by the names that a draper has for them, of those asked for that the pattern has. */
export function offeredSeams(worn: Pattern, names: readonly string[], side: CorrectionSide): string[] {
  return names.filter((name) => {
    const known = SEAM_NAME_LIST.find((seam) => seam === name)
    return known === undefined || seamLines(worn, known, side).length > 0
  })
}

function candidates({ pieces }: Pattern): string[] {
  return distinct(
    pieces.flatMap((piece) => [
      ...piece.seams.flatMap((seam) => namedPlaces(seamRun(piece, [seam.id])).map(({ name }) => name)),
      ...piece.landmarks.map((mark) => baseName(mark.id)),
      ...piece.darts.map((dart) => `${baseName(dart.id)} point`),
      ...piece.lines.map((line) => baseName(line.id)),
    ]),
  )
}

function isBodice({ id }: { readonly id: string }): boolean {
  return baseName(id).startsWith('bodice')
}

function distinct(names: readonly string[]): string[] {
  return [...new Set(names)]
}
