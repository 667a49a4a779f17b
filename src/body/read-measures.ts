import * as z from 'zod'
import { formatLength } from '../base/format-length.ts'
import { normaliseName } from '../base/names.ts'
import type { Problem } from '../base/problem.ts'
import type { Readers } from '../base/readers.ts'
import { valueAt } from '../base/reading-problems.ts'
import { type LengthUnit, MM_PER_INCH } from '../base/units.ts'
import type { Tree, YamlDocument } from '../base/yaml-document.ts'
import type { GivenMeasures } from './given.ts'
import { MEASURE_NAMES, MEASURES, type MeasureDefinition, type MeasureName } from './measure.ts'
import { sidedName } from './measure-words.ts'
import { SURVEY } from './regressions.ts'

/**
 * The schema of the `body` section: every measure by name, one value or `{ left, right }` where it has sides, to mm
 * or radians. The required ones must be there, on both sides, unless the body is yet to be measured.
 */
export function measuresSchema(read: Readers, unmeasured = false): z.ZodType<GivenMeasures> {
  const of = (name: MeasureName): MeasureDefinition => ({
    ...MEASURES[name],
    ...(unmeasured ? { required: false } : {}),
  })
  const shape = Object.fromEntries(MEASURE_NAMES.map((name) => [name, measureSchema(read, of(name))]))
  return z.strictObject(shape, { error: 'the measures by name' }) as unknown as z.ZodType<GivenMeasures>
}

function measureSchema(read: Readers, definition: MeasureDefinition): z.ZodType {
  const value = valueSchema(read, definition).meta({ description: definition.how })
  return definition.required ? value : value.optional()
}

function valueSchema(read: Readers, definition: MeasureDefinition): z.ZodType {
  const one = definition.kind === 'angle' ? read.angle() : read.positiveLength()
  if (!definition.sided) return one
  const half = definition.required ? one : one.optional()
  return z.union([one, z.strictObject({ left: half, right: half })], {
    error: `${one.description}, or left and right`,
  })
}

/** The body section without the measures that were left blank, as on a form: blank is not measured. */
export function withoutBlanks(tree: Tree): Tree {
  if (typeof tree !== 'object' || tree === null || Array.isArray(tree)) return tree
  const kept = Object.entries(tree)
    .map(([key, value]): [string, Tree] => [key, withoutBlanks(value)])
    .filter(([, value]) => value !== null)
  return kept.length > 0 ? Object.fromEntries(kept) : null
}

/** Measures that people take and the draft has no use for: why, and what it takes instead. */
const NOT_TAKEN: ReadonlyMap<string, string> = new Map(
  Object.entries({
    'hip girth': 'the bodice ends at the waist: leave the hip out, or put # before the line',
    'shoulder width': 'the draft takes shoulder length and shoulder slope: measure these, and put # before the line',
    'elbow to wrist': 'the draft takes outer arm length and shoulder to elbow: put # before the line',
    'back neck to wrist': 'the draft takes shoulder length and outer arm length: put # before the line',
    'chest girth': 'write bust girth for the fullest part, or upper chest girth for the line high under the arms',
    biceps: 'write upper arm girth (relaxed), or upper arm girth flexed',
  }),
)

/** A problem of the body section in a draper's words: how a missing measure is taken, and that one has no sides. */
export function measureProblem(problem: Problem, document: YamlDocument): Problem {
  const key = normaliseName((problem.where.field ?? '').split('.')[1] ?? '')
  if (problem.code === 'unknown-key' && key === 'across back') return acrossBack(problem)
  if (problem.code === 'unknown-key') return { ...problem, hint: NOT_TAKEN.get(key) ?? problem.hint }
  const name = MEASURE_NAMES.find((known) => known === key)
  if (name === undefined) return problem
  if (problem.code === 'missing') {
    const side = (problem.where.field ?? '').split('.')[2]?.toLowerCase()
    return {
      ...problem,
      actual: `no ${sidedName(name, side)}`,
      expected: likely(problem.expected, name),
      hint: `measure it: ${MEASURES[name].how}`,
    }
  }
  const written = valueAt(document.tree, ['body', name])
  const parts = problem.code === 'wrong-shape' && typeof written === 'object' && !Array.isArray(written)
  return parts && !MEASURES[name].sided ? noSides(problem, name) : problem
}

/** An example in the file's unit that could be of somebody: about the mean of the survey. */
function likely(expected: string, name: MeasureName): string {
  const mean = SURVEY[name]?.women.mean
  if (mean === undefined) return expected
  return expected.replace(/such as [\d/. ]+ (in|cm|mm)/, (_, unit: LengthUnit) => {
    const step = unit === 'in' ? MM_PER_INCH / 4 : 10
    return `such as ${formatLength(Math.round(mean / step) * step, unit)}`
  })
}

function noSides(problem: Problem, name: MeasureName): Problem {
  return {
    ...problem,
    code: 'measure-without-sides',
    actual: `${name} with parts`,
    expected: 'one value: it has no left and right',
    hint: `write one length. ${MEASURES[name].how}`,
  }
}

/** Two different measures go by that name. */
function acrossBack(problem: Problem): Problem {
  return {
    ...problem,
    code: 'across-back',
    actual: '"across back", which means two things',
    expected: 'back width (armscye to armscye at mid-armscye) or shoulder width (shoulder point to shoulder point)',
    hint:
      'if it was taken from armscye to armscye, write back width. If it was taken from shoulder point to shoulder ' +
      'point it is the shoulder width, which the draft does not take: measure the shoulder length instead',
  }
}
