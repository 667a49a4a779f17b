import type { Finding } from '../base/problem.ts'
import { failure, type Result, success } from '../base/result.ts'
import type { Body, Measure } from './body.ts'
import { estimateBody } from './estimate.ts'
import type { GivenMeasures } from './given.ts'
import { impossibleMeasures } from './impossible.ts'
import { MEASURE_NAMES, type MeasureName } from './measure.ts'
import { roundText, sidedName } from './measure-words.ts'
import { plausibleMeasures } from './plausible.ts'

/** A body ready to be drafted, and what looks unlikely about its measures. */
export interface CompletedBody {
  /** Every measure that the draft needs, taken or estimated. */
  readonly body: Body
  /** What looks unlikely, none of it an error. */
  readonly findings: readonly Finding[]
}

/**
 * Fills in what was not measured. The measures given stay as they are, left and right apart; the others are estimated
 * from them, marked, with a standard error, and named in one note. Warnings say what looks
 * unlikely. Fails, with places by field, where a required measure is missing (`missing`), where no body has such a
 * measure (`measure-out-of-range`), and where measures cannot be of one body (the codes of `RELATIONS`), then with remedies.
 */
export function completeBody(given: GivenMeasures): Result<CompletedBody> {
  const problems = impossibleMeasures(given)
  if (problems.length > 0) return failure(...problems)
  const body = estimateBody(given)
  return success({ body, findings: [...plausibleMeasures(given), ...estimatesNote(body)] })
}

function estimatesNote(body: Body): Finding[] {
  const estimates = MEASURE_NAMES.flatMap((name) => estimateText(name, body))
  if (estimates.length === 0) return []
  return [
    {
      code: 'estimated-measures',
      severity: 'note',
      where: { field: 'body' },
      actual: `estimated, each ± its standard error: ${estimates.join(', ')}`,
      expected: 'measured ones fit better',
      hint: 'measure them when the performer next comes in, and write them under body',
    },
  ]
}

/** `wrist girth 155 mm ± 7 mm`, once where the sides agree. */
function estimateText(name: MeasureName, { left, right }: Body): string[] {
  const sides = (['left', 'right'] as const).map((side) => ({
    side,
    measure: side === 'left' ? left[name] : right[name],
  }))
  const texts = sides.flatMap(({ side, measure }) =>
    measure?.estimated ? [{ side, text: valueText(name, measure) }] : [],
  )
  const [one, other] = texts
  if (!one) return []
  if (other && one.text === other.text) return [`${name} ${one.text}`]
  return texts.map(({ side, text }) => `${sidedName(name, side)} ${text}`)
}

function valueText(name: MeasureName, { value, standardError }: Measure): string {
  const error = standardError === undefined ? '' : ` ± ${roundText(name, standardError)}`
  return `${roundText(name, value)}${error}`
}
