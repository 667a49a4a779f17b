import { existsSync, readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import type { GivenMeasures } from '../../src/body/given.ts'
import { plausibleMeasures } from '../../src/body/plausible.ts'
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

test('a waist taken 6 in too low is found, with its landmark (CASES 23)', () => {
  const findings = plausibleMeasures({ ...BODY, 'back waist length': 22.5 * IN })
  const finding = findings.find(
    ({ where }) => where.field === 'body.scye depth' || where.field === 'body.back waist length',
  )
  expect(finding?.severity).toBe('warning')
  expect(finding?.hint).toMatch(/from the nape bone down the spine to the waist/)
  // Without a scye depth to compare it with, the other required measures find it.
  const { 'scye depth': _, 'front waist length': __, 'neck to bust point': ___, ...rest } = BODY
  const alone = plausibleMeasures({ ...rest, 'back waist length': 22.5 * IN })
  expect(alone).toMatchObject([{ code: 'measure-unlike-others', where: { field: 'body.back waist length' } }])
  expect(alone[0]?.actual).toBe('back waist length 22 1/2 in (572 mm)')
})

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
