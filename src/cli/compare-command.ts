import { type Problem, type Result, writeComparison } from '../index.ts'
import { readCommon, readText } from './common-options.ts'
import { comparisonTables } from './comparison-tables.ts'
import { folderFor } from './draft-command.ts'
import { makeAll, problemsIn } from './make.ts'
import { oneFile } from './options.ts'
import { writeFiles } from './output.ts'
import { reportProblems } from './report-problems.ts'
import type { Status, Typed } from './run.ts'
import { today } from './surroundings.ts'
import type { Terminal } from './terminal.ts'

const ONE_AT_A_TIME = 'compare one file at a time; versions are named with --from and --to'

interface CompareOptions {
  readonly file: string
  readonly json: boolean
  readonly quiet: boolean
  readonly raw: boolean
  readonly output?: string
  readonly from?: string
  readonly to?: string
}

/** `scye compare`: lays two versions of one file's pattern over each other and says what moved; checks nothing. */
export async function compareCommand(typed: Typed, terminal: Terminal): Promise<Status> {
  const options = readOptions(typed)
  const json = options.ok ? options.value.json : typed.json === true
  const refuse = (problems: readonly Problem[], textOf: (file: string) => string | undefined = () => undefined) =>
    reportProblems(problems, { json, written: true }, textOf, terminal)
  if (!options.ok) return refuse(options.problems)
  const { file, quiet, raw, output, from, to } = options.value
  const { each, textOf } = makeAll({ files: [file], json, quiet, raw })
  const made = each[0]?.result
  if (!made?.ok) return refuse(problemsIn(made ? [made] : []), textOf)
  const versions = { ...(from === undefined ? {} : { from }), ...(to === undefined ? {} : { to }) }
  const compared = await writeComparison(made.value, { ...versions, date: today() })
  if (!compared.ok) return refuse(compared.problems)
  const folder = folderFor(file, made.value, { files: [file], ...(output === undefined ? {} : { output }) })
  const written = writeFiles(folder, compared.value.files)
  if (!written.ok) return refuse(written.problems)
  if (json) terminal.out(`${JSON.stringify(compared.value.document, null, 2)}\n`)
  else if (!quiet)
    terminal.out(comparisonTables(made.value, compared.value.comparison, written.value, terminal.styleOut))
  return 0
}

function readOptions(typed: Typed): Result<CompareOptions> {
  const common = readCommon(typed)
  const output = readText(typed, 'output')
  const from = readText(typed, 'from')
  const to = readText(typed, 'to')
  if (!common.ok || !output.ok || !from.ok || !to.ok)
    return { ok: false, problems: problemsIn([common, output, from, to]) }
  const { files, json, quiet, raw } = common.value
  const [file] = files
  if (file === undefined || files.length > 1)
    return { ok: false, problems: [oneFile(files, 'one performer file, whose versions are compared', ONE_AT_A_TIME)] }
  return {
    ok: true,
    value: {
      file,
      json,
      quiet,
      raw,
      ...(output.value === undefined ? {} : { output: output.value }),
      ...(from.value === undefined ? {} : { from: from.value }),
      ...(to.value === undefined ? {} : { to: to.value }),
    },
  }
}
