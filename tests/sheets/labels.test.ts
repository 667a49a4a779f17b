import { describe, expect, test } from 'vitest'
import { completeBody } from '../../src/body/complete-body.ts'
import { draftPattern } from '../../src/drafting/draft-pattern.ts'
import type { Pattern } from '../../src/pattern/pattern.ts'
import { layOut } from '../../src/sheets/lay-out.ts'
import type { PieceDrawing, SheetInfo } from '../../src/sheets/scene.ts'
import { SURVEY_IS_HERE, surveyBodies } from '../survey/bodies.ts'
import { drafted, INFO } from './fixture.ts'
import { faults } from './label-faults.ts'

function wordsOf(drawing: PieceDrawing | undefined): string[] {
  return drawing?.marks.flatMap((m) => (m.type === 'text' ? [m.text] : [])) ?? []
}

/** Twenty bodies evenly over the survey, by bust girth. */
function twenty(): { id: string; pattern: Pattern }[] {
  const all = surveyBodies().toSorted((a, b) => (a.given['bust girth'] as number) - (b.given['bust girth'] as number))
  const patterns: { id: string; pattern: Pattern }[] = []
  for (let k = 0; patterns.length < 20; k += 1) {
    // The smallest and the largest; where a measure contradicts another, the next larger body.
    const { id, given } = all[Math.min(all.length - 1, Math.round((k / 20) * (all.length - 1)))] as (typeof all)[number]
    const body = completeBody(given)
    const draft = body.ok ? draftPattern(body.value.body) : undefined
    if (draft?.ok) patterns.push({ id, pattern: draft.value.pattern })
    if (k > 25) break
  }
  return patterns
}

const LONG: SheetInfo = {
  performer: 'Understudy of the Second Lamplighter of the Upper Town',
  production: 'The Tin Orchard, or the Winter of the Seven Ferries',
  version: 'sixth fitting',
  fittings: ['first fitting', 'second fitting', 'third fitting', 'with the corset', 'fifth fitting', 'sixth fitting'],
  date: '2026-10-09',
  units: 'in',
}

describe.skipIf(!SURVEY_IS_HERE)('on 20 bodies of the survey, smallest to largest', () => {
  const bodies = SURVEY_IS_HERE ? twenty() : []

  test('there are 20, from the smallest', () => {
    expect(bodies).toHaveLength(20)
  })

  test.each(bodies)('$id: all text inside the stitching line, on no mark and no other text', ({ pattern }) => {
    for (const info of [INFO, LONG]) {
      for (const { drawing } of layOut(pattern, info).pieces) {
        expect(faults(drawing, pattern)).toEqual([])
        const piece = pattern.pieces.find((p) => p.id === drawing.id)
        const words = wordsOf(drawing)
        // Nothing is left out to make it fit.
        for (const { id } of [...(piece?.notches ?? []), ...(piece?.darts ?? [])]) expect(words).toContain(id)
        expect(words.join('\n')).toMatch(/grain/)
        for (const mark of drawing.marks) if (mark.type === 'text') expect(mark.size).toBeGreaterThanOrEqual(2.8 - 1e-9)
      }
    }
  })
})

test('the checks above find text that is not where it should be', () => {
  const pattern = drafted()
  const drawing = layOut(pattern, INFO).pieces[0]?.drawing
  if (!drawing) throw new Error('no drawing')
  const moved = (x: number): PieceDrawing => ({
    ...drawing,
    marks: drawing.marks.map((m) => (m.id === 'title piece' && m.type === 'text' ? { ...m, at: { x, y: m.at.y } } : m)),
  })
  expect(faults(moved(-500), pattern)).toEqual(['bodice back: BODICE BACK is not inside'])
  expect(faults(moved(0), pattern)).toContain('bodice back: BODICE BACK is on a mark')
  const twice = { ...drawing, marks: [...drawing.marks, ...drawing.marks.filter((m) => m.id === 'title piece')] }
  expect(faults(twice, pattern)).toEqual(['bodice back: BODICE BACK on BODICE BACK'])
})
