import type { Report } from '../index.ts'
import { readCommon } from './common-options.ts'
import { findingLines } from './finding-lines.ts'
import { makeAll, problemsIn } from './make.ts'
import { reportProblems } from './report-problems.ts'
import { reportTables } from './report-tables.ts'
import type { Status, Typed } from './run.ts'
import type { Terminal } from './terminal.ts'

/** `scye check`: findings first, then the walk, measures, allowances and movement of every file; writes nothing. */
export function checkCommand(typed: Typed, terminal: Terminal): Status {
  const options = readCommon(typed)
  if (!options.ok)
    return reportProblems(options.problems, { json: typed.json === true, written: false }, () => undefined, terminal)
  const { json, quiet } = options.value
  const { each, textOf } = makeAll(options.value)
  const made = each.flatMap(({ result }) => (result.ok ? [result.value] : []))
  const reports = made.map((one) => one.report)
  const problems = problemsIn(each.map((one) => one.result))
  if (!json && !quiet) {
    terminal.out(made.map((one) => reportTables(one.report, one.performer.units, terminal.styleOut)).join('\n\n'))
  }
  if (problems.length > 0) return reportProblems(problems, { json, reports, written: false }, textOf, terminal)
  if (json) terminal.out(reportsJson(reports))
  return findingsStatus(reports, quiet && !json, terminal)
}

/** One report as it is, several in one document. */
export function reportsJson(reports: readonly Report[]): string {
  const document = reports.length === 1 ? reports[0] : { scyewright: 'reports/1', reports }
  return `${JSON.stringify(document, null, 2)}\n`
}

/** 1 where there are findings of severity error, which `quiet` runs still say; else 0. */
export function findingsStatus(reports: readonly Report[], quiet: boolean, terminal: Terminal): Status {
  const errors = reports.map((report) => ({
    performer: report.performer,
    findings: report.findings.filter((f) => f.severity === 'error'),
  }))
  if (quiet) {
    for (const { performer, findings } of errors) {
      if (findings.length > 0) terminal.err(`${[performer, ...findingLines(findings, terminal.styleErr)].join('\n')}\n`)
    }
  }
  return errors.some(({ findings }) => findings.length > 0) ? 1 : 0
}
