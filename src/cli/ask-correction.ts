import {
  CORRECTIONS,
  type Correction,
  type CorrectionSide,
  type MadePattern,
  makeReaders,
  type NewCorrection,
  offeredDarts,
  offeredPlaces,
  offeredSeams,
  type Pattern,
  type SettingKind,
  settingKinds,
  type Tree,
} from '../index.ts'
import { askPlace } from './ask-place.ts'
import type { Choice, Prompts } from './prompts.ts'
import type { SaidCorrection } from './record-options.ts'
import { exampleOf, furtherQuestion, settingQuestion } from './setting-questions.ts'

export interface AskOptions {
  readonly made: MadePattern
  /** What was said with options already is not asked. */
  readonly said: SaidCorrection
  /** ISO 8601, offered as the date of a new fitting. */
  readonly today: string
}

/** Asks for a correction, a question for each thing to know; only names that are on the mock-up as worn are offered. */
export async function askCorrection(prompts: Prompts, { made, said, today }: AskOptions): Promise<NewCorrection> {
  const fitting = await askFitting(prompts, { made, said, today })
  const index = made.performer.fittings.findIndex(({ label }) => label === fitting.fitting)
  const worn = (made.versions[index < 0 ? made.versions.length - 1 : index] as MadePattern['versions'][number]).pattern
  const correction = await prompts.select({
    message: 'What was done?',
    choices: CORRECTIONS.filter((one) => canBe(one, worn)).map(
      (one): Choice<Correction> => ({ name: one.name, value: one, description: one.does }),
    ),
  })
  const side = await prompts.select<CorrectionSide>({
    message: 'On which side of the wearer?',
    choices: (['both', 'left', 'right'] as const).map((value) => ({ name: value, value })),
  })
  const settings = await askSettings(prompts, correction, { worn, side, made })
  const seen = (await prompts.input({ message: 'What was seen on the body? (may be left empty)' })).trim()
  return {
    ...fitting,
    correction: {
      do: correction.name,
      ...settings,
      ...(side === 'both' ? {} : { side }),
      ...(seen === '' ? {} : { seen }),
    },
  }
}

/** The fitting it belongs to: one of the file, the last one first, or a new one. */
async function askFitting(
  prompts: Prompts,
  { made, said, today }: AskOptions,
): Promise<Omit<NewCorrection, 'correction'>> {
  const { correction: _, fitting, ...more } = said
  const { fittings, units } = made.performer
  if (fitting !== undefined) return { fitting, ...more }
  const labels = fittings.map(({ label }) => label).toReversed()
  const chosen =
    labels.length === 0
      ? undefined
      : await prompts.select<string | undefined>({
          message: 'Which fitting?',
          choices: [...labels.map((label) => ({ name: label, value: label })), { name: 'a new one', value: undefined }],
        })
  if (chosen !== undefined) return { fitting: chosen, ...more }
  const read = makeReaders(units)
  const label = await prompts.input({
    message: 'What is it called?',
    default: ORDINALS[fittings.length] ?? `fitting ${fittings.length + 1}`,
    validate: (text) =>
      text.trim() === '' ? 'write a label' : labels.includes(text.trim()) ? 'the file has that one already' : true,
  })
  const date =
    more.date ??
    (await prompts.input({ message: 'When?', default: today, validate: (text) => fault(read.date(), text.trim()) }))
  const before = fittings[fittings.length - 1]?.mockUp ?? 1
  const mockUp =
    more.mockUp ??
    (await prompts.input({
      message: 'Number of the mock-up on the body?',
      default: String(before),
      validate: (text) => fault(read.count(), text.trim()),
    }))
  return { ...more, fitting: label.trim(), date: date.trim(), mockUp: mockUp.trim() }
}

const ORDINALS = ['first fitting', 'second fitting', 'third fitting', 'fourth fitting', 'fifth fitting']

/** Whether the pattern has what the correction is about. */
function canBe({ name }: Correction, worn: Pattern): boolean {
  return name !== 'join sides' || worn.pieces.some((piece) => / (left|right)$/.test(piece.id) || piece.side === 'whole')
}

interface Asking {
  readonly worn: Pattern
  readonly side: CorrectionSide
  readonly made: MadePattern
}

/** Names and amounts first: with them the correction itself tells which places it knows. */
async function askSettings(
  prompts: Prompts,
  correction: Correction,
  { worn, side, made }: Asking,
): Promise<Record<string, Tree>> {
  const { units } = made.performer
  const read = makeReaders(units)
  const kinds = settingKinds(correction, read)
  const { shape } = correction.settings(read)
  const answers: Record<string, Tree> = {}
  for (const kind of [...kinds.filter(({ place }) => !place), ...kinds.filter(({ place }) => place)]) {
    const answer = kind.place
      ? await askPlace(prompts, kind, {
          units,
          offered: offeredPlaces(correction, kind.name, { worn, side, units, settings: answers }),
        })
      : await askValue(prompts, kind, {
          names: namesFor(kind, worn, side),
          example: exampleOf(kind, units),
          validate: (text) => fault(shape[kind.name] as Schema, text),
        })
    if (answer !== undefined) answers[kind.name] = answer
  }
  return Object.fromEntries(kinds.flatMap(({ name }) => (answers[name] === undefined ? [] : [[name, answers[name]]])))
}

function namesFor({ name, names }: SettingKind, worn: Pattern, side: CorrectionSide): readonly string[] | undefined {
  if (name === 'dart') return offeredDarts(worn)
  return names === undefined ? undefined : /seam$/.test(name) ? offeredSeams(worn, names, side) : names
}

interface ValueOptions {
  readonly names: readonly string[] | undefined
  /** Of what may be written where there are no names. */
  readonly example: string
  readonly validate: (text: string) => true | string
}

async function askValue(
  prompts: Prompts,
  kind: SettingKind,
  { names, example, validate }: ValueOptions,
): Promise<Tree | undefined> {
  const message = settingQuestion(kind)
  if (names === undefined) {
    const usual = kind.required ? '' : `; left empty: ${kind.usual ?? 'none'}`
    const text = await prompts.input({
      message: `${message} (such as ${example}${usual})`,
      validate: (said) => {
        if (said.trim() !== '') return validate(said.trim())
        return kind.required ? `this one is needed, such as ${example}` : true
      },
    })
    return text.trim() === '' ? undefined : text.trim()
  }
  const leave = kind.required ? [] : [{ name: `leave it out: ${kind.usual ?? 'none'}`, value: undefined }]
  const choices = [...leave, ...names.map((name) => ({ name, value: name }))]
  const first = await prompts.select<string | undefined>({ message, choices })
  if (first === undefined || !kind.list) return first
  const several = [first]
  for (let left = names; ; ) {
    left = left.filter((name) => !several.includes(name))
    if (left.length === 0) return several
    const more = await prompts.select<string | undefined>({
      message: furtherQuestion(kind),
      choices: [{ name: 'no, that is all', value: undefined }, ...left.map((name) => ({ name, value: name }))],
    })
    if (more === undefined) return several.length === 1 ? first : several
    several.push(more)
  }
}

/** As much of a schema as it takes to try a value. */
interface Schema {
  safeParse(value: unknown): {
    readonly success: boolean
    readonly error?: { readonly issues: readonly { readonly message: string; readonly params?: unknown }[] } | undefined
  }
}

/** True, or what is wrong with a value, in its reader's words. */
function fault(schema: unknown, text: string): true | string {
  const { success, error } = (schema as Schema).safeParse(text)
  if (success) return true
  const issue = error?.issues[0]
  const { actual, hint } = (issue?.params ?? {}) as { readonly actual?: string; readonly hint?: string }
  return actual === undefined ? `write ${issue?.message ?? 'something else'}` : `${actual}: ${hint}`
}
