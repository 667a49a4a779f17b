import { existsSync, readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { RATIO_ERRORS, REGRESSIONS, SURVEY } from '../../src/body/regressions.ts'
import { fitSurvey, regressionsSource, SURVEY_FILE } from '../fit-regressions.ts'

/** REFERENCES.md section 2, computed from the full public file (6,068 bodies): mean and deviation, women and men, cm. */
const FULL_SURVEY = {
  'bust girth': [94.7, 8.3, 105.9, 8.7],
  'waist girth': [86.1, 10.0, 94.1, 11.2],
  'back waist length': [42.5, 2.6, 47.8, 2.8],
  'shoulder length': [13.5, 1.0, 15.0, 1.1],
  'back width': [37.3, 3.0, 43.1, 3.5],
  'upper arm girth flexed': [30.6, 3.1, 35.8, 3.5],
  'wrist girth': [15.5, 0.8, 17.6, 0.9],
  'outer arm length': [54.4, 2.9, 59.3, 3.1],
} as const

describe('the survey in the code', () => {
  test.each(Object.entries(FULL_SURVEY))(
    '%s has the published means',
    (name, [women, womenDeviation, men, menDeviation]) => {
      const survey = SURVEY[name as keyof typeof FULL_SURVEY]
      // The part of the survey at hand is two thirds of it: means agree to a twentieth of a deviation and rounding.
      expect(Math.abs((survey?.women.mean ?? 0) / 10 - women)).toBeLessThan(0.05 * womenDeviation + 0.05)
      expect(Math.abs((survey?.men.mean ?? 0) / 10 - men)).toBeLessThan(0.05 * menDeviation + 0.05)
      expect(Math.abs((survey?.women.deviation ?? 0) / 10 - womenDeviation)).toBeLessThan(0.2)
      expect(Math.abs((survey?.men.deviation ?? 0) / 10 - menDeviation)).toBeLessThan(0.2)
    },
  )

  test.skipIf(!existsSync(SURVEY_FILE))('is what the fit gives again, to the letter', () => {
    const written = readFileSync(new URL('../../src/body/regressions.ts', import.meta.url), 'utf8')
    expect(regressionsSource(fitSurvey())).toBe(written)
  })

  test.skipIf(!existsSync(SURVEY_FILE))(
    'is a least-squares fit: residuals are uncorrelated with every measure it uses',
    () => {
      const bodies = surveyBodies()
      const women = bodies.filter(({ woman }) => woman).length
      for (const { target, intercept, slopes, standardError } of REGRESSIONS) {
        const names = Object.keys(slopes) as (keyof (typeof bodies)[number]['measures'])[]
        const off = bodies.map(({ measures, woman }) => {
          const estimate = names.reduce((sum, name) => sum + (slopes[name] ?? 0) * (measures[name] ?? 0), intercept)
          return {
            error: (measures[target] ?? 0) - estimate,
            weight: bodies.length / 2 / (woman ? women : bodies.length - women),
          }
        })
        const mean = off.reduce((sum, { error, weight }) => sum + error * weight, 0) / bodies.length
        expect(Math.abs(mean)).toBeLessThan(0.02 * standardError)
        for (const name of names) {
          const spread = Math.sqrt(
            bodies.reduce((sum, { measures }) => sum + (measures[name] ?? 0) ** 2, 0) / bodies.length,
          )
          const product = bodies.reduce((sum, { measures }, i) => {
            return sum + (off[i]?.error ?? 0) * (off[i]?.weight ?? 0) * (measures[name] ?? 0)
          }, 0)
          expect(Math.abs(product / bodies.length / spread)).toBeLessThan(0.02 * standardError)
        }
        const squares = off.reduce((sum, { error, weight }) => sum + error ** 2 * weight, 0)
        expect(Math.sqrt(squares / bodies.length) / standardError).toBeCloseTo(1, 2)
      }
    },
  )
})

test.skipIf(!existsSync(SURVEY_FILE))(
  'the errors of the ratios are the spreads of like columns, women and men alike',
  () => {
    // Here by correlation, deviation · √(1 − r²), and for women and men as two samples of one weight.
    const rows = surveyRows()
    const half = (sex: string) => rows.filter((row) => row.sex === sex)
    const mean = (of: (row: Row) => number) =>
      ['F', 'M'].reduce((sum, sex) => sum + half(sex).reduce((s, row) => s + of(row), 0) / half(sex).length / 2, 0)
    const share = (y: (row: Row) => number, x: (row: Row) => number) => {
      const [my, mx] = [mean(y), mean(x)]
      const [yy, xx] = [mean((r) => (y(r) - my) ** 2), mean((r) => (x(r) - mx) ** 2)]
      const xy = mean((r) => (x(r) - mx) * (y(r) - my))
      return Math.sqrt(yy * (1 - (xy * xy) / (xx * yy))) / my
    }
    const at = (name: string) => (row: Row) => Number(row[name])
    const expected = {
      'front width': share(at('chestbreadth'), at('interscyei')),
      'elbow girth': share(at('forearmcircumferenceflexed'), at('bicepscircumferenceflexed')),
      'neck to bust point': share(
        (row) => at('cervicaleheight')(row) - at('chestheight')(row),
        at('chestcircumference'),
      ),
      'bust point width': share(at('chestbreadth'), at('chestcircumference')),
    }
    expect(Object.keys(RATIO_ERRORS).sort()).toEqual(Object.keys(expected).sort())
    for (const [name, value] of Object.entries(expected)) {
      expect(Math.abs((RATIO_ERRORS[name as keyof typeof expected] ?? 0) / value - 1), name).toBeLessThan(0.003)
    }
  },
)

type Row = Readonly<Record<string, string>>

function surveyRows(): Row[] {
  const [header = '', ...lines] = readFileSync(SURVEY_FILE, 'utf8').trim().split('\n')
  const names = header.split(',')
  return lines.map((line) => {
    const cells = line.split(',')
    return Object.fromEntries(names.map((name, k) => [name, cells[k] as string]))
  })
}

/** The survey's bodies by our measures, read here once more and not through the fit. */
function surveyBodies() {
  const [header = '', ...lines] = readFileSync(SURVEY_FILE, 'utf8').trim().split('\n')
  const names = header.split(',')
  return lines.map((line) => {
    const cells = line.split(',')
    const at = (name: string) => Number(cells[names.indexOf(name)])
    const slope = Math.atan((at('cervicaleheight') - at('acromialheight')) / at('shoulderlength'))
    return {
      woman: cells[names.indexOf('sex')] === 'F',
      measures: {
        'neck base girth': at('neckcircumferencebase'),
        'shoulder length': at('shoulderlength'),
        'shoulder slope': Math.min(Math.max(slope, (12 * Math.PI) / 180), (32 * Math.PI) / 180),
        'scye depth': at('cervicaleheight') - at('axillaheight') + 40,
        'back width': at('interscyei'),
        'wrist girth': at('wristcircumference'),
        'hand girth': at('handcircumference') + 25.4,
        'shoulder to elbow': at('acromionradialelength'),
        'bust girth': at('chestcircumference'),
        'back waist length': at('waistbacklength'),
        'upper arm girth': 0.95 * at('bicepscircumferenceflexed'),
        'outer arm length': at('sleeveoutseam'),
      } as Partial<Record<keyof typeof SURVEY, number>>,
    }
  })
}
