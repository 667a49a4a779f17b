import { formatAngle } from '../base/angles.ts'
import { formatLength } from '../base/format-length.ts'
import { parseLength } from '../base/lengths.ts'
import type { Remedy } from '../base/problem.ts'
import { BODY_SIDES, type BodySide } from '../base/side.ts'
import type { LengthUnit } from '../base/units.ts'
import type { Body } from '../body/body.ts'
import { completeBody } from '../body/complete-body.ts'
import type { GivenMeasures } from '../body/given.ts'
import { MEASURE_NAMES, MEASURES, type MeasureName } from '../body/measure.ts'
import type { Choices } from './choices.ts'
import { type ChoicesTree, changeChoices, lengthText, mergedTrees } from './written-choices.ts'

/** A new value of a measure in mm, one or a side each; null leaves it out. */
export type NewMeasure = number | null | Readonly<Record<BodySide, number>>

/** A change of the performer file that might make a problem go away. */
export interface Change {
  readonly say: string
  readonly body?: Readonly<Partial<Record<MeasureName, NewMeasure>>>
  /** As it would stand in the file's `draft` section; null leaves a choice out. */
  readonly draft?: ChoicesTree
}

export interface Asked {
  readonly body: Body
  readonly choices: Choices
}

/**
 * Body and choices as they would be read from the changed file, what is estimated estimated again; undefined where
 * that file would be refused before it is drafted.
 */
export function applyChange({ body, choices }: Asked, change: Change): Asked | undefined {
  const changed = change.draft ? changeChoices(choices, change.draft) : choices
  if (!changed) return undefined
  if (!change.body) return { body, choices: changed }
  const completed = completeBody(withMeasures(givenOf(body), change.body))
  return completed.ok ? { body: completed.value.body, choices: changed } : undefined
}

/** One change and then another. */
export function bothChanges(first: Change, second: Change | undefined): Change | undefined {
  if (!second) return undefined
  const draft = mergedTrees(first.draft ?? {}, second.draft ?? {})
  return {
    say: `${first.say}; and ${second.say}`,
    ...(first.body || second.body ? { body: { ...first.body, ...second.body } } : {}),
    ...(Object.keys(draft).length > 0 ? { draft } : {}),
  }
}

/** The change as other programs apply it: merged deeply into the performer file, lengths in `unit` where it says them exactly. */
export function remedyOf({ say, body, draft }: Change, unit: LengthUnit): Remedy {
  const measures = Object.entries(body ?? {}).map(([name, value]) => [
    name,
    measureText(name as MeasureName, value, unit),
  ])
  return { say, set: { ...(body ? { body: Object.fromEntries(measures) } : {}), ...(draft ? { draft } : {}) } }
}

function measureText(name: MeasureName, value: NewMeasure, unit: LengthUnit): unknown {
  const text = (one: number) => (MEASURES[name].kind === 'angle' ? formatAngle(one) : exactText(one, unit))
  if (value === null || typeof value === 'number') return value === null ? null : text(value)
  return Object.fromEntries(BODY_SIDES.map((side) => [side, text(value[side])]))
}

function exactText(mm: number, unit: LengthUnit): string {
  const text = formatLength(mm, unit)
  const read = parseLength(text, unit)
  return read.ok && Math.abs(read.value - mm) < 1e-4 ? text : lengthText(mm)
}

/** What was measured: the body without its estimates. */
function givenOf({ left, right }: Body): GivenMeasures {
  const given: Record<string, GivenMeasures[MeasureName]> = {}
  for (const name of MEASURE_NAMES) {
    const sides = Object.entries({ left: left[name], right: right[name] }).flatMap(([side, measure]) =>
      measure && !measure.estimated ? [[side, measure.value] as const] : [],
    )
    const [one, other] = sides
    if (one && other && one[1] === other[1]) given[name] = one[1]
    else if (one) given[name] = Object.fromEntries(sides)
  }
  return given
}

function withMeasures(given: GivenMeasures, change: NonNullable<Change['body']>): GivenMeasures {
  const result: Record<string, GivenMeasures[MeasureName]> = { ...given }
  for (const [name, value] of Object.entries(change)) {
    if (value === null) delete result[name]
    else result[name] = value
  }
  return result
}
