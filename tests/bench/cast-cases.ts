import { readFileSync } from 'node:fs'
import { getHeapStatistics, setFlagsFromString } from 'node:v8'
import { runInNewContext } from 'node:vm'
import { SVG, withWindow } from '@svgdotjs/svg.js'
import { zlibSync } from 'fflate'
import PDFDocument from 'pdfkit'
import type { Result } from '../../src/base/result.ts'
import type { Body } from '../../src/body/body.ts'
import { CHECKS, runChecks } from '../../src/checks/checks.ts'
import { draftPattern } from '../../src/drafting/draft-pattern.ts'
import { slipText } from '../../src/fitting/slip-text.ts'
import { type MadePattern, makePattern } from '../../src/pipeline.ts'
import { layOut } from '../../src/sheets/lay-out.ts'
import { layOutTiles } from '../../src/sheets/lay-out-tiles.ts'
import { parsePaper } from '../../src/sheets/papers.ts'
import type { Scene } from '../../src/sheets/scene.ts'
import { patternJson, patternJsonText } from '../../src/writers/pattern-json.ts'
import { drawPdf } from '../../src/writers/pdf.ts'
import { drawSvg } from '../../src/writers/svg.ts'
import { svgWindow } from '../../src/writers/svg-window.ts'
import type { BenchCase } from './bench-case.ts'
import { CAST, CORES, castFiles, DEMO } from './cast-files.ts'
import { plainSvg } from './plain-svg.ts'

const WORDS = { title: 'Lamplighter', description: 'Pattern pieces at true scale' }
const LETTER = made(parsePaper('letter'))
const font = new Uint8Array(
  readFileSync(new URL('../../node_modules/dejavu-fonts-ttf/ttf/DejaVuSans.ttf', import.meta.url)),
)

const FILES = castFiles(CAST)
const SCENE = sceneOf(made(makePattern(DEMO, 'lamplighter.yaml')))

export const castCases: readonly BenchCase[] = [
  {
    name: 'a file of a cast: JSON alone',
    count: 1,
    oneByOne: CAST,
    ours: inTurn((file) => texts(made(makePattern(file, 'cast.yaml')))),
    // Sixty in 2 s.
    wanted: { milliseconds: (2000 * CORES) / CAST },
    agree: allMade,
  },
  {
    name: 'a file of a cast: SVG, PDF on letter, JSON',
    count: 1,
    oneByOne: CAST,
    ours: inTurn((file) => {
      const pattern = made(makePattern(file, 'cast.yaml'))
      const scene = sceneOf(pattern)
      const options = { font, title: 'cast', date: '2026-10-09', id: 'cast' }
      const pdf = drawPdf(PDFDocument, layOutTiles(scene, LETTER), options, zlibSync).read() as Uint8Array
      return texts(pattern) + ours(scene).length + pdf.length
    }),
    // Sixty in 8 s.
    wanted: { milliseconds: (8000 * CORES) / CAST },
    agree: allMade,
  },
  {
    name: "the demo's SVG",
    count: 1,
    ours: () => ours(SCENE).length,
    // The same drawing into elements that are nothing but strings.
    theirs: { library: 'strings', work: () => drawSvg(plainSvg(), SCENE, WORDS).length },
    wanted: { ratio: 3 },
    agree: () => ({
      apart: ours(SCENE) === drawSvg(plainSvg(), SCENE, WORDS) ? 0 : 1,
      within: 0,
      what: 'documents that differ',
    }),
  },
]

/**
 * Bodies one after another, drafted and checked, and what stays of them in memory: with the correction that would mend what
 * is found, tried on the pattern, and without.
 */
export function surveyCase(bodies: readonly Body[], mends: boolean): BenchCase {
  const all = (from: number, to: number) =>
    bodies.slice(from, to).reduce((sum, body) => sum + draftedAndChecked(body, mends), 0)
  // Long enough for what is compiled and kept once; the rest must leave nothing.
  const first = Math.min(500, Math.ceil(bodies.length / 2))
  return {
    name: `a body drafted and checked${mends ? ', mends tried' : ''}, ${bodies.length} in a row`,
    count: bodies.length,
    oneByOne: 1,
    ours: () => all(0, bodies.length),
    // The survey's 4,046 in 20 s on one core.
    wanted: { milliseconds: 20_000 / 4046 },
    agree: () => {
      all(0, first)
      const before = heapInUse()
      all(first, bodies.length)
      return {
        apart: Math.max(0, heapInUse() - before),
        within: 4,
        what: `MB more in memory after the other ${bodies.length - first}`,
      }
    },
  }
}

function draftedAndChecked(body: Body, mends: boolean): number {
  const draft = draftPattern(body)
  if (!draft.ok) return draft.problems.length
  const { pattern, measures } = draft.value
  const context = { pattern, measures, body, cloth: 'muslin', units: 'mm' } as const
  return 1 + runChecks(context, CHECKS, { mends }).length
}

/** MB of the heap that are still in use when everything else is cleared away. */
function heapInUse(): number {
  setFlagsFromString('--expose-gc')
  const clear = runInNewContext('gc') as () => void
  clear()
  clear()
  return getHeapStatistics().used_heap_size / 2 ** 20
}

function sceneOf({ pattern, version, performer }: MadePattern): Scene {
  return layOut(pattern, { performer: performer.performer, version, units: 'in' })
}

function ours(scene: Scene): string {
  let text = ''
  withWindow(svgWindow() as never, () => {
    text = drawSvg(SVG(), scene, WORDS)
  })
  return text
}

/** pattern.json, report.json and the slip: how many letters. */
function texts({ pattern, version, performer, report }: MadePattern): number {
  const json = patternJsonText(patternJson(pattern, { performer: performer.performer, version }))
  const slip = slipText(report.slip, { performer: performer.performer, units: performer.units })
  return json.length + slip.length + JSON.stringify(report, null, 2).length
}

/** A few of the files are made, or the times would be those of refusals. */
function allMade() {
  const some = FILES.filter((_, k) => k % 20 === 0)
  const refused = some.filter((file) => !makePattern(file, 'cast.yaml').ok).length
  const same = FILES.length - new Set(FILES).size
  return { apart: refused + same, within: 0, what: 'files refused or alike' }
}

function inTurn(figure: (file: string) => number): () => number {
  let next = 0
  return () => figure(FILES[next++ % FILES.length] as string)
}

function made<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  return result.value
}
