import { describe, expect, it } from 'vitest'
import { SURVEY_IS_HERE, surveySample } from './bodies.ts'
import { surveyBody } from './survey-body.ts'

const SEED = 2012

describe.skipIf(!SURVEY_IS_HERE)(`200 bodies of the survey, seed ${SEED} (skipped where ../shared/data is not)`, () => {
  const sample = SURVEY_IS_HERE ? surveySample(200, SEED) : []

  it('draft without a fault, or give remedies that draft when they are applied', () => {
    const reports = sample.map(({ id, given }) => surveyBody(id, given))
    expect(reports.filter(({ exception, faults }) => exception !== undefined || faults.length > 0)).toEqual([])
    expect(reports.filter(({ problems }) => problems.some(({ remedies }) => remedies === 0))).toEqual([])
    // Of the whole survey at least 97 % draft directly; a sample of 200 that has less than 95 % is a change.
    expect(reports.filter(({ drafted }) => drafted).length).toBeGreaterThanOrEqual(190)
  })
})
