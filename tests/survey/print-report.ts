import type { BodyReport } from './survey-body.ts'

export interface Wanted {
  /** Share of the bodies that draft directly. */
  readonly drafted: number
  /** Whether every other problem has a remedy that drafts; else one that solves it, though another may come to light. */
  readonly remediesDraft: boolean
}

/** Prints what became of many bodies; true where nothing is wrong. */
export function printReport(reports: readonly BodyReport[], wanted: Wanted): boolean {
  const drafted = reports.filter((report) => report.drafted)
  const faulty = drafted.filter((report) => report.faults.length > 0)
  const thrown = reports.filter((report) => report.exception !== undefined)
  const refused = reports.filter((report) => !report.drafted && report.exception === undefined)
  const helpless = refused.filter(
    ({ problems }) =>
      problems.length === 0 ||
      problems.some(({ remedies, offered }) => (wanted.remediesDraft ? remedies : offered) === 0),
  )
  const unsound = refused.filter((report) => report.faults.length > 0)
  for (const { id, exception } of thrown) console.log(`${id}: exception: ${exception}`)
  for (const { id, faults } of [...faulty, ...unsound]) console.log(`${id}: ${faults.join('\n    ')}`)
  for (const { id, problems } of helpless)
    console.log(`${id}: no remedy for ${problems.map((p) => `${p.code} (${p.actual})`).join(', ')}`)
  const share = drafted.length / reports.length
  const problems = refused.flatMap((report) => report.problems)
  const drafting = problems.reduce((sum, { remedies }) => sum + remedies, 0)
  const offered = problems.reduce((sum, problem) => sum + problem.offered, 0)
  const failed = problems.reduce((sum, problem) => sum + problem.failed.length, 0)
  console.log(
    `${drafted.length} of ${reports.length} drafted directly (${(100 * share).toFixed(2)} %), ${faulty.length} of them with a fault`,
  )
  console.log(`${refused.length} with problems: ${tally(problems.map((p) => p.code)) || 'none'}`)
  console.log(
    `${offered} remedies applied: ${drafting} draft, ${offered - drafting - failed} bring another problem to light, ${failed} fail; ${helpless.length} bodies without a remedy`,
  )
  console.log(
    `${thrown.length} exceptions, ${unsound.length - refused.filter((r) => r.problems.some((p) => p.failed.length > 0)).length} problems that leave the draper helpless`,
  )
  return thrown.length + faulty.length + helpless.length + unsound.length === 0 && share >= wanted.drafted
}

/** Least, greatest and in between of every figure, with the ten bodies at each end. */
export function printFigures(reports: readonly BodyReport[]): void {
  for (const name of Object.keys(reports.find((report) => report.drafted)?.figures ?? {})) {
    const list = reports
      .flatMap(({ id, figures }) => (figures[name] === undefined ? [] : [{ id, value: figures[name] as number }]))
      .sort((a, b) => a.value - b.value)
    const at = (share: number) => text(list[Math.min(list.length - 1, Math.floor(share * list.length))]?.value)
    console.log(`${name}: min ${at(0)}, 1 % ${at(0.01)}, median ${at(0.5)}, 99 % ${at(0.99)}, max ${at(1)}`)
    const named = (some: typeof list) => some.map(({ id, value }) => `${id} ${text(value)}`).join(', ')
    console.log(`  least: ${named(list.slice(0, 10))}`)
    console.log(`  most: ${named(list.slice(-10).reverse())}`)
  }
}

function text(value: number | undefined): string {
  return value === undefined ? '-' : value.toFixed(Math.abs(value) < 1 ? 3 : 1)
}

function tally(names: readonly string[]): string {
  const counts = new Map<string, number>()
  for (const name of names) counts.set(name, (counts.get(name) ?? 0) + 1)
  return [...counts].map(([name, count]) => `${name} ${count}`).join(', ')
}
