import { basename, extname, relative } from 'node:path'
import {
  beginPerformer,
  LENGTH_UNITS,
  type LengthUnit,
  MEASURE_NAMES,
  MEASURES,
  type Problem,
  type Result,
  readTakenChoices,
  type TakenChoices,
} from '../index.ts'
import { readCommon, readText } from './common-options.ts'
import { readInput } from './input.ts'
import { problemsIn } from './make.ts'
import { didYouMean, oneFile, optionProblem } from './options.ts'
import { writeNewFile } from './output.ts'
import { reportProblems } from './report-problems.ts'
import type { Status, Typed } from './run.ts'
import { schemaUrl } from './surroundings.ts'
import { wrapped } from './table.ts'
import type { Style, Terminal } from './terminal.ts'

const ONE_AT_A_TIME = 'begin one file at a time; another one to take choices from is named with --from'

interface Asked {
  readonly file: string
  readonly json: boolean
  readonly quiet: boolean
  readonly units?: LengthUnit
  readonly from?: string
}

/** What was begun: the contract begin/1 and the words for a person are made from it. */
interface Begun {
  readonly asked: Asked
  readonly units: LengthUnit
  readonly performer: string
  readonly taken?: { readonly file: string; readonly choices: TakenChoices }
}

const WORDS: Readonly<Record<LengthUnit, string>> = { in: 'inches', cm: 'centimeters', mm: 'millimeters' }

/** Output is broken here, so that it can be read in a narrow window. */
const WIDTH = 78

/** `scye begin`: writes a performer file to fill in where there is none yet, or prints it for `-`. */
export function beginCommand(typed: Typed, terminal: Terminal): Status {
  const texts = new Map<string, string>()
  const options = readOptions(typed)
  const refuse = (problems: readonly Problem[]) =>
    reportProblems(problems, { json: typed.json === true, written: true }, (file) => texts.get(file), terminal)
  if (!options.ok) return refuse(options.problems)
  const asked = options.value
  const { file, from } = asked
  const input = from === undefined ? undefined : readInput(from)
  if (input && !input.ok) return refuse(input.problems)
  if (input) texts.set(input.value.name, input.value.text)
  const taken = input ? readTakenChoices(input.value.text, input.value.name, asked.units) : undefined
  if (taken && !taken.ok) return refuse(taken.problems)
  const units = asked.units ?? taken?.value.units ?? 'in'
  const performer = file === '-' ? 'Performer' : roleFrom(file)
  const source = taken && input ? { taken: { file: input.value.name, choices: taken.value } } : {}
  const text = beginPerformer({
    performer,
    units,
    schema: schemaUrl(),
    ...(taken ? { taken: taken.value } : {}),
  })
  const written: Result<undefined> = file === '-' ? { ok: true, value: undefined } : writeNewFile(file, text)
  if (!written.ok) return refuse(written.problems)
  const begun: Begun = { asked, units, performer, ...source }
  if (asked.json) terminal.out(`${JSON.stringify(begunJson(begun, text), null, 2)}\n`)
  else if (file === '-') terminal.out(text)
  else if (!asked.quiet) terminal.out(begunText(begun, terminal.styleOut))
  return 0
}

function readOptions(typed: Typed): Result<Asked> {
  const common = readCommon(typed)
  const units = readUnits(typed)
  const from = readText(typed, 'from')
  if (!common.ok || !units.ok || !from.ok) return { ok: false, problems: problemsIn([common, units, from]) }
  const { files, json, quiet } = common.value
  const [file] = files
  if (file === undefined || files.length > 1)
    return { ok: false, problems: [oneFile(files, 'one file to write', ONE_AT_A_TIME)] }
  return {
    ok: true,
    value: {
      file,
      json,
      quiet,
      ...(units.value === undefined ? {} : { units: units.value }),
      ...(from.value === undefined ? {} : { from: from.value }),
    },
  }
}

function readUnits(typed: Typed): Result<LengthUnit | undefined> {
  const text = readText(typed, 'units')
  if (!text.ok || text.value === undefined) return text as Result<undefined>
  const name = text.value.trim().toLowerCase()
  const units = LENGTH_UNITS.find((known) => known === name)
  if (units) return { ok: true, value: units }
  const hint = didYouMean(name, LENGTH_UNITS) ?? 'write --units in, --units cm or --units mm'
  const problem = { code: 'unknown-unit', actual: `"${text.value}"`, expected: 'in, cm or mm', hint }
  return { ok: false, problems: [optionProblem('--units', problem)] }
}

/** `ferry-pilot.yaml` is most likely the Ferry Pilot's. */
function roleFrom(file: string): string {
  const words = basename(file, extname(file)).split(/[\s_-]+/)
  const role = words.map((word) => word.charAt(0).toUpperCase() + word.slice(1)).join(' ')
  return role.trim() === '' ? 'Performer' : role.trim()
}

const REQUIRED = MEASURE_NAMES.filter((name) => MEASURES[name].required)

function begunJson({ asked, units, performer, taken }: Begun, text: string) {
  return {
    scyewright: 'begin/1',
    file: asked.file,
    performer,
    units,
    required: REQUIRED,
    optional: MEASURE_NAMES.filter((name) => !MEASURES[name].required),
    ...(taken ? { from: { file: taken.file, took: tookFields(taken.choices), left: taken.choices.left } } : {}),
    ...(asked.file === '-' ? { text } : {}),
  }
}

function begunText({ asked, units, performer, taken }: Begun, style: Style): string {
  const path = relative(process.cwd(), asked.file)
  const file = path.startsWith('..') ? asked.file : path
  const lines = [
    style.strong(`Written: ${file}`),
    ...wrapped(`It is for ${performer}, in ${WORDS[units]}; only you can read it. Keep it confidential.`, WIDTH),
    ...(taken ? takenLines(taken.file, taken.choices) : []),
    ...wrapped(`To fill in before it can be drafted: ${REQUIRED.join(', ')}.`, WIDTH),
    ...wrapped(`Then: scye draft ${file}`, WIDTH),
  ]
  return `${lines.join('\n')}\n`
}

function takenLines(file: string, choices: TakenChoices): string[] {
  const took = tookFields(choices)
  return [
    ...wrapped(`Taken from ${file}: ${took.length === 0 ? 'nothing, it makes no choices' : took.join(', ')}.`, WIDTH),
    ...(choices.left.length === 0
      ? []
      : wrapped(`Not taken, they belong to that body: ${choices.left.map(leftWords).join(', ')}.`, WIDTH)),
  ]
}

function leftWords(section: string): string {
  return section === 'body' ? 'its measures' : section === 'fittings' ? 'its fittings' : 'the date it was measured'
}

/** The fields taken, as dotted names. */
function tookFields({ production, draft, allowance, mockUps }: TakenChoices): string[] {
  return [
    ...(production === undefined ? [] : ['production']),
    ...Object.keys(draft).map((key) => `draft.${key}`),
    ...(allowance === undefined ? [] : ['mock-up.allowance']),
    ...Object.keys(mockUps).map((number) => `mock-ups.${number}`),
  ]
}
