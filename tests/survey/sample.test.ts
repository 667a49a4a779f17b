import { describe, expect, it } from 'vitest'
import { SURVEY_IS_HERE, surveySample } from './bodies.ts'
import { performerFile, tryFile } from './try-body.ts'

const SEED = 2012

describe.skipIf(!SURVEY_IS_HERE)(`200 bodies of the survey, seed ${SEED} (skipped where ../shared/data is not)`, () => {
  const sample = SURVEY_IS_HERE ? surveySample(200, SEED) : []

  it('draft without a fault, or give remedies that draft when they are applied', () => {
    let drafted = 0
    for (const { id, given } of sample) {
      const outcome = tryFile(performerFile(given))
      if (outcome.kind === 'drafted') {
        drafted++
        expect(outcome.faults, id).toEqual([])
        continue
      }
      for (const problem of outcome.problems) {
        expect(problem.remedies?.length ?? 0, `${id}: ${problem.code}`).toBeGreaterThan(0)
        for (const remedy of problem.remedies ?? []) {
          const again = tryFile(performerFile(given, remedy.set))
          expect(again.kind === 'drafted' ? again.faults : again.problems, `${id}: ${remedy.say}`).toEqual([])
        }
      }
    }
    expect(drafted).toBeGreaterThanOrEqual(0.97 * sample.length - 4)
  })
})
