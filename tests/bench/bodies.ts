import type { Body } from '../../src/body/body.ts'
import { completeBody } from '../../src/body/complete-body.ts'
import { draftPattern } from '../../src/drafting/draft-pattern.ts'
import { SIZES } from '../drafting/bodies.ts'
import { SURVEY_IS_HERE, surveySample } from '../survey/bodies.ts'

/** More than are drafted before memory is looked at for the first time. */
const SURVEYED = 1000

/** Standard sizes and, where the survey is, some of its bodies. */
export function benchBodies(): Body[] {
  return [...SIZES, ...(SURVEY_IS_HERE ? surveyed(SURVEYED) : [])]
}

function surveyed(count: number): Body[] {
  return surveySample(count, 2012).flatMap(({ given }) => {
    const body = completeBody(given)
    // The few that come back with remedies are another task.
    return body.ok && draftPattern(body.value.body).ok ? [body.value.body] : []
  })
}
