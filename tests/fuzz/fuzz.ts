/**
 * Spoils sound performer files in 20,000 ways and asks of each what it asks of any: no exception, an answer within two
 * seconds, problems that help, patterns that can be cut and sewn. Then starts 100 whole processes.
 *
 *     npm run survey:files
 *     SCYE_SEED=12345 npm run survey:files -- 5000
 *
 * Exit status 1: a fault. Each is printed once, with the smallest changes that make it.
 */
import fc from 'fast-check'
import { type JudgeOptions, judgeFile, type Verdict } from './judge-file.ts'
import { processFaults } from './judge-process.ts'
import { soundFiles } from './sound-files.ts'
import { type Spoilt, spoiltFiles, spoiltText } from './spoil-file.ts'

const FILES = Number(process.argv[2] ?? 20_000)
const PROCESSES = Number(process.argv[3] ?? 100)
const seed = Number(process.env.SCYE_SEED ?? 20261125)

const texts = soundFiles()
const started = performance.now()
const spoilt = fc.sample(spoiltFiles(texts.length), { numRuns: FILES, seed })
const faults = new Map<
  string,
  { readonly count: number; readonly first: Spoilt; readonly fault: string; readonly write: JudgeOptions }
>()
const codes = new Map<string, number>()
let drafted = 0
let withErrors = 0
let slowest = 0

for (const [number, one] of spoilt.entries()) {
  const write: JudgeOptions = number % 200 === 0 ? { write: 'pdf' } : number % 20 === 0 ? { write: 'svg' } : {}
  count(await judgeFile(spoiltText(texts, one), write), one, write)
}

const seconds = ((performance.now() - started) / 1000).toFixed(0)
console.log(`${FILES} files from ${texts.length} sound ones in ${seconds} s, seed ${seed}`)
console.log(
  `${drafted} drafted, ${withErrors} of them with findings of severity error; slowest ${slowest.toFixed(0)} ms`,
)
console.log('problems by code:')
for (const [code, times] of [...codes].sort((a, b) => b[1] - a[1]))
  console.log(`  ${String(times).padStart(6)}  ${code}`)

const processes = await processFaults(spoilt.slice(0, PROCESSES).map((one) => spoiltText(texts, one)))
console.log(`${PROCESSES} processes, ${processes.length} faults`)
for (const fault of processes) console.log(`  ${fault}`)

console.log(`${faults.size} kinds of faults`)
for (const { count: times, first, fault, write } of faults.values()) {
  const least = await shrunk(first, kindOf(fault), write)
  console.log(`\n${times} ×  ${fault.slice(0, 1500)}\n  ${JSON.stringify(least)}`)
}
process.exitCode = faults.size + processes.length > 0 ? 1 : 0

function count(verdict: Verdict, one: Spoilt, write: JudgeOptions): void {
  if (verdict.drafted) drafted++
  if (verdict.errors.length > 0) withErrors++
  slowest = Math.max(slowest, verdict.took)
  for (const code of new Set(verdict.codes)) codes.set(code, (codes.get(code) ?? 0) + 1)
  for (const fault of verdict.faults) {
    const kind = kindOf(fault)
    const known = faults.get(kind)
    faults.set(kind, known ? { ...known, count: known.count + 1 } : { count: 1, first: one, fault, write })
  }
}

/** Faults that differ in their figures and words alone are one. */
function kindOf(fault: string): string {
  return (fault.startsWith('exception') ? fault.split('\n').slice(0, 2).join(' ') : fault)
    .replace(/-?[\d.]+/g, '#')
    .slice(0, 60)
}

/** Without the changes that the fault does not need. */
async function shrunk(one: Spoilt, kind: string, write: JudgeOptions): Promise<Spoilt> {
  for (const change of one.changes) {
    const fewer = { ...one, changes: one.changes.filter((other) => other !== change) }
    const { faults } = await judgeFile(spoiltText(texts, fewer), write)
    if (faults.some((fault) => kindOf(fault) === kind)) return shrunk(fewer, kind, write)
  }
  return one
}
