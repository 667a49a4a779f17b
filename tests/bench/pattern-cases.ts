import { readFileSync } from 'node:fs'
import { areaD, EndType, inflatePathsD, JoinType, type PathD } from 'clipper2-ts'
import type { Result } from '../../src/base/result.ts'
import type { Body } from '../../src/body/body.ts'
import { completeBody } from '../../src/body/complete-body.ts'
import { runChecks } from '../../src/checks/checks.ts'
import { presentMeasures } from '../../src/checks/present-measures.ts'
import type { Draft } from '../../src/drafting/draft.ts'
import { draftPattern } from '../../src/drafting/draft-pattern.ts'
import { correctionReaders } from '../../src/fitting/corrections.ts'
import { type Replayed, replay } from '../../src/fitting/replay.ts'
import { area } from '../../src/geometry/area.ts'
import { flatten } from '../../src/geometry/flatten.ts'
import { pathLength } from '../../src/geometry/path-length.ts'
import { cutLine } from '../../src/pattern/cut-line.ts'
import { outlineOf } from '../../src/pattern/outline.ts'
import type { Pattern } from '../../src/pattern/pattern.ts'
import type { Piece } from '../../src/pattern/piece.ts'
import type { Performer } from '../../src/performer.ts'
import { readPerformer } from '../../src/performer-file.ts'
import { patternJson } from '../../src/writers/pattern-json.ts'
import { complaints, type RawPattern } from '../independent-reader.ts'
import type { Agreement, BenchCase } from './bench-case.ts'
import { largest, summed } from './shapes.ts'

const ALLOWANCE = 25.4

const DEMO_FILE = readFileSync(new URL('../../examples/lamplighter.yaml', import.meta.url), 'utf8')
const DEMO = read(DEMO_FILE)
const DRAFT = drafted(DEMO)
const REPLAYED = replayed(DRAFT, DEMO)
const MEASURES = presentMeasures(DRAFT.measures, REPLAYED.pattern)

const TEN_CORRECTIONS = read(withTenCorrections(DEMO_FILE))
const TEN_DRAFT = drafted(TEN_CORRECTIONS)

/** The pieces as a library can offset them: the same allowance all round, flattened beforehand. */
const PIECES = REPLAYED.pattern.pieces.map((piece) => {
  const even: Piece = { ...piece, seams: piece.seams.map((seam) => ({ ...seam, allowance: ALLOWANCE })) }
  return { even, polygon: flatten(outlineOf(piece)).slice(1) }
})

export const patternCases: readonly BenchCase[] = [
  {
    name: "a whole piece's cutting line",
    count: PIECES.length,
    ours: summed(PIECES, ({ even }) => cutLine({ ...even }).length),
    // The same distance and mitres all round; it folds no hem and no dart.
    theirs: { library: 'clipper2-ts', work: summed(PIECES, ({ polygon }) => inflated(polygon).length) },
    wanted: { milliseconds: 1 },
    agree: () => ({
      apart: largest(
        PIECES.map(({ even, polygon }) => {
          const ours = cutLine(even)
          return Math.abs(area(ours) - areaD(inflated(polygon))) / (ALLOWANCE * pathLength(ours))
        }),
      ),
      within: 0.02,
      what: 'of the allowance: corners differ',
    }),
  },
  {
    name: "replay of the demo's fitting",
    count: 1,
    ours: () => sewn(replayed(DRAFT, DEMO).pattern),
    agree: () => readAgain(replayed(DRAFT, DEMO).pattern),
  },
  {
    name: 'replay of ten corrections',
    count: 1,
    ours: () => sewn(replayed(TEN_DRAFT, TEN_CORRECTIONS).pattern),
    wanted: { milliseconds: 5 },
    agree: () => ({
      apart: Math.abs(10 - replayed(TEN_DRAFT, TEN_CORRECTIONS).slip.length),
      within: 0,
      what: 'corrections not done',
    }),
  },
  {
    name: 'draft and replay of ten corrections',
    count: 1,
    ours: () => sewn(replayed(drafted(TEN_CORRECTIONS), TEN_CORRECTIONS).pattern),
    wanted: { milliseconds: 10 },
    agree: () => {
      const { slip, pattern } = replayed(drafted(TEN_CORRECTIONS), TEN_CORRECTIONS)
      // Ten corrections that were not made for each other leave seams unequal; lines and darts must be sound.
      const errors = checked(pattern).filter(({ severity, code }) => severity === 'error' && code !== 'join-too-long')
      const apart = errors.length + Math.abs(10 - slip.length)
      return { apart, within: 0, what: 'errors found or corrections not done' }
    },
  },
  {
    name: "all checks of the demo's pattern",
    count: 1,
    // Of one never seen before: cutting lines and lengths are kept with their pieces and seams.
    ours: () => checked(fresh(REPLAYED.pattern)).length,
    wanted: { milliseconds: 3 },
    agree: () => ({
      apart: checked(REPLAYED.pattern).filter(({ severity }) => severity === 'error').length,
      within: 0,
      what: 'errors found',
    }),
  },
]

/** The draft of one body after another. */
export function draftCase(bodies: readonly Body[]): BenchCase {
  return {
    name: `draft of a body, median of ${bodies.length}`,
    count: 1,
    oneByOne: bodies.length,
    ours: inTurn(bodies, (body) => sewn(made(draftPattern(body)).pattern)),
    wanted: { milliseconds: 1 },
    agree: () => ({
      apart: largest(bodies.slice(0, 12).map((body) => largest(made(draftPattern(body)).measures.map(missed)))),
      within: 0.1,
      what: 'mm of a measure from what was asked',
    }),
  }
}

function inflated(polygon: PathD): PathD {
  return inflatePathsD([polygon], ALLOWANCE, JoinType.Miter, EndType.Polygon, 2, 5)[0] as PathD
}

function read(text: string): Performer {
  return made(readPerformer(text, 'lamplighter.yaml', correctionReaders))
}

/** The demo's file with a second fitting of eight corrections after its own of two. */
function withTenCorrections(text: string): string {
  const more = [
    ['let out', 'side seam', '1/4'],
    ['take in', 'shoulder', '1/8'],
    ['let out', 'neckline', '1/8'],
    ['take in', 'waist', '1/8'],
    ['let out', 'underarm seam', '1/8'],
    ['let out', 'armscye', '1/8'],
    ['take in', 'side seam', '1/8'],
  ].map(([order, seam, by]) => `      - { do: ${order}, seam: ${seam}, by: ${by} }\n`)
  const reach = '      - { do: underarm reach, by: 1/8 }\n'
  return `${text}  - label: second fitting\n    corrections:\n${more.join('')}${reach}`
}

function drafted({ body, choices, allowances }: Performer): Draft {
  return made(draftPattern(made(completeBody(body)).body, choices, allowances.standard))
}

function replayed({ pattern }: Draft, { fittings, allowances }: Performer): Replayed {
  return made(replay(pattern, fittings, allowances))
}

function fresh(pattern: Pattern): Pattern {
  const pieces = pattern.pieces.map((piece) => ({ ...piece, seams: piece.seams.map((seam) => ({ ...seam })) }))
  return { ...pattern, pieces }
}

function checked(pattern: Pattern) {
  return runChecks({ pattern, measures: MEASURES, units: 'mm' })
}

/** What a reader that shares no code with the project has against the pattern: joins, darts, notches, outlines. */
function readAgain(pattern: Pattern): Agreement {
  const json = patternJson(pattern, { performer: 'Lamplighter', version: 'bench' }) as unknown as RawPattern
  return { apart: complaints(json).length, within: 0, what: 'complaints of the independent reader' }
}

/** A figure of every seam. */
function sewn({ pieces }: Pattern): number {
  return pieces.reduce((sum, { seams }) => sum + seams.length, 0)
}

function missed({ asked, drafted }: Draft['measures'][number]): number {
  return Math.abs(asked - drafted)
}

/** The work of one call is the next item, round and round. */
function inTurn<T>(items: readonly T[], figure: (item: T) => number): () => number {
  let next = 0
  return () => figure(items[next++ % items.length] as T)
}

function made<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  return result.value
}
