import { availableParallelism } from 'node:os'
import type { Format, Paper, Problem, Result } from '../index.ts'
import { type CastDesign, readDesign } from './cast-design.ts'
import { readCommon, readList, readText } from './common-options.ts'
import { problemsIn } from './make.ts'
import { optionProblem, readFormats, readPapers } from './options.ts'
import type { Typed } from './run.ts'

/** More at a time only wait for each other. */
const MOST_JOBS = 64

export interface CastOptions {
  readonly dir: string
  readonly json: boolean
  readonly quiet: boolean
  readonly raw: boolean
  readonly until?: string
  readonly output?: string
  readonly formats: readonly Format[]
  readonly papers?: readonly Paper[]
  readonly design?: CastDesign
  readonly jobs: number
}

export function readCastOptions(typed: Typed): Result<CastOptions> {
  const common = readCommon(typed)
  const output = readText(typed, 'output')
  const formats = readFormats(readList(typed, 'as'))
  const papers = readPapers(readList(typed, 'paper'))
  const jobs = readJobs(typed)
  const name = readText(typed, 'design')
  const design = name.ok ? readDesign(name.value) : name
  const dir = readFolder(typed)
  if (!common.ok || !output.ok || !formats.ok || !papers.ok || !jobs.ok || !design.ok || !dir.ok) {
    return { ok: false, problems: problemsIn([common, dir, output, formats, papers, jobs, design]) }
  }
  const { json, quiet, raw, until } = common.value
  return {
    ok: true,
    value: {
      dir: dir.value,
      json,
      quiet,
      raw,
      formats: formats.value,
      jobs: jobs.value,
      ...(until === undefined ? {} : { until }),
      ...(output.value === undefined ? {} : { output: output.value }),
      ...(papers.value === undefined ? {} : { papers: papers.value }),
      ...(design.value === undefined ? {} : { design: design.value }),
    },
  }
}

function readFolder(typed: Typed): Result<string> {
  const dir = String(typed.folder)
  if (dir !== '-') return { ok: true, value: dir }
  const problem: Problem = {
    code: 'not-a-folder',
    where: {},
    actual: 'standard input',
    expected: 'a folder of performer files',
    hint: 'for one file from standard input use scye draft -',
  }
  return { ok: false, problems: [problem] }
}

function readJobs(typed: Typed): Result<number> {
  const text = readText(typed, 'jobs')
  if (!text.ok) return text
  if (text.value === undefined) return { ok: true, value: availableParallelism() }
  const jobs = /^\d+$/.test(text.value) ? Number(text.value) : 0
  if (jobs >= 1 && jobs <= MOST_JOBS) return { ok: true, value: jobs }
  const problem = optionProblem('--jobs', {
    code: 'jobs-out-of-range',
    actual: `"${text.value}"`,
    expected: `a whole number from 1 to ${MOST_JOBS}`,
    hint: 'leave --jobs out for as many as there are processor cores',
  })
  return { ok: false, problems: [problem] }
}
