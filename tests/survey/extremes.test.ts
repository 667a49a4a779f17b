import { describe, expect, it } from 'vitest'
import type { GivenMeasures } from '../../src/body/given.ts'
import { averageBody, extremePairs } from './extreme-bodies.ts'
import { surveyBody } from './survey-body.ts'
import { performerFile, tryFile } from './try-body.ts'

/** Every so many pairs; `npm run survey` drafts them all. No multiple of the four ways in which a pair can be off. */
const STRIDE = 17

describe('bodies that nobody has: pairs of measures four standard deviations off', () => {
  const pairs = extremePairs()

  it('are every pair of the measures, both ways', () => {
    expect(pairs.length).toBe(2 * ((22 * 21) / 2) * 4)
    expect(new Set(pairs.map(({ id }) => id)).size).toBe(pairs.length)
  })

  it('give a pattern without a fault, or problems that say what to do with remedies that draft', () => {
    const reports = pairs
      .filter((_, k) => k % STRIDE === 0)
      .map(({ id, given }) => surveyBody(id, given, { fair: false }))
    expect(reports.length).toBeGreaterThan(100)
    expect(reports.filter(({ exception, faults }) => exception !== undefined || faults.length > 0)).toEqual([])
    // Most of them are still bodies: a draft that refused them all would be no draft.
    expect(reports.filter(({ drafted }) => drafted).length).toBeGreaterThan(reports.length / 2)
  })
})

describe('slips of the pen that once threw', () => {
  const usual = averageBody('women')
  it.each([
    ['a bust in another unit', { ...usual, 'bust girth': 2321 }, {}],
    ['a bust point too low', { ...usual, 'neck to bust point': 390, 'front waist length': 440 }, {}],
    ['an intake of 500 mm', usual, { draft: { 'elbow intake': '500 mm' } }],
    ['a shoulder dart of 200 mm', usual, { draft: { 'shoulder dart': '200 mm' } }],
    ['an elbow narrower than nothing', usual, { draft: { ease: { elbow: '-300 mm' } } }],
    ['a waist narrower than nothing', usual, { draft: { ease: { waist: '-900 mm' } } }],
    ['a wrist narrower than nothing', usual, { draft: { ease: { wrist: '-200 mm' } } }],
  ])('%s is a problem', (_, given, extra) => {
    const outcome = tryFile(performerFile(given as GivenMeasures, extra))
    expect(outcome.kind).toBe('problems')
  })
})

describe('unusual choices and bodies measure what was asked', () => {
  const usual = averageBody('women')
  it.each([
    ['waist larger than bust', { ...usual, 'waist girth': 1060, 'front waist length': 470 }, {}],
    ['two front darts', { ...usual, 'waist girth': 620, 'front waist length': 480 }, {}],
    ['flat', usual, { draft: { bust: 'flat' } }],
    ['a bust eased in', { ...usual, 'front waist length': 500 }, { draft: { 'bust dart': 'eased' } }],
    ['one elbow dart', usual, { draft: { 'elbow darts': 'one' } }],
    ['no elbow dart', usual, { draft: { 'elbow darts': 'none' } }],
    ['a back shoulder dart', usual, { draft: { 'shoulder dart': '12 mm' } }],
    ['open in front', usual, { draft: { opening: 'center front' } }],
    ['not open', usual, { draft: { opening: 'none' } }],
    ['a given cap height', usual, { draft: { 'cap height': '135 mm' } }],
    ['a given cap height and ease', usual, { draft: { 'cap height': '135 mm', ease: { cap: '20 mm' } } }],
    ['a given cap height and width', usual, { draft: { 'cap height': '140 mm', 'biceps width': '355 mm' } }],
  ])('%s', (_, given, extra) => {
    const outcome = tryFile(performerFile(given as GivenMeasures, extra))
    expect(outcome.kind === 'drafted' ? outcome.faults : outcome.problems).toEqual([])
  })
})
