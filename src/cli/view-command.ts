import { join } from 'node:path'
import { type MadePattern, type Problem, type Result, type ViewJson, writeViewPage } from '../index.ts'
import { findingsStatus } from './check-command.ts'
import { type CommonOptions, readCommon, readText } from './common-options.ts'
import { folderFor } from './draft-command.ts'
import { findingLines } from './finding-lines.ts'
import { makeAll, problemsIn } from './make.ts'
import { oneFile } from './options.ts'
import { writeFiles } from './output.ts'
import { reportProblems } from './report-problems.ts'
import type { Status, Typed } from './run.ts'
import { fileLines, placeShown } from './summary.ts'
import { today } from './surroundings.ts'
import type { Terminal } from './terminal.ts'

interface ViewOptions extends CommonOptions {
  readonly file: string
  readonly output?: string
}

const NAME = 'view.html'

const ONE_AT_A_TIME = 'look at one file at a time: scye view lamplighter.yaml'

/** `scye view`: one HTML page to look at a pattern and measure in, from any version to any other. */
export function viewCommand(typed: Typed, terminal: Terminal): Status {
  const options = readOptions(typed)
  const json = options.ok ? options.value.json : typed.json === true
  const refuse = (problems: readonly Problem[], textOf: (file: string) => string | undefined = () => undefined) =>
    reportProblems(problems, { json, written: true }, textOf, terminal)
  if (!options.ok) return refuse(options.problems)
  const { file, quiet, output } = options.value
  const { each, textOf } = makeAll(options.value)
  const made = each[0]?.result
  if (!made?.ok) return refuse(problemsIn(made ? [made] : []), textOf)
  const folder = folderFor(file, made.value, { files: [file], ...(output === undefined ? {} : { output }) })
  const written = writeFiles(folder, [{ name: NAME, content: writeViewPage(made.value, { date: today() }) }])
  if (!written.ok) return refuse(written.problems)
  if (json) terminal.out(`${JSON.stringify(viewJson(made.value), null, 2)}\n`)
  else if (!quiet) {
    const { strong } = terminal.styleOut
    const { report } = made.value
    const lines = [
      strong([report.performer, report.production, report.version].filter((part) => part).join(' · ')),
      ...(report.findings.length > 0 ? findingLines(report.findings, terminal.styleOut) : []),
      '',
      // Other files of the folder are not this command's to speak of.
      ...fileLines({ ...written.value, left: [] }, terminal.styleOut),
      `Open ${join(placeShown(folder), NAME)} in a browser; it needs no network.`,
    ]
    terminal.out(`${lines.join('\n')}\n`)
  }
  return findingsStatus([made.value.report], quiet && !json, terminal)
}

function viewJson({ performer, versions, report }: MadePattern): ViewJson {
  return {
    scyewright: 'view/1',
    performer: performer.performer,
    ...(performer.production === undefined ? {} : { production: performer.production }),
    versions: versions.map(({ label }) => label),
    findings: report.findings,
    files: [NAME],
  }
}

function readOptions(typed: Typed): Result<ViewOptions> {
  const common = readCommon(typed)
  const output = readText(typed, 'output')
  if (!common.ok || !output.ok) return { ok: false, problems: problemsIn([common, output]) }
  const { files } = common.value
  const [file] = files
  if (file === undefined || files.length > 1)
    return { ok: false, problems: [oneFile(files, 'one performer file, whose pattern is looked at', ONE_AT_A_TIME)] }
  return { ok: true, value: { ...common.value, file, ...(output.value === undefined ? {} : { output: output.value }) } }
}
