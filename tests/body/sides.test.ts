import { describe, expect, test } from 'vitest'
import { stringify } from 'yaml'
import { MEASURE_NAMES, MEASURES, type MeasureName } from '../../src/body/measure.ts'
import type { ReportMeasure } from '../../src/checks/report.ts'
import { type MadePattern, makePattern } from '../../src/pipeline.ts'
import { patternJson } from '../../src/writers/pattern-json.ts'
import { complaints, type RawPattern } from '../independent-reader.ts'

/** A credible body, mm and degrees, the same left and right. */
const BODY: Readonly<Record<string, number | string>> = {
  'neck base girth': 372,
  'shoulder length': 134,
  'shoulder slope': '23 deg',
  'bust girth': 950,
  'waist girth': 750,
  'back waist length': 416,
  'scye depth': 202,
  'back width': 372,
  'front width': 350,
  'armscye girth': 410,
  'upper arm girth': 295,
  'elbow girth': 262,
  'wrist girth': 160,
  'hand girth': 210,
  'outer arm length': 578,
  'shoulder to elbow': 338,
}

type Value = number | string | { readonly left: number | string | null; readonly right: number | string | null }

function made(changes: Readonly<Record<string, Value>> = {}): MadePattern {
  const text = stringify({ performer: 'Lamplighter', units: 'mm', body: { ...BODY, ...changes } })
  const result = makePattern(text, 'lamplighter.yaml')
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  return result.value
}

function rows({ report }: MadePattern, name: MeasureName): readonly ReportMeasure[] {
  return report.measures.filter((row) => row.name === name)
}

function clean({ pattern, report }: MadePattern): void {
  const raw = patternJson(pattern, { performer: 'Lamplighter', version: 'draft' }) as unknown as RawPattern
  expect(complaints(raw)).toEqual([])
  expect(report.findings.filter(({ severity }) => severity === 'error')).toEqual([])
  for (const { name, asked, drafted } of report.measures) expect(Math.abs(asked - drafted), name).toBeLessThan(0.1)
}

/** Readings apart, left and right, in the unit of the report. */
const APART: Readonly<Partial<Record<MeasureName, readonly [left: number, right: number]>>> = {
  'shoulder length': [130, 138],
  'shoulder slope': [20, 25],
  'upper arm girth': [290, 312],
  'upper arm girth flexed': [330, 350],
  'elbow girth': [258, 270],
  'wrist girth': [156, 164],
  'outer arm length': [570, 586],
  'shoulder to elbow': [332, 344],
}

/** Sides that are not drafted: a check, and the hand, which only has to pass. */
const NOT_DRAFTED: readonly MeasureName[] = ['armscye girth', 'hand girth']

test('every measure with sides is tried here', () => {
  const sided = MEASURE_NAMES.filter((name) => MEASURES[name].sided)
  expect([...Object.keys(APART), ...NOT_DRAFTED].sort()).toEqual([...sided].sort())
})

describe('left and right from a performer file', () => {
  test.each(Object.entries(APART))('%s', (name, [left, right]) => {
    const unit = name === 'shoulder slope' ? ' deg' : ''
    const pattern = made({ [name]: { left: `${left}${unit}`, right: `${right}${unit}` } })
    clean(pattern)
    // The flexed reading is drafted as the upper arm.
    const drafted = name === 'upper arm girth flexed' ? 'upper arm girth' : (name as MeasureName)
    const found = rows(pattern, drafted)
    expect(found.map(({ side }) => side)).toEqual(['left', 'right'])
    for (const [k, value] of [left, right].entries()) {
      expect(found[k]?.body).toBeCloseTo(value, 6)
      expect(found[k]?.drafted).toBeCloseTo(value + (found[k]?.ease ?? 0), 1)
      expect(found[k]?.estimated).toBe(false)
    }
    // Whatever differs is cut apart, and says whose it is (CASES 13).
    const sleeves = pattern.pattern.pieces.filter(({ id }) => id.startsWith('sleeve'))
    expect(sleeves.map(({ id, side }) => [id, side])).toEqual([
      ['sleeve left', 'left'],
      ['sleeve right', 'right'],
    ])
  })

  test('exchanged, they give the mirror image', () => {
    const lengths = (swapped: boolean) => {
      const at = ([left, right]: readonly [number, number]) =>
        swapped ? { left: right, right: left } : { left, right }
      const { 'shoulder slope': _, ...lengthsApart } = APART
      const sides = Object.fromEntries(Object.entries(lengthsApart).map(([name, both]) => [name, at(both)]))
      return made(sides)
    }
    const one = lengths(false)
    const other = lengths(true)
    for (const row of one.report.measures) {
      const side = row.side === 'both' ? 'both' : row.side === 'left' ? 'right' : 'left'
      const mirrored = other.report.measures.find((m) => m.name === row.name && m.side === side)
      expect(mirrored?.drafted, row.name).toBeCloseTo(row.drafted, 6)
    }
  })

  test('a hand that passes one wrist and not the other asks for an opening on that side only', () => {
    const { report } = made({ 'hand girth': { left: 175, right: 215 } })
    const openings = report.findings.filter(({ code }) => code === 'hand-does-not-pass')
    expect(openings.map(({ actual }) => actual)).toEqual([expect.stringMatching(/^right: hand girth 215 mm/)])
  })

  test('a side left blank is drafted as the other and said to be an estimate', () => {
    const { report } = made({ 'wrist girth': { left: 158, right: null } })
    const note = report.findings.find(({ code }) => code === 'estimated-measures')
    expect(note?.actual).toMatch(/right wrist girth 158 mm ± 3 mm/)
    expect(note?.actual).not.toMatch(/left wrist girth/)
  })
})

describe('relaxed and flexed from a performer file: the one that needs more is drafted, and named (CASES 5)', () => {
  // Relaxed 295 mm with 50 mm of ease is 345; a flexed arm decides from 320 mm on, with its 25.
  test.each([
    [310, 345, 'relaxed', 295],
    [320, 345, 'relaxed', 295],
    [321, 346, 'flexed', 321],
    [345, 370, 'flexed', 345],
  ])('flexed %s mm is drafted %s mm wide, from the %s arm', (flexed, wide, from, body) => {
    const pattern = made({ 'upper arm girth flexed': flexed })
    clean(pattern)
    const [row, ...others] = rows(pattern, 'upper arm girth')
    expect(others).toEqual([])
    expect(row).toMatchObject({ side: 'both', from, body, asked: wide, estimated: false })
    expect(row?.drafted).toBeCloseTo(wide, 3)
    // Whatever was not drafted still goes in.
    expect(wide).toBeGreaterThan(Math.max(295, flexed))
  })

  test('each side by itself: a fighter whose right arm decides flexed, the left relaxed', () => {
    const pattern = made({
      'upper arm girth': { left: 290, right: 300 },
      'upper arm girth flexed': { left: 310, right: 345 },
    })
    clean(pattern)
    expect(rows(pattern, 'upper arm girth')).toMatchObject([
      { side: 'left', from: 'relaxed', body: 290, asked: 340 },
      { side: 'right', from: 'flexed', body: 345, asked: 370 },
    ])
  })

  test('flexed on one side only', () => {
    const pattern = made({ 'upper arm girth flexed': { left: 340, right: null } })
    expect(rows(pattern, 'upper arm girth').map(({ side, from }) => [side, from])).toEqual([
      ['left', 'flexed'],
      ['right', undefined],
    ])
  })

  test('without a flexed reading nothing is said to have been chosen', () => {
    expect(rows(made(), 'upper arm girth')).toMatchObject([{ side: 'both', body: 295, asked: 345 }])
    expect(rows(made(), 'upper arm girth')[0]).not.toHaveProperty('from')
  })
})
