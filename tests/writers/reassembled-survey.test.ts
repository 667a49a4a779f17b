import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, test } from 'vitest'
import type { Body } from '../../src/body/body.ts'
import { completeBody } from '../../src/body/complete-body.ts'
import { draftPattern } from '../../src/drafting/draft-pattern.ts'
import { layOut } from '../../src/sheets/lay-out.ts'
import type { Scene } from '../../src/sheets/scene.ts'
import { drafted, INFO } from '../sheets/fixture.ts'
import { SURVEY_IS_HERE, surveyBodies } from '../survey/bodies.ts'
import { differences, paper } from './reassemble.ts'

const folder = mkdtempSync(join(tmpdir(), 'scye-stitch-'))
afterAll(() => rmSync(folder, { recursive: true }))

function sceneOf(body: Body): Scene {
  return layOut(drafted(body), { ...INFO, units: 'mm' })
}

describe.skipIf(!SURVEY_IS_HERE)(
  '20 bodies of the survey, smallest to largest (skipped where ../shared/data is not)',
  () => {
    const bodies = SURVEY_IS_HERE ? acrossTheSurvey(20) : []
    test.each(bodies.map(({ id, body }, k) => [id, ['letter', 'a4', 'a3'][k % 3] as string, body] as const))(
      '%s on %s',
      async (_id, name, body) => {
        const { ink, lost, added } = await differences(sceneOf(body), paper(name), folder)
        expect(ink).toBeGreaterThan(20_000)
        expect({ lost, added }).toEqual({ lost: 0, added: 0 })
      },
    )
  },
)

/** Bodies at even steps of bust girth, the smallest and the largest that can be drafted among them. */
function acrossTheSurvey(count: number): { id: string; body: Body }[] {
  const sorted = surveyBodies().sort((a, b) => (a.given['bust girth'] as number) - (b.given['bust girth'] as number))
  const last = sorted.length - 1
  return Array.from({ length: count }, (_, k) => {
    // The next one up that can be drafted, for the largest the next one down.
    const way = k === count - 1 ? -1 : 1
    for (let n = Math.round((k * last) / (count - 1)); n >= 0 && n <= last; n += way) {
      const { id, given } = sorted[n] as (typeof sorted)[number]
      const body = completeBody(given)
      if (body.ok && draftPattern(body.value.body).ok) return { id, body: body.value.body }
    }
    throw new Error('nobody of the survey can be drafted')
  })
}
