import type { Problem, Result } from '../index.ts'
import { optionProblem } from './options.ts'
import type { Typed } from './run.ts'

/** Options that most commands have, read and checked. */
export interface CommonOptions {
  readonly files: readonly string[]
  readonly json: boolean
  readonly quiet: boolean
  readonly until?: string
  /** Seams as the corrections made them, nothing trued. */
  readonly raw: boolean
}

/** Reads the options that every command has. Problems: a value given twice, a switch given a value, a file given twice. */
export function readCommon(typed: Typed): Result<CommonOptions> {
  const files = [...list(typed.files), ...list(typed['--'])]
  const json = readSwitch(typed, 'json')
  const quiet = readSwitch(typed, 'quiet')
  const raw = readSwitch(typed, 'no-true')
  const until = readText(typed, 'until')
  const twice = files.filter((file, i) => files.indexOf(file) !== i)
  const problems: Problem[] = [
    ...[json, quiet, raw, until].flatMap((result) => (result.ok ? [] : result.problems)),
    ...[...new Set(twice)].map((file) => ({
      code: 'file-twice',
      where: { file },
      actual: 'the same file twice',
      expected: 'each file once',
      hint: 'name it once',
    })),
  ]
  if (problems.length > 0 || !json.ok || !quiet.ok || !raw.ok || !until.ok) return { ok: false, problems }
  return {
    ok: true,
    value: {
      files,
      json: json.value,
      quiet: quiet.value,
      raw: raw.value,
      ...(until.value === undefined ? {} : { until: until.value }),
    },
  }
}

/** The text given to an option, or undefined without it. Problem: given twice. */
export function readText(typed: Typed, name: string): Result<string | undefined> {
  const value = typed[name]
  if (value === undefined || typeof value === 'string') return { ok: true, value }
  const actual = Array.isArray(value) ? `given ${value.length} times` : String(value)
  const hint = `write --${name} once`
  return {
    ok: false,
    problems: [optionProblem(`--${name}`, { code: 'option-twice', actual, expected: 'one value', hint })],
  }
}

/** The list given to an option, several times or with commas: joined. */
export function readList(typed: Typed, name: string): string | undefined {
  const value = typed[name]
  return value === undefined ? undefined : list(value).join(',')
}

/** yargs takes `--json=x` for false: only a bare switch, or `--json=true`, is one. */
export function readSwitch(typed: Typed, name: string): Result<boolean> {
  const value = typed[name] ?? false
  if (value === true || !(name in typed)) return { ok: true, value: value === true }
  const hint = `write --${name}, or leave it out`
  return {
    ok: false,
    problems: [
      optionProblem(`--${name}`, { code: 'not-a-switch', actual: 'a value after it', expected: 'no value', hint }),
    ],
  }
}

function list(value: unknown): string[] {
  return value === undefined ? [] : Array.isArray(value) ? value.map(String) : [String(value)]
}
