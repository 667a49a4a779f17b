import { describe, expect, test } from 'vitest'
import { makePattern } from '../../src/pipeline.ts'
import { writeExplanation } from '../../src/write-explanation.ts'
import { patternJson } from '../../src/writers/pattern-json.ts'
import { curvesOf, flattened } from '../reader-curves.ts'
import { away } from './away.ts'
import { BODIES, EXAMPLES } from './bodies.ts'
import { drawnByStudent, type Xy } from './student.ts'
import { sidesTaken, stepFromWords } from './words.ts'

const FILES = [...EXAMPLES, ...BODIES.filter((_, k) => k % 4 === 2 || k >= 26)]

/** What a level or upright direction is square to. */
const AXES = {
  points: [
    { name: 'upright from', placing: { how: 'square', from: 'A', across: 0, up: 0 } },
    { name: 'upright to', placing: { how: 'square', from: 'A', across: 0, up: 100 } },
    { name: 'level to', placing: { how: 'square', from: 'A', across: 100, up: 0 } },
    { name: 'level from', placing: { how: 'square', from: 'A', across: 0, up: 0 } },
  ],
  draw: [],
  notches: [],
} as const

describe('a student who has only the printed sentences', () => {
  test.each(FILES)('draws every seam and dart of %s', async (_name, text) => {
    const made = makePattern(text, 'words.yaml', { until: 'none', checks: [] })
    if (!made.ok) throw new Error(made.problems.map((p) => p.actual).join('; '))
    const written = await writeExplanation(made.value, {
      formats: [],
      date: '2026-10-02',
      font: () => new Uint8Array(),
    })
    if (!written.ok) throw new Error('not explained')
    const { sections, ruler } = written.value.document
    const pattern = patternJson(made.value.draft.pattern, { performer: 'x', version: 'draft' })
    for (const piece of pattern.pieces) {
      const lines = sections
        .filter((section) => section.piece === piece.id)
        .flatMap((section) => {
          const read = section.steps.map((step) => stepFromWords(step.lines.map((line) => line.text)))
          const [first, ...rest] = read as [(typeof read)[number]]
          const marked = [first, AXES, ...rest]
          const { points } = drawnByStudent(marked.map((step) => ({ ...step, draw: [] })))
          const at = (name: string) => points.get(name) as Xy
          return drawnByStudent(marked.map((step) => sidesTaken(step, at))).seams.get('any') ?? []
        })
      const wanted = [
        // The edge of the paper is the center: ruled in words without letters.
        ...piece.seams
          .filter(({ id }) => !id.startsWith('center '))
          .map(({ id, parts }) => ({ id, paths: parts.map((part) => flattened(curvesOf(part), 0.01)) })),
        ...piece.darts.map(({ id, mouth, point }) => ({ id, paths: [[mouth[0], point, mouth[1]] as Xy[]] })),
      ]
      for (const { id, paths } of wanted) {
        const far = Math.max(...paths.flat().map((p) => Math.min(...lines.map((line) => away(p, line)))))
        expect(far, `${piece.id}, ${id}`).toBeLessThanOrEqual(ruler)
      }
    }
  })
})
