import { describe, expect, test } from 'vitest'
import { type Body, measureOf } from '../../src/body/body.ts'
import { completeBody } from '../../src/body/complete-body.ts'
import type { GivenMeasures } from '../../src/body/given.ts'
import { draftedArmscye } from '../../src/body/together.ts'
import { STANDARD_CHOICES } from '../../src/drafting/choices.ts'
import { draftPattern } from '../../src/drafting/draft-pattern.ts'
import { pieceOf, seamLength, seamOf } from '../../src/pattern/seam.ts'
import { SURVEY_IS_HERE, surveySample } from '../survey/bodies.ts'

const REQUIRED = ['bust girth', 'waist girth', 'back waist length', 'upper arm girth', 'outer arm length'] as const

function complete(given: GivenMeasures): Body {
  const result = completeBody(given)
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  return result.value.body
}

function requiredOf(given: GivenMeasures): GivenMeasures {
  return Object.fromEntries(REQUIRED.map((name) => [name, given[name]]))
}

/** Front and back armscye as drafted, and the cap's height as a share of them; undefined where it does not draft. */
function drafted(body: Body): { readonly armscye: number; readonly share: number } | undefined {
  const draft = draftPattern(body, STANDARD_CHOICES)
  if (!draft.ok) return undefined
  const { pattern } = draft.value
  const length = (piece: string) => seamLength(seamOf(pieceOf(pattern, piece), 'armscye'))
  const armscye = length('bodice front') + length('bodice back')
  const cap = seamOf(pieceOf(pattern, 'sleeve'), 'back cap').parts[0]?.[0]?.p0.y ?? Number.NaN
  return { armscye, share: cap / armscye }
}

describe.skipIf(!SURVEY_IS_HERE)('an estimated scye depth is deep enough for the arm (needs the survey)', () => {
  const sample = SURVEY_IS_HERE ? surveySample(80, 1912) : []

  test('the armscye is drafted as the estimate expects', () => {
    const off = sample
      .flatMap(({ given }) => [complete(given), complete(requiredOf(given))])
      .flatMap((body) => {
        const found = drafted(body)?.armscye
        const { right } = body
        return found === undefined
          ? []
          : [found - draftedArmscye((name) => right[name]?.value, measureOf(right, 'scye depth'))]
      })
    expect(off.length).toBeGreaterThan(150)
    const mean = off.reduce((sum, value) => sum + value, 0) / off.length
    const spread = Math.sqrt(off.reduce((sum, value) => sum + (value - mean) ** 2, 0) / off.length)
    expect(Math.abs(mean)).toBeLessThan(1.5)
    expect(spread).toBeLessThan(6)
  })

  test('every body gets a sleeve where nobody measured the scye depth', () => {
    for (const { id, given } of sample) {
      const { 'scye depth': _, ...rest } = given
      for (const known of [rest, requiredOf(given)]) expect(drafted(complete(known))?.share, id).toBeGreaterThan(0.15)
    }
  })

  test('arms as thick as the survey has none get a sleeve', () => {
    for (const { id, given } of sample.slice(0, 40)) {
      const arm = 1.25 * (given['upper arm girth'] as number)
      const body = complete({ ...requiredOf(given), 'upper arm girth': arm })
      const { right } = body
      // At 0.62 of the back waist length the scye cannot be deeper: there the draft itself says what to do.
      if (measureOf(right, 'scye depth') >= 0.619 * measureOf(right, 'back waist length')) continue
      const share = drafted(body)?.share
      expect(share, id).toBeGreaterThan(0.15)
      // Not deeper than it must be, or than the survey lets expect.
      if (right['scye depth']?.source?.includes('held')) expect(share, id).toBeLessThan(0.26)
    }
  })
})
