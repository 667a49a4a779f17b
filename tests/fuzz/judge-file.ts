import { readFileSync } from 'node:fs'
import { inspect } from 'node:util'
import { printProblems } from '../../src/cli/print-problems.ts'
import { type Finding, makePattern, type Problem } from '../../src/index.ts'
import { patternJson } from '../../src/writers/pattern-json.ts'
import { complaints, type RawPattern } from '../independent-reader.ts'
import { writingFaults } from './judge-writing.ts'

/** What became of one text. */
export interface Verdict {
  readonly drafted: boolean
  readonly codes: readonly string[]
  readonly errors: readonly string[]
  /** What must never be, in words; empty when all is well. */
  readonly faults: readonly string[]
  /** Processor time of the reading and drafting, ms. */
  readonly took: number
}

export interface JudgeOptions {
  /** Writes the files of what drafts, in memory, and looks into them too; the sheets of a printer with `pdf`. */
  readonly write?: 'pdf' | 'svg'
}

/** A draper waits no longer for an answer, ms. */
const LONGEST = 2000

/** The clock of a processor that is shared runs on: on such a machine, so many drafts of the demo. */
const LONGEST_BUSY = 200

/** More of a value than this fills the screen that was to say what is wrong with it. */
const MOST_WORDS = 2000

const FILE = 'spoilt.yaml'

const DEMO = readFileSync(new URL('../../examples/lamplighter.yaml', import.meta.url), 'utf8')

const PLAIN = { strong: same, quiet: same, bad: same, doubtful: same, good: same }

/** Reads, drafts and checks a text; an exception, a problem that does not help and a pattern that is none are faults. */
export async function judgeFile(text: string, { write }: JudgeOptions = {}): Promise<Verdict> {
  const start = process.cpuUsage()
  const took = () => Object.values(process.cpuUsage(start)).reduce((a, b) => a + b) / 1000
  try {
    const made = makePattern(text, FILE)
    const time = took()
    const slow = time > LONGEST && time > LONGEST_BUSY * demoTime() ? [`takes ${Math.round(time)} ms`] : []
    if (!made.ok) {
      const codes = made.problems.map(({ code }) => code)
      return { drafted: false, codes, errors: [], faults: [...slow, ...problemFaults(made.problems, text)], took: time }
    }
    const { findings } = made.value.report
    const errors = findings.filter(({ severity }) => severity === 'error').map(({ code }) => code)
    const json = patternJson(made.value.pattern, { performer: 'x', version: 'x' }) as unknown as RawPattern
    const faults = [
      ...slow,
      ...(errors.length > 0 ? [] : complaints(json).filter((complaint) => !isSaid(complaint, findings))),
      ...findings.flatMap((finding) => wordFaults(finding)),
      ...(write ? await writingFaults(made.value, write) : []),
    ]
    return { drafted: true, codes: [], errors, faults, took: time }
  } catch (error) {
    const { stack } = error as Error
    return { drafted: false, codes: [], errors: [], faults: [`exception: ${stack ?? inspect(error)}`], took: took() }
  }
}

/**
 * Whether a finding that is no error says the same: a join whose ease was asked or corrected beyond what its cloth takes,
 * a cap that a fitting left unfair.
 */
function isSaid(complaint: string, findings: readonly Finding[]): boolean {
  return findings.some(({ code, where: { join, piece } }) => {
    if (join !== undefined && / has ease /.test(complaint)) return complaint.startsWith(`${join} `)
    return code === 'cap-not-fair' && / inflections/.test(complaint) && complaint.startsWith(`${piece} `)
  })
}

function demoTime(): number {
  const start = process.cpuUsage()
  makePattern(DEMO, FILE)
  const { user, system } = process.cpuUsage(start)
  return (user + system) / 1000
}

/** Every problem says what, where and how to go on, at a place that the text has. */
function problemFaults(problems: readonly Problem[], text: string): string[] {
  const lines = text.replace(/^\ufeff/, '').split(/\r\n|\r|\n/)
  const printed = printProblems(problems, () => text, PLAIN)
  return [
    ...(problems.length === 0 ? ['no pattern and no problem'] : []),
    ...(isPrintable(printed) ? [] : [`printed with letters that act on a terminal: ${inspect(printed)}`]),
    ...problems.flatMap((problem) => {
      const { code, where } = problem
      const line = lines[(where.line ?? 0) - 1]
      const column = where.column ?? 0
      const isInFile = where.file === FILE && line !== undefined && column >= 1 && column <= line.length + 1
      return [
        ...wordFaults(problem),
        ...(isInFile ? [] : [`${code} is at ${inspect(where)}, which is not in the file`]),
      ]
    }),
  ]
}

function wordFaults({
  code,
  actual,
  expected,
  hint,
}: Pick<Problem, 'code' | 'actual' | 'expected' | 'hint'>): string[] {
  const words = [actual, expected, hint]
  return [
    ...(/^[a-z]+(-[a-z]+)*$/.test(code) ? [] : [`${inspect(code)} is no code`]),
    ...(words.every((text) => text.trim() !== '') && hint.length > 5 ? [] : [`${code} leaves something out`]),
    ...(words.every((text) => isPrintable(text)) ? [] : [`${code} is not printable: ${inspect(words)}`]),
    ...(words.every((text) => text.length <= MOST_WORDS)
      ? []
      : [`${code} says ${Math.max(...words.map((w) => w.length))} letters`]),
    ...(words.some((text) => /\b(?:NaN|Infinity|undefined|\[object|null)\b/.test(text.replace(/"[\s\S]*"/g, '')))
      ? [`${code} speaks like a program: ${words.join(' | ')}`]
      : []),
  ]
}

/** No control characters, no half of a letter, nothing that turns the direction of what follows. */
function isPrintable(text: string): boolean {
  return !/[\p{Cc}\p{Cs}\u202a-\u202e\u2066-\u2069\u2028\u2029]/u.test(text.replaceAll('\n', ''))
}

function same(text: string): string {
  return text
}
