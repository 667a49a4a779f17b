import { stringify } from 'yaml'
import type { Problem, Remedy } from '../../src/base/problem.ts'
import { completeBody } from '../../src/body/complete-body.ts'
import type { Draft } from '../../src/drafting/draft.ts'
import { draftPattern } from '../../src/drafting/draft-pattern.ts'
import { correctionReaders } from '../../src/fitting/corrections.ts'
import { readPerformer } from '../../src/performer-file.ts'

type Tree = Readonly<Record<string, unknown>>

/** A performer whose measures make the demo's sleeve, in mm; every test changes what it is about. */
const LAMPLIGHTER: Tree = {
  performer: 'Lamplighter',
  units: 'mm',
  body: {
    'neck base girth': 375,
    'shoulder length': 137,
    'shoulder slope': '22 deg',
    'bust girth': 959,
    'waist girth': 759,
    'back waist length': 416,
    'scye depth': 197,
    'back width': 371,
    'front width': 349,
    'front waist length': 454,
    'neck to bust point': 267,
    'bust point width': 197,
    'upper arm girth': 298,
    'elbow girth': 264,
    'wrist girth': 162,
    'hand girth': 210,
    'outer arm length': 578,
    'shoulder to elbow': 345,
  },
}

export type Outcome =
  | { readonly draft: Draft; readonly problems?: never }
  | { readonly draft?: never; readonly problems: readonly Problem[] }

/** As `set` of a remedy is applied to a performer file: merged deeply, null leaves out. */
function merged(into: Tree, set: Tree): Tree {
  const result: Record<string, unknown> = { ...into }
  for (const [key, value] of Object.entries(set)) {
    const before = result[key]
    result[key] = isTree(value) && isTree(before) ? merged(before, value) : value
  }
  return result
}

/** What becomes of the demo's performer with a change, through the text of a performer file. */
export function draftWritten(...changes: readonly Tree[]): Outcome {
  const text = stringify(changes.reduce(merged, LAMPLIGHTER))
  const performer = readPerformer(text, 'lamplighter.yaml', correctionReaders)
  if (!performer.ok) return { problems: performer.problems }
  const body = completeBody(performer.value.body)
  if (!body.ok) return { problems: body.problems }
  const draft = draftPattern(body.value.body, performer.value.choices, performer.value.allowances.standard)
  return draft.ok ? { draft: draft.value } : { problems: draft.problems }
}

export function draftOf(...changes: readonly Tree[]): Draft {
  const { draft, problems } = draftWritten(...changes)
  if (!draft) throw new Error(JSON.stringify(problems))
  return draft
}

export function codesOf(...changes: readonly Tree[]): string[] {
  return (draftWritten(...changes).problems ?? []).map(({ code }) => code)
}

/**
 * What is wrong with the remedies of the problems that these changes make: every problem has some, and with any one merged
 * into the file its own problem is gone and no new one has come. Also wrong: no problem at all.
 */
export function remedyFaults(...changes: readonly Tree[]): string[] {
  const problems = draftWritten(...changes).problems ?? []
  const keys = problems.map(keyOf)
  if (problems.length === 0) return ['drafts']
  return problems.flatMap((problem) => {
    if (!problem.remedies?.length) return [`${problem.code} has no remedy: ${problem.actual}`]
    const others = keys.filter((key) => key !== keyOf(problem))
    return problem.remedies.flatMap(({ say, set }) => {
      const left = (draftWritten(...changes, set).problems ?? []).map(keyOf).filter((key) => !others.includes(key))
      return left.length > 0 ? [`${problem.code}: ${say} leaves ${left.join(', ')}`] : []
    })
  })
}

export function sayings(problem: Problem | undefined): string {
  return (problem?.remedies ?? []).map(({ say }: Remedy) => say).join('\n')
}

function keyOf({ code, where, actual }: Problem): string {
  return `${code} ${where.field} ${/^(left|right)/.exec(actual)?.[0] ?? ''}`
}

function isTree(value: unknown): value is Tree {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}
