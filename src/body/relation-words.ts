import type { BodySide } from '../base/side.ts'
import { givenValue } from './estimate.ts'
import type { GivenMeasures } from './given.ts'
import { measureText, sidedName } from './measure-words.ts'
import type { Relation } from './relations.ts'

/** The figure of a relation on one side of the body; undefined where one of its measures was not taken. */
export function relationFigure(relation: Relation, given: GivenMeasures, side: BodySide): number | undefined {
  const values = relation.names.map((name) => givenValue(given, name, side))
  return values.every((value) => value !== undefined) ? relation.figure(...values) : undefined
}

/** What is wrong between the measures of a relation, and what to measure; lengths in mm. */
export function relationWords(
  relation: Relation,
  given: GivenMeasures,
  side: BodySide,
): { readonly actual: string; readonly expected: string; readonly hint: string } {
  const figure = relationFigure(relation, given, side) as number
  const measures = relation.names.map((name) => {
    const one = typeof given[name] === 'object' ? side : undefined
    return `${sidedName(name, one)} ${measureText(name, givenValue(given, name, side) as number)}`
  })
  return {
    actual: `${measures.join(', ')}: ${relation.says(figure)}`,
    expected: relation.expected,
    hint: figure < relation.likely[0] ? relation.below : relation.above,
  }
}
