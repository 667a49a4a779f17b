import type { z } from 'zod'
import { keptWith } from '../base/kept-with.ts'
import type { Readers } from '../base/readers.ts'
import type { Result } from '../base/result.ts'
import type { Pattern } from '../pattern/pattern.ts'
import type { PatternOperation } from './operation.ts'
import type { CorrectionSide } from './record.ts'

/** What a correction is compiled against. */
export interface CorrectionContext {
  /** The mock-up as it stood on the body, before any of this fitting's corrections: all places refer to it. */
  readonly worn: Pattern
  /** The wearer's side that it is for, or both. */
  readonly side: CorrectionSide
}

/** How a correction is worded on the alteration slip; lengths come in the file's unit through `say`. */
export interface SlipWords {
  /** What to do, as an order: `let out the cap by 3/8 in`. */
  readonly what: string
  /** Where, and where it runs to nothing. */
  readonly where: string
}

/** A default of a setting, as the draper would write it, and where it comes from. */
export interface SettingDefault<Setting extends string = string> {
  /** Name of the setting; several that have one default together, with commas between. */
  readonly setting: Setting
  /** What holds when it is not written. */
  readonly value: string
  /** Where that comes from, or `common practice`. */
  readonly source: string
}

/**
 * A trade correction: what a draper writes after a fitting. It is a plain object; defining one and adding it to the
 * table in `corrections.ts` (or giving an own table to `replay`) is all it takes. `S` is what the settings' schema
 * puts out: lengths in mm, angles in radians, everything plain data, so that a record survives JSON.
 */
export interface Correction<S = unknown> {
  /** As it stands after `do:` in the performer file. */
  readonly name: string
  /** What it does to the pattern, in one sentence. */
  readonly does: string
  /** What is seen on the body when it is called for. */
  readonly answers: readonly string[]
  /** The correction's own settings, a strict object; `do`, `side`, `seen` and `voided` are common to all. */
  readonly settings: (read: Readers) => z.ZodObject
  /** What the settings that may be left out stand for. */
  readonly defaults: readonly SettingDefault[]
  /** What it leaves unmatched on other pieces, and the correction that would restore it; undefined: nothing. */
  readonly leaves?: string
  /** The pattern operations that make it, in order. Pure; problems say which setting cannot be met and why. */
  readonly compile: (context: CorrectionContext, settings: S) => Result<readonly PatternOperation[]>
  /** The words for the slip; `say` writes a length in the file's unit. */
  readonly word: (settings: S, say: (mm: number) => string) => SlipWords
}

/** What every correction has beside its own settings. */
type CommonKey = 'do' | 'side' | 'seen' | 'voided'

/** A schema that takes no key but its own. */
export type StrictSettings = z.ZodObject<z.core.$ZodLooseShape, z.core.$strict>

type Key<Schema extends StrictSettings> = keyof Schema['shape'] & string

/** True for a schema that takes keys it does not name: the bare types of strict and loose ones fit each other. */
type TakesMore<Output> = string extends keyof Output ? (Output extends Record<string, never> ? false : true) : false

/** The schema where it can be one of settings, else never. */
type Usable<Schema extends StrictSettings> = [Key<Schema> & CommonKey, TakesMore<z.output<Schema>>] extends [
  never,
  false,
]
  ? Schema
  : never

/** One setting, or up to three that have one default together. */
type KeysOf<K extends string> = K | `${K}, ${K}` | `${K}, ${K}, ${K}`

/**
 * A correction before it goes into a table: `compile` and `word` get what the schema of `settings` puts out, defaults
 * are of settings that there are, and none is called as what all corrections have.
 */
export type CorrectionDefinition<Schema extends StrictSettings> = Omit<
  Correction<z.output<Schema>>,
  'settings' | 'defaults'
> & {
  /** The schema of the settings for a file's unit: `z.strictObject({ by: read.positiveLength() })`. */
  readonly settings: (read: Readers) => Usable<Schema>
  /** What the settings that may be left out stand for. */
  readonly defaults: readonly SettingDefault<KeysOf<Key<Schema>>>[]
}

/**
 * A correction for a table, which holds corrections of all kinds of settings: give `[...CORRECTIONS, mine]` to
 * `makePattern`, or to `readersOf` and `replay`. Settings are only ever read by the correction's own schema, so they are
 * what it put out.
 */
/* @__NO_SIDE_EFFECTS__ */
export function defineCorrection<Schema extends StrictSettings>(definition: CorrectionDefinition<Schema>): Correction {
  return {
    ...definition,
    settings: keptWith(definition.settings),
    compile: (context, settings) => definition.compile(context, settings as z.output<Schema>),
    word: (settings, say) => definition.word(settings as z.output<Schema>, say),
  }
}
