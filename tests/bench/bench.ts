/**
 * Times the project beside other libraries, in one run, on the same curves, and prints a table of ratios:
 *
 *     npm run bench
 *     npm run bench -- offset          only rows with this word
 */
import { spawnSync } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { cpus, loadavg, totalmem } from 'node:os'
import { fileURLToPath } from 'node:url'
import { type BenchCase, isMet, type Wanted } from './bench-case.ts'
import { benchBodies } from './bodies.ts'
import { benchGroups } from './cases.ts'
import { median, timeSideBySide } from './side-by-side.ts'

const LIBRARIES = ['bezier-js', 'paper', 'clipper2-ts', 'pdfkit']
/** Exit status of a group of which no row misses what is wanted; one more for each that does. */
const TIMED = 100
const COLUMNS = ['', 'beside', 'ours', 'theirs', 'ours ÷ theirs', 'wanted', '', 'results apart by']

const [first = '', ...rest] = process.argv.slice(2)
const group = /^--group=(.+)$/.exec(first)?.[1]
const words = group === undefined ? process.argv.slice(2) : rest
const groups = benchGroups(benchBodies())
const asked = (cases: readonly BenchCase[]) =>
  cases.filter(({ name, theirs }) => words.every((word) => `${name} ${theirs?.library ?? ''}`.includes(word)))
const known = asked(Object.values(groups).flat()).map(beforehand)
const widths = COLUMNS.map((column, k) => Math.max(column.length, ...known.map((cells) => cells[k]?.length ?? 0)))

if (group === undefined) {
  console.log(machine())
  print(COLUMNS)
  const missed = Object.keys(groups).reduce((sum, name) => sum + missedIn(name), 0)
  console.log(missed === 0 ? 'everything wanted is met' : `${missed} of the wanted not met`)
} else process.exitCode = TIMED + timed(asked(groups[group] ?? []))

/** Times a group of rows in a process of its own; how many miss what is wanted. */
function missedIn(name: string): number {
  if (asked(groups[name] ?? []).length === 0) return 0
  const file = fileURLToPath(import.meta.url)
  const { status } = spawnSync(process.execPath, [file, `--group=${name}`, ...words], { stdio: 'inherit' })
  if (status === null || status < TIMED) throw new Error(`${name} could not be timed`)
  return status - TIMED
}

/** Prints every row as soon as it is known, for all of them take minutes; how many miss what is wanted. */
function timed(cases: readonly BenchCase[]): number {
  let missed = 0
  for (const one of cases) {
    const { cells, met } = row(one)
    if (met === false) missed++
    print(cells)
  }
  return missed
}

/** The cells of a row as far as they are known before anything is timed, or a cell as wide as what may come. */
function beforehand({ name, theirs, wanted }: BenchCase): string[] {
  return [name, theirs?.library ?? '', duration(100), duration(100), '0.000', wanted ? said(wanted) : '', 'NOT MET']
}

function row(one: BenchCase): { cells: string[]; met: boolean | undefined } {
  const { name, ours, theirs, count, oneByOne, elsewhere = false, wanted } = one
  const works = theirs ? [ours, theirs.work] : [ours]
  // A whole draft runs through much more code than a length: it takes seconds until all of it is compiled for good.
  const options = {
    ...(theirs || elsewhere ? {} : { warmUp: 6000, budget: 3000 }),
    ...(oneByOne === undefined ? {} : { oneByOne }),
    elsewhere,
  }
  const [our, their] = timeSideBySide(works, options) as [number[], number[]?]
  const time = median(our) / count
  const theirTime = their && median(their) / count
  // Within each round, so that a slow moment of the machine slows both sides of it.
  const ratio = their && median(our.map((t, k) => t / (their[k] as number)))
  const met = isMet(wanted, time, ratio)
  const { apart, what } = one.agree()
  const cells = [
    name,
    theirs?.library ?? '',
    duration(time),
    theirTime === undefined ? '' : duration(theirTime),
    ratio === undefined ? '' : ratio.toFixed(ratio < 0.1 ? 3 : 2),
    wanted ? said(wanted) : '',
    met === undefined ? '' : met ? 'met' : 'NOT MET',
    `${apart === 0 ? 0 : apart.toPrecision(2)} ${what}`,
  ]
  return { cells, met }
}

function said(wanted: Wanted): string {
  return 'ratio' in wanted ? `≤ ${wanted.ratio}` : `≤ ${duration(wanted.milliseconds)}`
}

function duration(ms: number): string {
  if (ms >= 1000) return `${(ms / 1000).toFixed(2)} s`
  return ms < 0.1 ? `${(ms * 1000).toFixed(ms < 0.01 ? 2 : 1)} µs` : `${ms.toFixed(2)} ms`
}

function machine(): string {
  const cores = cpus()
  const { node, v8 } = process.versions
  const versions = LIBRARIES.map((name) => `${name} ${versionOf(name)}`)
  return [
    `${cores.length} × ${cores[0]?.model.trim()}, ${Math.round(totalmem() / 2 ** 30)} GB, load ${loadavg()[0]?.toFixed(1)}, ${new Date().toISOString().slice(0, 10)}`,
    `Node ${node} (V8 ${v8}), ${process.platform} ${process.arch}; ${versions.join(', ')}`,
  ].join('\n')
}

function versionOf(name: string): string {
  const file = new URL(`../../node_modules/${name}/package.json`, import.meta.url)
  return JSON.parse(readFileSync(file, 'utf8')).version
}

function print(cells: readonly string[]): void {
  const line = cells.map((cell, k) => (k > 1 && k < 6 ? cell.padStart(widths[k] ?? 0) : cell.padEnd(widths[k] ?? 0)))
  console.log(line.join('  ').trimEnd())
}
