/**
 * Drafts every body of the survey and every pair of extreme measures, checks each pattern with the product's checks
 * and the independent reader, applies every remedy of every problem, and prints statistics with the ten bodies at
 * each end:
 *
 *     npm run survey:bodies
 *
 * Exit status 1: an exception, a problem that leaves the draper helpless, less than 97 % of the survey drafted
 * directly, a problem of the survey without a remedy that drafts, one of the extremes without a remedy that solves it,
 * a remedy that fails, or a pattern that fails a check.
 */
import { fork } from 'node:child_process'
import { availableParallelism } from 'node:os'
import { fileURLToPath } from 'node:url'
import { SURVEY_IS_HERE, type SurveyBody, surveyBodies } from './bodies.ts'
import { extremePairs } from './extreme-bodies.ts'
import { printFigures, printReport } from './print-report.ts'
import { type BodyReport, surveyBody } from './survey-body.ts'

/** Issue: at least 97 % of the survey's bodies draft directly. */
const LEAST_DRAFTED = 0.97
const PROCESSES = Math.min(2, availableParallelism())

const worker = process.argv[2] === '--part' ? Number(process.argv[3]) : undefined
if (worker !== undefined) process.send?.(reportsOf(worker))
else process.exitCode = (await survey()) ? 0 : 1

function bodies(): readonly SurveyBody[] {
  return [...(SURVEY_IS_HERE ? surveyBodies() : []), ...extremePairs()]
}

function reportsOf(part: number): BodyReport[] {
  return bodies()
    .filter((_, k) => k % PROCESSES === part)
    .map(({ id, given }) => surveyBody(id, given, { fair: !id.includes(',') }))
}

async function survey(): Promise<boolean> {
  if (!SURVEY_IS_HERE) console.log('../shared/data/ansur2.csv is not here: only the synthetic extremes are drafted')
  const started = performance.now()
  const parts = await Promise.all(Array.from({ length: PROCESSES }, (_, part) => inProcess(part)))
  const reports = bodies().map(
    (_, k) => (parts[k % PROCESSES] as BodyReport[])[Math.floor(k / PROCESSES)] as BodyReport,
  )
  const extremes = extremePairs().length
  const measured = reports.slice(0, reports.length - extremes)
  console.log(
    `${reports.length} bodies in ${((performance.now() - started) / 1000).toFixed(0)} s, ${PROCESSES} processes\n`,
  )
  let well = true
  if (measured.length > 0) {
    console.log('The survey')
    well = printReport(measured, { drafted: LEAST_DRAFTED, remediesDraft: true })
    printFigures(measured)
    console.log('')
  }
  console.log('Every pair of measures four standard deviations off')
  // Most of them are still bodies: a draft that refused them all would be no draft.
  return printReport(reports.slice(-extremes), { drafted: 0.5, remediesDraft: false }) && well
}

function inProcess(part: number): Promise<BodyReport[]> {
  return new Promise((resolve, reject) => {
    const child = fork(fileURLToPath(import.meta.url), ['--part', String(part)])
    let reports: BodyReport[] | undefined
    child.on('message', (message) => {
      reports = message as BodyReport[]
    })
    child.on('error', reject)
    child.on('exit', (status) => {
      if (status === 0 && reports) resolve(reports)
      else reject(new Error(`process ${part} of the survey ended with status ${status}`))
    })
  })
}
