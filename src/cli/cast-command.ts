import { basename, join, resolve } from 'node:path'
import { castIndex, type Problem, type Result } from '../index.ts'
import { designWords } from './cast-design.ts'
import { castEntries } from './cast-entries.ts'
import { castFiles } from './cast-files.ts'
import { type CastOptions, readCastOptions } from './cast-options.ts'
import { castProgress } from './cast-progress.ts'
import { castTable } from './cast-table.ts'
import { type CastRow, type CastSettings, unusable } from './cast-work.ts'
import { findingLines } from './finding-lines.ts'
import { readInput } from './input.ts'
import { type Written, writeFiles } from './output.ts'
import { pool } from './pool.ts'
import { printProblems } from './print-problems.ts'
import { reportProblems } from './report-problems.ts'
import type { Status, Typed } from './run.ts'
import { placeShown } from './summary.ts'
import { today } from './surroundings.ts'
import { wrappedToWidth } from './table.ts'
import type { Terminal } from './terminal.ts'
import { unexpectedProblem } from './unexpected.ts'

/** `scye cast`: every performer file of a folder drafted, checked and written, whatever becomes of the others. */
export async function castCommand(typed: Typed, terminal: Terminal): Promise<Status> {
  const refuse = (problems: readonly Problem[]) =>
    reportProblems(problems, { json: typed.json === true, written: true }, textOf, terminal)
  const read = readCastOptions(typed)
  if (!read.ok) return refuse(read.problems)
  const options = read.value
  const files = castFiles(options.dir, options.output)
  if (!files.ok) return refuse(files.problems)
  const progress = await castProgress(files.value.length, !options.quiet && !options.json, terminal)
  const usable = files.value.filter(({ problem }) => problem === undefined)
  const made = await pool({
    tasks: usable.map(({ file, folder }) => ({ file, folder })),
    module: new URL('./start-worker.cjs', import.meta.url),
    settings: settingsOf(options),
    jobs: options.jobs,
    crashed: (task, error): CastRow => unusable(task, [unexpectedProblem(error, task.file)]),
    done: ({ file }) => progress.step(basename(file)),
  }).finally(progress.stop)
  const byFile = new Map(made.map((row) => [row.file, row]))
  const rows = files.value.flatMap((one) => byFile.get(one.file) ?? unusable(one, one.problem ? [one.problem] : []))
  const index = writeIndex(rows, options)
  if (options.json) terminal.out(document(rows, options, index))
  else report(rows, options, index, terminal)
  if (!index.ok || rows.some(({ status }) => status === 'unusable')) return 2
  return rows.some(({ status }) => status === 'findings') ? 1 : 0
}

function settingsOf({ formats, papers, until, raw, design }: CastOptions): CastSettings {
  return {
    formats,
    raw,
    date: today(),
    ...(papers === undefined ? {} : { papers }),
    ...(until === undefined ? {} : { until }),
    ...(design === undefined
      ? {}
      : {
          design: {
            file: design.file,
            performer: { choices: design.performer.choices, allowances: design.performer.allowances },
          },
        }),
  }
}

function writeIndex(rows: readonly CastRow[], { dir, output, design }: CastOptions): Result<Written> {
  const folder = output === undefined ? join(resolve(dir), 'cast-index') : resolve(output)
  const productions = [...new Set(rows.flatMap(({ production }) => production ?? []))]
  const content = castIndex(castEntries(rows, folder), {
    title: productions.length === 1 ? (productions[0] as string) : `Cast in ${basename(resolve(dir))}`,
    date: today(),
    ...(design === undefined ? {} : { design: designWords(design) }),
  })
  return writeFiles(folder, [{ name: 'index.html', content }])
}

/** The contract cast/1. */
function document(rows: readonly CastRow[], { design }: CastOptions, index: Result<Written>): string {
  const performers = rows.map(({ picture: _, ...row }) => row)
  const whole = {
    scyewright: 'cast/1',
    ...(design === undefined ? {} : { design: { file: design.file, performer: design.performer.performer } }),
    performers,
    ...(index.ok ? { index: join(index.value.folder, 'index.html') } : { problems: index.problems }),
  }
  return `${JSON.stringify(whole, null, 2)}\n`
}

function report(
  rows: readonly CastRow[],
  { quiet, design }: CastOptions,
  index: Result<Written>,
  terminal: Terminal,
): void {
  const { styleOut: style, styleErr } = terminal
  const counts = (['ok', 'findings', 'unusable'] as const).map(
    (status) => rows.filter((r) => r.status === status).length,
  )
  const [ok, errors, bad] = counts
  if (!quiet) {
    const lines = [
      ...(design === undefined ? [] : [...wrappedToWidth(designWords(design)), '']),
      ...castTable(rows, style),
      '',
      style.strong(`${rows.length} files: ${ok} ok, ${errors} with errors, ${bad} that cannot be used`),
      ...(index.ok ? [`Index: ${join(placeShown(index.value.folder), 'index.html')}`] : []),
    ]
    terminal.out(`${lines.join('\n')}\n`)
  }
  for (const { performer, file, findings } of rows) {
    const found = findings.filter(({ severity }) => severity === 'error')
    if (found.length > 0) terminal.err(`\n${[`${performer} · ${file}`, ...findingLines(found, styleErr)].join('\n')}\n`)
  }
  const problems = [...rows.flatMap((row) => row.problems), ...(index.ok ? [] : index.problems)]
  if (problems.length > 0) terminal.err(`\n${printProblems(problems, textOf, styleErr)}`)
}

/** Read once more for the line that a problem stands in: texts are not kept, there may be thousands. */
function textOf(file: string): string | undefined {
  const input = readInput(file)
  return input.ok ? input.value.text : undefined
}
