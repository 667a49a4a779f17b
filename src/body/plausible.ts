import type { Finding } from '../base/problem.ts'
import { BODY_SIDES, type BodySide } from '../base/side.ts'
import { givenValue, predict } from './estimate.ts'
import type { GivenMeasures } from './given.ts'
import { MEASURE_NAMES, MEASURES, type MeasureName } from './measure.ts'
import { measureAgain, measureText, roundText, sidedName } from './measure-words.ts'
import { REGRESSIONS, type Regression, SURVEY, SURVEY_SOURCE } from './regressions.ts'
import { relationFigure, relationWords } from './relation-words.ts'
import { RELATIONS, type Relation } from './relations.ts'

/** Standard deviations or errors beyond which a measure is looked at again: about one body in two thousand. */
const UNUSUAL = 3.5
/** Left and right that differ by more than this share, or angle in radians, are looked at again. Our own. */
const SIDES_APART = 0.15
const SLOPES_APART = (8 * Math.PI) / 180

/**
 * What looks unlikely about a body, as warnings that never refuse: measures that do not go together, a measure far from
 * what the others let expect or from everybody in the survey, sides far apart. Only what was measured is looked at.
 */
export function plausibleMeasures(given: GivenMeasures): Finding[] {
  const related = RELATIONS.flatMap((relation) => relationFinding(relation, given))
  const named = new Set(related.flatMap(({ names }) => names))
  const expected = unexpected(given).filter(({ name }) => !named.has(name))
  for (const { name } of expected) named.add(name)
  const unusual = MEASURE_NAMES.filter((name) => !named.has(name)).flatMap((name) => unusualFinding(name, given))
  const sides = MEASURE_NAMES.flatMap((name) => sidesFinding(name, given))
  return [...related, ...expected, ...unusual, ...sides].map(({ finding }) => finding)
}

interface Noticed {
  readonly name: MeasureName
  readonly names: readonly MeasureName[]
  readonly finding: Finding
}

function notice(code: string, names: readonly MeasureName[], actual: string, expected: string, hint: string): Noticed {
  const name = names[0] as MeasureName
  return {
    name,
    names,
    finding: { code, severity: 'warning', where: { field: `body.${name}` }, actual, expected, hint },
  }
}

function relationFinding(relation: Relation, given: GivenMeasures): Noticed[] {
  const [least, most] = relation.likely
  const side = BODY_SIDES.find((s) => {
    const figure = relationFigure(relation, given, s)
    return figure !== undefined && (figure < least || figure > most)
  })
  if (side === undefined) return []
  const { actual, expected, hint } = relationWords(relation, given, side)
  return [notice(relation.code, relation.names, actual, expected, hint)]
}

/**
 * Measures that the others let expect otherwise. A wrong one among the required measures makes all others look wrong:
 * then only the farthest off of these is named.
 */
function unexpected(given: GivenMeasures): Noticed[] {
  const errors = REGRESSIONS.flatMap((regression) => {
    const off = farthest(BODY_SIDES.map((side) => ({ side, error: errorOf(regression, given, side) })))
    return Math.abs(off.error) > UNUSUAL ? [{ regression, ...off }] : []
  })
  const required = errors.filter(({ regression }) => MEASURES[regression.target].required)
  const named = required.length > 0 ? [farthest(required)] : errors
  return named.map(({ regression, side }) => unexpectedFinding(regression, given, side))
}

/** How many standard errors a measure is off what the regression says; 0 where something was not measured. */
function errorOf(regression: Regression, given: GivenMeasures, side: BodySide): number {
  const value = givenValue(given, regression.target, side)
  const estimate = predict(regression, (name) => givenValue(given, name, side))
  return value === undefined || estimate === undefined ? 0 : (value - estimate) / regression.standardError
}

function farthest<T extends { readonly error: number }>(errors: readonly T[]): T {
  return [...errors].sort((a, b) => Math.abs(b.error) - Math.abs(a.error))[0] as T
}

function unexpectedFinding(regression: Regression, given: GivenMeasures, side: BodySide): Noticed {
  const name = regression.target
  const value = givenValue(given, name, side) as number
  const estimate = predict(regression, (known) => givenValue(given, known, side)) as number
  const least = estimate - UNUSUAL * regression.standardError
  const most = estimate + UNUSUAL * regression.standardError
  const others = Object.keys(regression.slopes).join(', ')
  return notice(
    'measure-unlike-others',
    [name],
    `${sidedName(name, typeof given[name] === 'object' ? side : undefined)} ${measureText(name, value)}`,
    `${roundText(name, least)} to ${roundText(name, most)}, going by ${others} (${SURVEY_SOURCE})`,
    `${measureAgain([name])} If it is right, leave it.`,
  )
}

function unusualFinding(name: MeasureName, given: GivenMeasures): Noticed[] {
  const survey = SURVEY[name]
  if (!survey) return []
  const groups = [survey.women, survey.men]
  const least = Math.min(...groups.map(({ mean, deviation }) => mean - UNUSUAL * deviation))
  const most = Math.max(...groups.map(({ mean, deviation }) => mean + UNUSUAL * deviation))
  const side = BODY_SIDES.find((s) => {
    const value = givenValue(given, name, s)
    return value !== undefined && (value < least || value > most)
  })
  if (side === undefined) return []
  const value = measureText(name, givenValue(given, name, side) as number)
  return [
    notice(
      'unusual-measure',
      [name],
      `${sidedName(name, typeof given[name] === 'object' ? side : undefined)} ${value}`,
      `${roundText(name, least)} to ${roundText(name, most)}, as on nearly everybody in the survey (${SURVEY_SOURCE})`,
      `${measureAgain([name])} If it is right, leave it.`,
    ),
  ]
}

function sidesFinding(name: MeasureName, given: GivenMeasures): Noticed[] {
  const left = givenValue(given, name, 'left')
  const right = givenValue(given, name, 'right')
  if (left === undefined || right === undefined) return []
  const angle = MEASURES[name].kind === 'angle'
  const apart = Math.abs(left - right)
  if (angle ? apart <= SLOPES_APART : apart <= SIDES_APART * Math.max(left, right)) return []
  return [
    notice(
      'sides-far-apart',
      [name],
      `${name} left ${measureText(name, left)}, right ${measureText(name, right)}`,
      angle ? 'sides within 8 deg' : 'sides within 15 %',
      `${measureAgain([name])} If it is right, leave it: left and right are drafted apart.`,
    ),
  ]
}
