import { type MadePattern, makePattern, type Problem, type Result, thumbnail, writePattern } from '../index.ts'
import { type CastRow, type CastSettings, type CastTask, unusable } from './cast-work.ts'
import { readInput } from './input.ts'
import { writeFiles } from './output.ts'
import { labelFont } from './surroundings.ts'
import { traceOf, unexpectedProblem } from './unexpected.ts'

/** Drafts, checks and writes one file of a cast; whatever happens is that file's row. */
export async function castOne(task: CastTask, settings: CastSettings): Promise<CastRow> {
  try {
    const made = makeOne(task.file, settings)
    if (!made.ok) return unusable(task, made.problems)
    const { formats, papers, date } = settings
    const asked = { formats, date, font: labelFont, ...(papers === undefined ? {} : { papers }) }
    const files = await writePattern(made.value, asked)
    if (!files.ok) return unusable(task, files.problems)
    const written = writeFiles(task.folder, files.value.files)
    if (!written.ok) return unusable(task, written.problems)
    return row(task, made.value, written.value.files, files.value.pages)
  } catch (error) {
    const trace = traceOf(error)
    if (trace !== undefined) process.stderr.write(`${task.file}: ${trace}\n`)
    return unusable(task, [unexpectedProblem(error, task.file)])
  }
}

function makeOne(file: string, { until, raw, design }: CastSettings): Result<MadePattern> {
  const input = readInput(file)
  if (!input.ok) return input
  const { text, name } = input.value
  const made = makePattern(text, name, {
    raw,
    ...(until === undefined ? {} : { until }),
    ...(design === undefined ? {} : { design: design.performer }),
  })
  return made.ok || design === undefined
    ? made
    : { ok: false, problems: made.problems.map((problem) => ofDesign(problem, design.file)) }
}

/** What is wrong with a choice or an allowance stands in the design's file, not in this performer's. */
function ofDesign(problem: Problem, design: string): Problem {
  const { field } = problem.where
  return field !== undefined && /^(draft|mock.ups?)\b/.test(field)
    ? { ...problem, where: { file: design, field } }
    : problem
}

function row(
  { file, folder }: CastTask,
  { performer, versions, version, pattern, report }: MadePattern,
  files: readonly string[],
  pages: CastRow['pages'],
): CastRow {
  const fittings = versions.slice(1).map(({ label }) => label)
  const mockUp = performer.fittings.find(({ label }) => label === version)?.mockUp
  const { findings } = report
  return {
    file,
    folder,
    performer: performer.performer,
    ...(performer.production === undefined ? {} : { production: performer.production }),
    version,
    fittings,
    ...(mockUp === undefined ? {} : { mockUp }),
    status: findings.some(({ severity }) => severity === 'error') ? 'findings' : 'ok',
    findings,
    problems: [],
    files,
    pages,
    picture: thumbnail(pattern, `Pieces of ${performer.performer}, ${version}`),
  }
}
