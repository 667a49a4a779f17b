import { describe, expect, it } from 'vitest'
import { runChecks } from '../../src/checks/checks.ts'
import { trueSeams } from '../../src/fitting/true-seams.ts'
import { makePattern } from '../../src/pipeline.ts'
import { SURVEY_IS_HERE, surveySample } from './bodies.ts'
import { performerFile } from './try-body.ts'

const SEED = 1966

/** What the draft itself tells of a body, and a check says again of the pattern as it stands. */
const SAID_BY_THE_DRAFT: Readonly<Record<string, string>> = { 'cap-flat': 'cap-low' }

describe.skipIf(!SURVEY_IS_HERE)(
  `checks of 200 surveyed bodies, seed ${SEED} (skipped where ../shared/data is not)`,
  () => {
    it('find nothing that the draft does not say itself, and truing moves nothing', () => {
      const sample = SURVEY_IS_HERE ? surveySample(200, SEED) : []
      const made = sample.flatMap(({ id, given }) => {
        // The checks are run below, once.
        const result = makePattern(performerFile(given), id, { checks: [] })
        return result.ok ? [{ id, ...result.value }] : []
      })
      expect(made.length).toBeGreaterThan(180)
      const found = made.flatMap(({ id, draft, pattern }) => {
        const said = new Set(draft.findings.map(({ code }) => code))
        const ofChecks = runChecks({ pattern, measures: draft.measures, units: 'mm' }).filter(
          (f) => f.severity !== 'note',
        )
        const own = ofChecks.filter(({ code }) => !said.has(code) && !said.has(SAID_BY_THE_DRAFT[code] ?? ''))
        return own.map(({ code, actual }) => `${id}: ${code}, ${actual}`)
      })
      expect(found).toEqual([])
      // Nothing in a draft needs truing.
      expect(made.filter(({ pattern }) => trueSeams(pattern).pattern !== pattern).map(({ id }) => id)).toEqual([])
    })
  },
)
