// Drafts a sleeve for each girth that index.html sends and answers with its SVG: in a worker, so that the slider never
// waits. Try it from the project's folder, then open the address that is printed:
// npx esbuild examples/slider/draft-worker.ts --bundle --splitting --format=esm --outdir=examples/slider --servedir=examples/slider
import { completeBody, draftPattern, layOut, writeSvg } from '../../src/index.ts'

/** Lengths are mm; the upper arm is the slider's. */
const MEASURES = { 'bust girth': 900, 'waist girth': 720, 'back waist length': 405, 'outer arm length': 590 }

const INFO = { performer: 'Lamplighter', version: 'draft', units: 'mm', pieces: ['sleeve'] } as const

/** What goes back to the page: the sleeve, or what stands in its way. */
interface Answer {
  readonly girth: number
  readonly svg?: string
  readonly problem?: string
}

async function answer(girth: number): Promise<Answer> {
  const body = completeBody({ ...MEASURES, 'upper arm girth': girth })
  const draft = body.ok ? draftPattern(body.value.body) : body
  if (!draft.ok) return { girth, problem: draft.problems.map(({ actual, hint }) => `${actual}: ${hint}`).join('; ') }
  const description = `A fitted sleeve for an upper arm of ${girth} mm`
  return { girth, svg: await writeSvg(layOut(draft.value.pattern, INFO), { title: 'Sleeve', description }) }
}

/** A worker's own scope; the project is compiled without a browser's types. */
interface Scope {
  onmessage: (event: { readonly data: number }) => void
  readonly postMessage: (answer: Answer) => void
}

const scope = globalThis as unknown as Scope
scope.onmessage = async ({ data }) => scope.postMessage(await answer(data))
