import type { Problem, Report } from '../index.ts'
import type { ProblemsJson } from './documents.ts'
import { printProblems } from './print-problems.ts'
import type { Status } from './run.ts'
import type { Terminal } from './terminal.ts'

export interface ReportProblemsOptions {
  readonly json: boolean
  /** Reports of the other files of the same run, which could be used. */
  readonly reports?: readonly Report[]
  /** False where the command writes nothing anyway. */
  readonly written: boolean
}

/** Says what cannot be used: on stderr for a person, or as problems/1 on stdout. Returns exit status 2. */
export function reportProblems(
  problems: readonly Problem[],
  { json, reports, written }: ReportProblemsOptions,
  textOf: (file: string) => string | undefined,
  terminal: Terminal,
): Status {
  if (json) {
    const usable = reports && reports.length > 0 ? { reports } : {}
    const document: ProblemsJson = { scyewright: 'problems/1', problems, ...usable }
    terminal.out(`${JSON.stringify(document, null, 2)}\n`)
  } else {
    const count = `${problems.length} problem${problems.length === 1 ? '' : 's'}`
    const end = written ? `${count}; nothing was written${reports ? ' for these files' : ''}` : count
    terminal.err(`${printProblems(problems, textOf, terminal.styleErr)}\n${terminal.styleErr.strong(end)}\n`)
  }
  return 2
}
