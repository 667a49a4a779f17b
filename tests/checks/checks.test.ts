import { describe, expect, test } from 'vitest'
import { CHECKS, runChecks } from '../../src/checks/checks.ts'
import { draftPattern } from '../../src/drafting/draft-pattern.ts'
import type { Pattern } from '../../src/pattern/pattern.ts'
import type { Piece } from '../../src/pattern/piece.ts'
import { SIZES } from '../drafting/bodies.ts'
import { codesOn, contextOf, DRAFT, SPLIT, withJoin, withPiece } from './fixture.ts'

const { pattern } = DRAFT

describe('a draft', () => {
  test.each(SIZES.map((body, i) => [6 + 2 * i, body] as const))('of size %i has no finding', (_size, body) => {
    const draft = draftPattern(body)
    if (!draft.ok) throw new Error('no draft')
    const { measures } = draft.value
    expect(runChecks({ pattern: draft.value.pattern, measures, units: 'in' })).toEqual([])
  })

  test('has none with left and right apart', () => {
    expect(codesOn(SPLIT)).toEqual([])
  })
})

const notch = (id: string, change: (n: Piece['notches'][number]) => Piece['notches'][number]) =>
  withPiece(pattern, 'sleeve', (piece) => ({
    ...piece,
    notches: piece.notches.map((n) => (n.id === id ? change(n) : n)),
  }))

describe('every check', () => {
  test('leaves the other joins alone', () => {
    expect(codesOn(notchMoved())).toEqual(['notches-do-not-meet'])
  })

  test('find the same where no mend is asked for, without one', () => {
    const context = contextOf(
      withJoin(notchMoved(), 'back cap', (join) => ({ ...join, ease: { min: 30, target: 30, max: 40 } })),
    )
    const found = runChecks(context)
    expect(found.some(({ mend }) => mend !== undefined)).toBe(true)
    expect(runChecks(context, CHECKS, { mends: false })).toEqual(found.map(({ mend: _, ...finding }) => finding))
  })

  test('puts errors first', () => {
    const spoilt = withJoin(notchMoved(), 'back cap', (join) => ({ ...join, ease: { min: 30, target: 30, max: 40 } }))
    const severities = runChecks(contextOf(spoilt)).map((finding) => finding.severity)
    expect(severities[0]).toBe('error')
    expect(severities).toEqual([...severities].sort((a, b) => (a === 'error' ? 0 : 1) - (b === 'error' ? 0 : 1)))
  })

  test('speaks inches where the file does', () => {
    const found = runChecks({ ...contextOf(notchMoved()), units: 'in' })
    expect(found[0]?.expected).toContain('1/16 in (1.6 mm)')
  })

  function notchMoved(): Pattern {
    return notch('front notch', (n) => ({ ...n, along: n.along + 5 }))
  }
})

describe('wearing ease', () => {
  const rows = (name: string, drafted: number) =>
    DRAFT.measures.map((row) => (row.name === name ? { ...row, drafted } : row))

  test('a girth below the body is an error, half the ease gone a warning', () => {
    const bust = DRAFT.measures.find((row) => row.name === 'bust girth')
    if (!bust) throw new Error('no bust')
    const found = (drafted: number) =>
      runChecks({ pattern, measures: rows('bust girth', drafted), units: 'mm' }).map((f) => [f.code, f.severity])
    expect(found(bust.body - 1)).toEqual([['smaller-than-body', 'error']])
    expect(found(bust.body + bust.ease * 0.49)).toEqual([['little-ease', 'warning']])
    // With half of it there is room, and still it is not what was asked for.
    expect(found(bust.body + bust.ease * 0.51)).toEqual([['not-as-asked', 'note']])
  })
})
