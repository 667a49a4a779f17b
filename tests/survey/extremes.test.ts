import { describe, expect, it } from 'vitest'
import type { GivenMeasures } from '../../src/body/given.ts'
import { performerFile, tryFile } from './try-body.ts'

/** Mean and standard deviation of the survey's women and men, mm and radians (REFERENCES.md section 2; slope from the survey). */
const MEANS: Readonly<Record<string, readonly [number, number]>> = {
  'neck base girth': [395, 40],
  'shoulder length': [143, 13],
  'shoulder slope': [0.42, 0.09],
  'bust girth': [1003, 90],
  'waist girth': [901, 110],
  'back waist length': [451, 30],
  'scye depth': [205, 15],
  'back width': [402, 36],
  'upper arm girth': [316, 32],
  'outer arm length': [569, 32],
  'shoulder to elbow': [325, 18],
  'wrist girth': [166, 10],
}

const NAMES = Object.keys(MEANS)

function bodyWith(changes: Readonly<Record<string, number>>): GivenMeasures {
  return Object.fromEntries(
    NAMES.map((name) => {
      const [mean, deviation] = MEANS[name] as readonly [number, number]
      return [name, mean + (changes[name] ?? 0) * deviation]
    }),
  )
}

describe('bodies that nobody has: every pair of measures four standard deviations off', () => {
  const pairs = NAMES.flatMap((one, k) =>
    NAMES.slice(k + 1).flatMap((other) => [-4, 4].flatMap((a) => [-4, 4].map((b) => ({ [one]: a, [other]: b })))),
  )

  it('give a pattern without a fault, or problems that say what to do', () => {
    expect(pairs.length).toBe(264)
    let drafted = 0
    for (const changes of pairs) {
      const outcome = tryFile(performerFile(bodyWith(changes)), { thorough: false })
      const name = JSON.stringify(changes)
      if (outcome.kind === 'drafted') {
        drafted++
        expect(outcome.faults, name).toEqual([])
        continue
      }
      for (const problem of outcome.problems) {
        expect(problem.hint.length, name).toBeGreaterThan(10)
        expect(problem.where.line ?? problem.where.field, name).toBeDefined()
      }
    }
    // Most of them are still bodies: a draft that refused them all would be no draft.
    expect(drafted).toBeGreaterThan(100)
  })
})

describe('slips of the pen that once threw', () => {
  const usual = bodyWith({})
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
  const usual = bodyWith({})
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
    ['a given cap height and width', usual, { draft: { 'cap height': '140 mm', 'biceps width': '365 mm' } }],
  ])('%s', (_, given, extra) => {
    const outcome = tryFile(performerFile(given as GivenMeasures, extra))
    expect(outcome.kind === 'drafted' ? outcome.faults : outcome.problems).toEqual([])
  })
})
