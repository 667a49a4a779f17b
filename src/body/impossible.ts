import type { Problem, Remedy } from '../base/problem.ts'
import { BODY_SIDES, type BodySide } from '../base/side.ts'
import { givenValue } from './estimate.ts'
import type { GivenMeasures } from './given.ts'
import { MEASURE_NAMES, MEASURES, type MeasureName } from './measure.ts'
import { measureAgain, measureText, roundText, sidedName } from './measure-words.ts'
import { SURVEY } from './regressions.ts'
import { relationFigure, relationWords } from './relation-words.ts'
import { RELATIONS, type Relation } from './relations.ts'

/** Measures that the survey has not, beside one of about the same size. */
const LIKE: Readonly<Partial<Record<MeasureName, MeasureName>>> = {
  'upper chest girth': 'bust girth',
  'front width': 'back width',
  'front waist length': 'back waist length',
  'front neck to waist': 'back waist length',
  'neck to bust point': 'scye depth',
  'bust point width': 'scye depth',
  'armscye girth': 'neck base girth',
  'elbow girth': 'upper arm girth',
}

/** Shares of the mean of women and of men: no grown or half-grown body is outside; a wrong unit mostly is. */
const SMALLEST = 0.35
const LARGEST = 3
/** Shoulders neither rise nor fall more than this; radians. */
const STEEPEST = Math.PI / 3

/**
 * What makes a body impossible: required measures that are not there, values that no body has, and measures that
 * cannot be of one body, these with remedies (leave one of them out and let it be estimated until it is measured again).
 */
export function impossibleMeasures(given: GivenMeasures): Problem[] {
  const single = MEASURE_NAMES.flatMap((name) => [...missingMeasure(given, name), ...badValues(given, name)])
  return single.length > 0 ? single : apart(given)
}

function missingMeasure(given: GivenMeasures, name: MeasureName): Problem[] {
  const { required, how } = MEASURES[name]
  const absent = BODY_SIDES.filter((side) => givenValue(given, name, side) === undefined)
  if (!required || absent.length === 0) return []
  const [side] = absent.length === 1 ? absent : []
  return [
    {
      code: 'missing',
      where: { field: side === undefined ? `body.${name}` : `body.${name}.${side}` },
      actual: `no ${sidedName(name, side)}`,
      expected: 'a length',
      hint: `measure it: ${how}`,
    },
  ]
}

function badValues(given: GivenMeasures, name: MeasureName): Problem[] {
  const parted = typeof given[name] === 'object'
  const sides: readonly BodySide[] = parted ? BODY_SIDES : ['left']
  return sides.flatMap((side) => {
    const value = givenValue(given, name, side)
    const [least, most] = limitsOf(name)
    if (value === undefined || (value >= least && value <= most)) return []
    return [
      {
        code: 'measure-out-of-range',
        where: { field: parted ? `body.${name}.${side}` : `body.${name}` },
        actual: `${sidedName(name, parted ? side : undefined)} ${measureText(name, value)}`,
        expected: `from ${roundText(name, least)} to ${roundText(name, most)}`,
        hint: `look at the unit it was written in (a plain number takes the file's), and ${measureAgain([name])}`,
      },
    ]
  })
}

function limitsOf(name: MeasureName): readonly [number, number] {
  if (MEASURES[name].kind === 'angle') return [0, STEEPEST]
  const survey = SURVEY[LIKE[name] ?? name]
  if (!survey) throw new RangeError(`no limits for ${name}`)
  return [SMALLEST * survey.women.mean, LARGEST * survey.men.mean]
}

function apart(given: GivenMeasures): Problem[] {
  return RELATIONS.flatMap((relation) => {
    const side = BODY_SIDES.find((s) => !isPossible(relation, given, s))
    if (side === undefined) return []
    const names = relation.names
    return [
      {
        code: relation.code,
        where: { field: `body.${names[0]}` },
        ...relationWords(relation, given, side),
        remedies: names.flatMap((name) => remedyWithout(name, relation, given)),
      },
    ]
  })
}

function isPossible(relation: Relation, given: GivenMeasures, side: BodySide): boolean {
  const figure = relationFigure(relation, given, side)
  if (!relation.possible || figure === undefined) return true
  const [least, most] = relation.possible
  return figure > least && figure < most
}

/** Only what is not required can be left out; blank in the file is not measured. */
function remedyWithout(name: MeasureName, relation: Relation, given: GivenMeasures): Remedy[] {
  if (MEASURES[name].required) return []
  const { [name]: _, ...rest } = given
  if (!BODY_SIDES.every((side) => isPossible(relation, rest, side))) return []
  return [
    {
      say: `leave the ${name} blank until it is measured again: it is then estimated`,
      set: { body: { [name]: null } },
    },
  ]
}
