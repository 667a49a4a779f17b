import { describe, expect, test } from 'vitest'
import type { ExplanationJson } from '../../src/explain/explanation-json.ts'
import { makePattern } from '../../src/pipeline.ts'
import { writeExplanation } from '../../src/write-explanation.ts'
import { patternJson } from '../../src/writers/pattern-json.ts'
import { curvesOf, flattened } from '../reader-curves.ts'
import { away } from './away.ts'
import { BODIES, EXAMPLES } from './bodies.ts'
import { type Drawing, drawnByStudent, type Xy } from './student.ts'

const font = () => {
  throw new Error('no page is written')
}

/**
 * How far from the draft the student's lines may lie, in steps of the ruler: a point is half a step off both ways at
 * most, a curve a little more between its marks; a notch is besides walked along the drawn curve.
 */
const LINES = 1
const NOTCHES = 1.5

interface Deviation {
  readonly what: string
  readonly notch?: true
  readonly mm: number
}

/** Draws a performer file by its explanation, and says how far every line, dart and notch lies from the draft. */
async function deviations(text: string): Promise<{ deviations: Deviation[]; ruler: number }> {
  const made = makePattern(text, 'student.yaml', { until: 'none', checks: [] })
  if (!made.ok) throw new Error(made.problems.map((p) => `${p.code}: ${p.actual}`).join('; '))
  const written = await writeExplanation(made.value, { formats: [], date: '2026-10-02', font })
  if (!written.ok) throw new Error(written.problems.map((p) => p.actual).join('; '))
  // Through text, so that only what is in the document is used.
  const document = JSON.parse(JSON.stringify(written.value.document)) as ExplanationJson
  const pattern = patternJson(made.value.draft.pattern, { performer: 'x', version: 'draft' })
  const found: Deviation[] = []
  for (const piece of pattern.pieces) {
    const drawings = document.sections
      .filter((section) => section.piece === piece.id)
      .map((section) => drawnByStudent(section.steps))
    expect(drawings.length, piece.id).toBe(piece.side === 'whole' ? 2 : 1)
    const gather = <T>(key: (drawing: Drawing) => ReadonlyMap<string, T>) =>
      new Map(drawings.flatMap((d) => [...key(d)]))
    const seams = gather((d) => d.seams)
    const darts = gather((d) => d.darts)
    const notches = gather((d) => d.notches)
    for (const { id, parts } of piece.seams) {
      const lines = seams.get(id) ?? []
      expect(lines.length, `${piece.id}, ${id}`).toBeGreaterThanOrEqual(parts.length)
      const drafted = parts.map((part) => flattened(curvesOf(part), 0.01))
      found.push({ what: `${piece.id}, ${id}`, mm: Math.max(farthest(drafted, lines), farthest(lines, drafted)) })
    }
    for (const { id, mouth, point } of piece.darts) {
      const legs: Xy[][] = [
        [mouth[0], point],
        [point, mouth[1]],
      ]
      const lines = darts.get(id) ?? []
      expect(lines.length, `${piece.id}, ${id}`).toBe(2)
      found.push({ what: `${piece.id}, ${id}`, mm: Math.max(farthest(legs, lines), farthest(lines, legs)) })
    }
    for (const { id, points } of piece.notches) {
      const drawn = notches.get(id) ?? []
      expect(drawn.length, `${piece.id}, ${id}`).toBe(points.length)
      points.forEach(([x, y], k) => {
        const [a, b] = drawn[k] as Xy
        found.push({ what: `${piece.id}, ${id}`, notch: true, mm: Math.hypot(a - x, b - y) })
      })
    }
    expect(new Set(seams.keys()), piece.id).toEqual(new Set(piece.seams.map(({ id }) => id)))
    expect(new Set(darts.keys()), piece.id).toEqual(new Set(piece.darts.map(({ id }) => id)))
  }
  return { deviations: found, ruler: document.ruler }
}

/** The largest distance from the points of some lines to the others. */
function farthest(from: readonly (readonly Xy[])[], to: readonly (readonly Xy[])[]): number {
  const points = from.flat()
  return Math.max(...points.map((p) => Math.min(...to.map((line) => away(p, line)))))
}

describe('a student who has only the steps', () => {
  test.each([...EXAMPLES, ...BODIES])('draws %s as drafted', async (_name, text) => {
    const { deviations: all, ruler } = await deviations(text)
    expect(all.length).toBeGreaterThan(25)
    const far = all.filter(({ mm, notch }) => !(mm <= (notch ? NOTCHES : LINES) * ruler))
    expect(far).toEqual([])
  })
})
