import { describe, expect, it } from 'vitest'
import { completeBody } from '../../src/body/complete-body.ts'
import type { GivenMeasures } from '../../src/body/given.ts'
import type { MeasureName } from '../../src/body/measure.ts'
import { draftedBody, faults } from './drafted-body.ts'
import { D5585_11, d5585_11, SURVEY_BINS, surveyBin } from './published-bodies.ts'

const BINS = SURVEY_BINS['bust girth'].map((bust, k) => ({ bust, k }))

/** ANSUR II women by chest girth, computed from the full public file. */
describe.each(BINS)('the mean woman of the survey, chest $bust cm', ({ k }) => {
  it('drafts without a fault, with a cap of 1/4 to 1/3 of the armscye', () => {
    const draft = draftedBody(surveyBin(k))
    expect(faults(draft)).toEqual([])
    // From memory: 1/3 fitted; read: 1/4 a shirt (1916).
    expect(draft.capHeight / draft.armscye).toBeGreaterThan(1 / 4)
    expect(draft.capHeight / draft.armscye).toBeLessThan(1 / 3)
  })

  it('is estimated from its required measures within one standard error', () => {
    // A mean body lies well inside the spread of bodies about the line. Shoulder to elbow is left out: the bins have
    // no arm length, and without it an elbow says nothing.
    const mm = (name: keyof typeof SURVEY_BINS) => (SURVEY_BINS[name][k] as number) * 10
    const given: GivenMeasures = {
      'bust girth': mm('bust girth'),
      'waist girth': mm('waist girth'),
      'back waist length': mm('back waist length'),
      'upper arm girth': 0.95 * mm('upper arm girth flexed'),
      'outer arm length': 544,
    }
    const completed = completeBody(given)
    expect(completed.ok).toBe(true)
    for (const name of ['neck base girth', 'shoulder length', 'back width', 'wrist girth', 'scye depth'] as const) {
      const estimate = completed.ok ? completed.value.body.right[name as MeasureName] : undefined
      expect(estimate?.estimated, name).toBe(true)
      expect(Math.abs((estimate?.value ?? 0) - mm(name)), name).toBeLessThan(estimate?.standardError ?? 0)
    }
  })
})

/** ASTM D5585-11e1, table 1 (read): its girths as bodies, lengths and arm from the survey's lines for women. */
describe.each(D5585_11.size.map((size, k) => ({ size, k })))('the girths of D5585-11 size $size', ({ k }) => {
  it('draft without a fault, and nothing about them looks unlikely', () => {
    const draft = draftedBody(d5585_11(k))
    expect(faults(draft)).toEqual([])
    const odd = draft.report.findings.filter(
      ({ severity, where }) => severity === 'warning' && where.field?.startsWith('body.'),
    )
    expect(odd).toEqual([])
  })

  it('have a neck as wide as the survey lets expect from the bust, within two standard errors', () => {
    const { 'neck base girth': neck, 'upper chest girth': _, ...rest } = d5585_11(k)
    const estimate = draftedBody(rest).report.measures.find(({ name }) => name === 'neck base girth')
    expect(estimate?.estimated).toBe(true)
    const off = (estimate?.body ?? 0) - Number.parseFloat(neck as string) * 25.4
    expect(Math.abs(off)).toBeLessThan(2 * (estimate?.standardError ?? 0))
  })
})
