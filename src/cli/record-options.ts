import {
  CORRECTIONS,
  makeReaders,
  type Problem,
  type Result,
  readPlaceWords,
  type SettingKind,
  settingKinds,
  type Tree,
} from '../index.ts'
import type { CommandOption } from './commands/command.ts'
import { CORRECTION_GROUP } from './commands/shared-options.ts'
import { readCommon, readSwitch, readText } from './common-options.ts'
import { problemsIn } from './make.ts'
import { oneFile, optionProblem } from './options.ts'
import type { Typed } from './run.ts'

/** What of a new correction was said with options; the rest is asked, or has a default. */
export interface SaidCorrection {
  readonly fitting?: string
  readonly date?: string
  readonly mockUp?: string
  readonly provisional?: string
  /** `do`, settings, `side`, `seen`, as they are written. Empty: nothing was said, so it is asked. */
  readonly correction: { readonly [key: string]: Tree }
}

export interface RecordOptions {
  readonly file: string
  readonly json: boolean
  readonly quiet: boolean
  readonly dryRun: boolean
  readonly output?: string
  readonly said: SaidCorrection
  readonly voiding?: { readonly correction: number; readonly why: string }
}

/** More names than these are not listed in the help. */
const MOST_LISTED = 14

const KINDS = CORRECTIONS.map((correction) => ({
  name: correction.name,
  kinds: settingKinds(correction, makeReaders('mm')),
}))

/** Every setting that any correction has. */
const SETTINGS = [...new Set(KINDS.flatMap(({ kinds }) => kinds.map(({ name }) => name)))]

/** An option's name for a setting: `taper-to`. */
export function optionOf(setting: string): string {
  return setting.replace(/ /g, '-')
}

/** An option for every setting that any correction has, and `--do`, with the names that there are. */
export const SETTING_OPTIONS: Readonly<Record<string, CommandOption>> = Object.fromEntries(
  [
    ['do', `what was done: ${CORRECTIONS.map(({ name }) => name).join(', ')}`] as const,
    ...SETTINGS.map((name) => [optionOf(name), describe(name)] as const),
  ].map(([name, words]) => [name, { type: 'string', requiresArg: true, group: CORRECTION_GROUP, describe: words }]),
)

function describe(setting: string): string {
  const users = KINDS.filter(({ kinds }) => kinds.some(({ name }) => name === setting))
  const kinds = users.flatMap(({ kinds }) => kinds.filter(({ name }) => name === setting))
  const names = [...new Set(kinds.flatMap((kind) => kind.names ?? []))]
  const takes = [
    ...(kinds.some(({ place }) => place)
      ? ['a place, as "cap line, front" or "1 1/2 in from underarm toward front notch"']
      : []),
    ...(names.length > 0
      ? [
          names.length > MOST_LISTED
            ? `a name such as ${names.slice(0, 3).join(', ')}; a wrong one gets the list`
            : names.join(', '),
        ]
      : []),
    ...kinds
      .filter(({ place, names: own }) => !place && !own)
      .map(({ expected }) => expected.replace(/ such as .*$/, '')),
  ]
  const again = kinds.some(({ list }) => list) ? '; several times for several' : ''
  const whose = users.length > 4 ? '' : ` (${users.map(({ name }) => name).join(', ')})`
  return `${[...new Set(takes)].join('; or ')}${again}${whose}`
}

/** Reads what was typed. Problems: a value twice where one is meant; `--void` without a number or a reason; settings without `--do`. */
export function readRecordOptions(typed: Typed): Result<RecordOptions> {
  const common = readCommon(typed)
  const dry = readSwitch(typed, 'dry-run')
  const texts = Object.fromEntries(
    ['output', 'do', 'side', 'seen', 'fitting', 'date', 'mock-up', 'provisional', 'void', 'why'].map((name) => [
      name,
      readText(typed, name),
    ]),
  )
  const name = text(texts.do)
  const kinds =
    KINDS.find(
      (one) =>
        one.name ===
        name
          ?.trim()
          .toLowerCase()
          .replace(/[\s_-]+/g, ' '),
    )?.kinds ?? []
  const given = SETTINGS.filter((setting) => typed[optionOf(setting)] !== undefined)
  const settings = given.map((setting) =>
    readSetting(
      typed,
      setting,
      kinds.find((kind) => kind.name === setting),
    ),
  )
  const results: Result<unknown>[] = [common, dry, ...Object.values(texts), ...settings]
  if (!common.ok || !dry.ok || results.some((result) => !result.ok)) return { ok: false, problems: problemsIn(results) }
  const [file] = common.value.files
  if (file === undefined || common.value.files.length > 1 || file === '-')
    return refused([notWritable(common.value.files)])
  const fields = {
    ...(name === undefined ? {} : { do: name.trim() }),
    ...Object.fromEntries(settings.flatMap((result, i) => (result.ok ? [[given[i] as string, result.value]] : []))),
    ...present('side', text(texts.side)),
    ...present('seen', text(texts.seen)),
  }
  const voiding = readVoiding(text(texts.void), text(texts.why))
  if (!voiding.ok) return voiding
  if (voiding.value && Object.keys(fields).length > 0) return refused([eitherOr(Object.keys(fields)[0] as string)])
  if (name === undefined && Object.keys(fields).length > 0) return refused([noName(Object.keys(fields)[0] as string)])
  return {
    ok: true,
    value: {
      file,
      json: common.value.json,
      quiet: common.value.quiet,
      dryRun: dry.value,
      ...present('output', text(texts.output)),
      said: {
        ...present('fitting', text(texts.fitting)?.trim()),
        ...present('date', text(texts.date)),
        ...present('mockUp', text(texts['mock-up'])),
        ...present('provisional', text(texts.provisional)),
        correction: fields,
      },
      ...(voiding.value ? { voiding: voiding.value } : {}),
    },
  }
}

/** One setting as it is to be written: places from words, several as a list. */
function readSetting(typed: Typed, setting: string, kind: SettingKind | undefined): Result<Tree> {
  const value = typed[optionOf(setting)]
  const each = (Array.isArray(value) ? value : [value]).map(String)
  const texts = kind?.list && kind.names ? each.flatMap((one) => one.split(',').map((name) => name.trim())) : each
  if (texts.length > 1 && kind && !kind.list) return readText(typed, optionOf(setting)) as Result<string>
  const read = texts.map((one): Result<Tree> => (kind?.place ? readPlaceWords(one) : { ok: true, value: one.trim() }))
  const problems = problemsIn(read).map((problem) => ({ ...problem, where: { field: `--${optionOf(setting)}` } }))
  if (problems.length > 0) return { ok: false, problems }
  const trees = read.flatMap((result) => (result.ok ? [result.value] : []))
  return { ok: true, value: trees.length === 1 ? (trees[0] as Tree) : trees }
}

function readVoiding(
  number: string | undefined,
  why: string | undefined,
): Result<RecordOptions['voiding'] | undefined> {
  if (number === undefined && why === undefined) return { ok: true, value: undefined }
  if (number === undefined || !/^[1-9]\d{0,5}$/.test(number.trim())) {
    const actual = number === undefined ? 'a reason without a correction' : `"${number}"`
    const hint = 'write --void and the number that the slip gives the correction'
    return refused([optionProblem('--void', { code: 'not-a-count', actual, expected: 'a whole number from 1', hint })])
  }
  if (why === undefined || why.trim() === '' || /^(?:yes|true|no|false)$/i.test(why.trim())) {
    const hint = 'write --why "pinned on the wrong side", or whatever it was'
    const expected = 'the reason why the correction no longer counts'
    return refused([
      optionProblem('--why', {
        code: 'reason-missing',
        actual: why === undefined ? 'no reason' : `"${why}"`,
        expected,
        hint,
      }),
    ])
  }
  return { ok: true, value: { correction: Number(number), why: why.trim() } }
}

function eitherOr(option: string): Problem {
  const hint = 'record them one after the other'
  const expected = 'a correction to add, or the number of one to void'
  return optionProblem(`--${optionOf(option)}`, { code: 'either-or', actual: 'both, with --void', expected, hint })
}

function noName(option: string): Problem {
  const hint = 'write --do "let out", or another name; or leave all of it out to be asked'
  const actual = `--${optionOf(option)} without --do`
  return optionProblem('--do', { code: 'missing', actual, expected: 'the name of the correction', hint })
}

/** One performer file that can be written into. */
function notWritable(files: readonly string[]): Problem {
  const problem = oneFile(files, 'one performer file to write into', 'record into one file at a time')
  return files[0] === '-' ? { ...problem, actual: 'standard input, which cannot be written to' } : problem
}

function refused(problems: readonly Problem[]): Result<never> {
  return { ok: false, problems }
}

function text(result: Result<string | undefined> | undefined): string | undefined {
  return result?.ok ? result.value : undefined
}

function present<K extends string, T>(key: K, value: T | undefined): { readonly [key in K]?: T } {
  return (value === undefined ? {} : { [key]: value }) as { readonly [key in K]?: T }
}
