import { existsSync, readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import type { GivenMeasures } from '../../src/body/given.ts'
import { MEASURE_NAMES } from '../../src/body/measure.ts'
import { plausibleMeasures } from '../../src/body/plausible.ts'
import { RELATIONS } from '../../src/body/relations.ts'
import { SURVEY_FILE } from '../fit-regressions.ts'

const IN = 25.4

/** ASTM D5585-95 size 10 (from memory), the rest credible beside it. */
const BODY = {
  'neck base girth': 14.5 * IN,
  'shoulder length': 5.25 * IN,
  'shoulder slope': (23 * Math.PI) / 180,
  'upper chest girth': 35 * IN,
  'bust girth': 36 * IN,
  'waist girth': 28 * IN,
  'back waist length': 16.5 * IN,
  'scye depth': 7.625 * IN,
  'back width': 14.5 * IN,
  'front width': 13.5 * IN,
  'front waist length': 17.5 * IN,
  'neck to bust point': 10.25 * IN,
  'bust point width': 7.5 * IN,
  'front neck to waist': 14.5 * IN,
  'armscye girth': 15.75 * IN,
  'upper arm girth': 11 * IN,
  'upper arm girth flexed': 11.5 * IN,
  'elbow girth': 9.875 * IN,
  'wrist girth': 6.125 * IN,
  'hand girth': 8 * IN,
  'outer arm length': 22.5 * IN,
  'shoulder to elbow': 13 * IN,
} as const satisfies GivenMeasures

function codes(changes: GivenMeasures) {
  return plausibleMeasures({ ...BODY, ...changes }).map(({ code, where }) => `${code} ${where.field}`)
}

test('a credible body is left alone', () => {
  expect(codes({})).toEqual([])
})

const WAIST = /midway between the lowest rib and the top of the hip bone/

describe('a waist taken 6 in too low is found, with its landmark (CASES 23)', () => {
  test.each<[string, GivenMeasures]>([
    ['down the back', { 'back waist length': 22.5 * IN }],
    ['over the bust', { 'front waist length': 23.5 * IN }],
    ['down the center front', { 'front neck to waist': 20.5 * IN }],
    [
      'front and back alike',
      {
        'back waist length': 22.5 * IN,
        'front waist length': 23.5 * IN,
        'front neck to waist': 20.5 * IN,
      },
    ],
  ])('%s', (_, changes) => {
    const findings = plausibleMeasures({ ...BODY, ...changes })
    expect(findings.some(({ hint }) => WAIST.test(hint))).toBe(true)
    expect(findings.some(({ hint }) => /too low|below the waist|one waist/.test(hint))).toBe(true)
    expect(findings.every(({ severity }) => severity === 'warning')).toBe(true)
  })

  test('by the other required measures alone', () => {
    const {
      'scye depth': _,
      'front waist length': __,
      'neck to bust point': ___,
      'front neck to waist': ____,
      ...rest
    } = BODY
    const alone = plausibleMeasures({ ...rest, 'back waist length': 22.5 * IN })
    expect(alone).toMatchObject([{ code: 'measure-unlike-others', where: { field: 'body.back waist length' } }])
    expect(alone[0]?.actual).toBe('back waist length 571.5 mm')
    expect(alone[0]?.hint).toMatch(WAIST)
  })
})

test('says what the measures come to, and what to measure', () => {
  const findings = plausibleMeasures({ 'bust girth': 960, 'back width': 480, 'front width': 418 })
  expect(findings.find(({ code }) => code === 'widths-and-bust')).toEqual({
    code: 'widths-and-bust',
    severity: 'warning',
    where: { field: 'body.back width' },
    actual: 'back width 480 mm, front width 418 mm, bust girth 960 mm: 31 mm for the armscye between back and front',
    expected: 'at least 70 mm for the armscye',
    hint: expect.stringMatching(
      /^measure across the back from armscye to armscye, at the middle of the armscye, arms down/,
    ),
  })
})

/** A figure well inside, below and above what is likely, for every relation: each end has its own words. */
test.each(RELATIONS.map((relation) => [relation.code, relation] as const))(
  '%s: words for either end',
  (_, relation) => {
    const [least, most] = relation.likely
    expect(least).toBeLessThan(most)
    const [none, all] = relation.possible ?? [-Infinity, Infinity]
    expect(none).toBeLessThanOrEqual(least)
    expect(all).toBeGreaterThanOrEqual(most)
    for (const hint of [relation.below, relation.above]) {
      expect(hint).toMatch(/measure /)
      expect(hint).toMatch(/armscye|neck|nape|waist|bust|elbow|wrist|hand|arm/)
    }
    for (const figure of [least, most].filter(Number.isFinite)) expect(relation.says(figure)).toMatch(/\d/)
    expect(relation.names.every((name) => MEASURE_NAMES.includes(name))).toBe(true)
  },
)

test.each<[string, GivenMeasures]>([
  ['widths-and-bust body.back width', { 'back width': 400, 'front width': 390 }],
  ['scye-and-waist body.scye depth', { 'scye depth': 270 }],
  ['bust-point-and-back body.neck to bust point', { 'neck to bust point': 370 }],
  ['bust-points-and-bust body.bust point width', { 'bust point width': 120 }],
  ['elbow-and-arm body.shoulder to elbow', { 'shoulder to elbow': 420 }],
  ['waist-and-bust body.waist girth', { 'waist girth': 470 }],
  ['front-and-back-width body.front width', { 'front width': 265 }],
  ['front-and-back-length body.front waist length', { 'front waist length': 360 }],
  ['center-front-and-front body.front neck to waist', { 'front neck to waist': 460 }],
  ['wrist-and-hand body.wrist girth', { 'hand girth': 150 }],
  ['wrist-and-elbow body.wrist girth', { 'elbow girth': 150 }],
  ['elbow-and-upper-arm body.elbow girth', { 'elbow girth': 340 }],
  ['flexed-and-relaxed body.upper arm girth flexed', { 'upper arm girth flexed': 270 }],
  ['armscye-and-upper-arm body.armscye girth', { 'armscye girth': 280 }],
  ['armscye-and-scye body.armscye girth', { 'armscye girth': 530, 'upper arm girth': 290 }],
  ['upper-chest-and-bust body.upper chest girth', { 'upper chest girth': 700 }],
  ['center-front-and-back body.front neck to waist', { 'front neck to waist': 295 }],
  ['shoulder-and-back-width body.neck base girth', { 'shoulder length': 60 }],
  ['measure-unlike-others body.neck base girth', { 'neck base girth': 470 }],
])('%s', (expected, changes) => {
  expect(codes(changes)).toContain(expected)
})

test('one wrong measure among the required does not make the others look wrong', () => {
  // 33 in for an arm: shoulder, wrist and back waist length are all far from what it lets expect.
  expect(codes({ 'outer arm length': 33 * IN })).toEqual(['elbow-and-arm body.shoulder to elbow'])
  const { 'shoulder to elbow': _, ...rest } = BODY
  const alone = plausibleMeasures({ ...rest, 'outer arm length': 33 * IN })
  expect(alone.map(({ code, where }) => [code, where.field])).toEqual([
    ['measure-unlike-others', 'body.outer arm length'],
  ])
})

test('a body large all over is told to be unusual, once a measure, and not refused', () => {
  const large = plausibleMeasures({
    'bust girth': 1500,
    'waist girth': 1500,
    'back waist length': 500,
    'upper arm girth': 470,
    'outer arm length': 600,
  })
  expect(large.every(({ severity, hint }) => severity === 'warning' && hint.includes('leave it'))).toBe(true)
  const fields = large.map(({ where }) => where.field)
  expect(fields).toContain('body.bust girth')
  expect(new Set(fields).size).toBe(fields.length)
})

test('sides far apart are looked at again; sides a little apart are not', () => {
  expect(codes({ 'upper arm girth': { left: 280, right: 290 } })).toEqual([])
  expect(codes({ 'outer arm length': { left: 470, right: 575 } })).toContain('sides-far-apart body.outer arm length')
  expect(codes({ 'shoulder slope': { left: 0.3, right: 0.5 } })).toContain('sides-far-apart body.shoulder slope')
})

describe.skipIf(!existsSync(SURVEY_FILE))('on real bodies', () => {
  test('fewer than one in fifty is looked at again', () => {
    const [header = '', ...lines] = readFileSync(SURVEY_FILE, 'utf8').trim().split('\n')
    const names = header.split(',')
    const warned = lines.filter((line) => {
      const cells = line.split(',')
      const at = (name: string) => Number(cells[names.indexOf(name)])
      return (
        plausibleMeasures({
          'bust girth': at('chestcircumference'),
          'waist girth': at('waistcircumference'),
          'back waist length': at('waistbacklength'),
          'upper arm girth': 0.95 * at('bicepscircumferenceflexed'),
          'upper arm girth flexed': at('bicepscircumferenceflexed'),
          'outer arm length': at('sleeveoutseam'),
          'neck base girth': at('neckcircumferencebase'),
          'shoulder length': at('shoulderlength'),
          'scye depth': at('cervicaleheight') - at('axillaheight') + 40,
          'back width': at('interscyei'),
          'wrist girth': at('wristcircumference'),
          'shoulder to elbow': at('acromionradialelength'),
        }).length > 0
      )
    })
    expect(warned.length / lines.length).toBeLessThan(1 / 50)
  })
})
