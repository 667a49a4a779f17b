import type { BodySide } from '../base/side.ts'
import type { Body, BodyHalf, Measure } from './body.ts'
import type { GivenMeasures } from './given.ts'
import { MEASURE_NAMES, MEASURES, type MeasureName } from './measure.ts'
import { RATIOS, type Ratio } from './ratios.ts'
import { RATIO_ERRORS, REGRESSIONS, type Regression, SURVEY_SOURCE } from './regressions.ts'
import { type Known, rangeTogether } from './together.ts'

/**
 * What is estimated when nobody took it, each from what stands before it. Left out on purpose: the checks, and upper
 * chest girth, flexed upper arm and front waist length, because a draft is another one where these are known.
 */
const ORDER: readonly MeasureName[] = [
  'neck base girth',
  'shoulder length',
  'shoulder slope',
  'back width',
  'front width',
  'scye depth',
  'neck to bust point',
  'bust point width',
  'wrist girth',
  'elbow girth',
  'hand girth',
  'shoulder to elbow',
]

/** Measures of the arm follow the arm of their own side; a stronger arm says nothing about its shoulder. */
const OF_THE_ARM: readonly MeasureName[] = ['wrist girth', 'elbow girth', 'hand girth', 'shoulder to elbow']

/** How far one side usually is from the other: a share of the measure, or an angle in radians. Our own. */
const SIDES_APART = { share: 0.02, angle: (2 * Math.PI) / 180 } as const

/**
 * The body with every measure that the draft needs: those given as they are, the others estimated and marked so, with
 * standard error and source. The required measures must be there (`completeBody` sees to it); throws without them.
 */
export function estimateBody(given: GivenMeasures): Body {
  let body: Body = { left: givenHalf(given, 'left'), right: givenHalf(given, 'right') }
  for (const name of ORDER) {
    const whole = body
    if (whole.left[name] && whole.right[name]) continue
    const shared = OF_THE_ARM.includes(name) ? undefined : estimateOf(name, meanOf(whole))
    const fill = (side: BodySide): BodyHalf => {
      const half = whole[side]
      if (half[name]) return half
      const other = whole[side === 'left' ? 'right' : 'left'][name]
      const measure = MEASURES[name].sided && other && !other.estimated ? asTheOther(name, other) : undefined
      return { ...half, [name]: measure ?? shared ?? estimateOf(name, half) }
    }
    body = { left: fill('left'), right: fill('right') }
  }
  return { left: inOrder(body.left), right: inOrder(body.right) }
}

/** The measures in the order in which a performer is measured, taken or estimated: outputs list them so. */
function inOrder(half: BodyHalf): BodyHalf {
  return Object.fromEntries(MEASURE_NAMES.filter((name) => half[name]).map((name) => [name, half[name]]))
}

/** The value of a side, mm or radians, as it was given; undefined where it was not. */
export function givenValue(given: GivenMeasures, name: MeasureName, side: BodySide): number | undefined {
  const value = given[name]
  return typeof value === 'object' ? value[side] : value
}

/** What a regression says, mm or radians; undefined where one of its measures is not known. */
export function predict(regression: Regression, known: Known): number | undefined {
  let sum = regression.intercept
  for (const [name, slope] of Object.entries(regression.slopes)) {
    const value = known(name as MeasureName)
    if (value === undefined) return undefined
    sum += slope * value
  }
  return sum
}

function givenHalf(given: GivenMeasures, side: BodySide): BodyHalf {
  const half: Partial<Record<MeasureName, Measure>> = {}
  for (const name of Object.keys(given) as MeasureName[]) {
    const value = givenValue(given, name, side)
    if (value !== undefined) half[name] = { value, estimated: false }
  }
  return half
}

function asTheOther(name: MeasureName, { value }: Measure): Measure {
  const standardError = MEASURES[name].kind === 'angle' ? SIDES_APART.angle : SIDES_APART.share * value
  return { value, estimated: true, standardError, source: 'as the other side' }
}

/** Both sides in the mean; the side there is where there is one. */
function meanOf({ left, right }: Body): BodyHalf {
  const names = Object.keys({ ...left, ...right }) as MeasureName[]
  const mean = (name: MeasureName): Measure | undefined => {
    const a = left[name]
    const b = right[name]
    return a && b ? { ...a, value: (a.value + b.value) / 2 } : (a ?? b)
  }
  return Object.fromEntries(names.map((name) => [name, mean(name)]))
}

function estimateOf(name: MeasureName, half: BodyHalf): Measure {
  const estimate = fromFront(name, half) ?? fromRegression(name, half) ?? fromRatio(name, half)
  const range = rangeTogether(name, (known) => half[known]?.value)
  const value = range ? Math.min(Math.max(estimate.value, range.least), range.most) : estimate.value
  const source =
    value === estimate.value ? estimate.source : `${estimate.source}, held to what goes with the other measures`
  return { ...estimate, value, estimated: true, source }
}

interface Estimate {
  readonly value: number
  readonly standardError: number
  readonly source: string
}

function fromRegression(name: MeasureName, half: BodyHalf): Estimate | undefined {
  const regression = REGRESSIONS.find(({ target }) => target === name)
  const value = regression && predict(regression, (known) => half[known]?.value)
  if (!regression || value === undefined) return undefined
  const standardError = throughError(regression.standardError, regression.slopes, half)
  return { value, ...standardError, source: `regression on ${SURVEY_SOURCE}` }
}

/** A front width that was measured says more about the back than the bust does. */
function fromFront(name: MeasureName, half: BodyHalf): Estimate | undefined {
  const front = half['front width']
  if (name !== 'back width' || !front) return undefined
  const { times, plus, source } = ratioOf('front width')
  const value = (front.value - plus) / times
  const own = (RATIO_ERRORS['front width'] ?? 0) * value
  return { value, ...throughError(own, { 'front width': 1 / times }, half), source }
}

function fromRatio(name: MeasureName, half: BodyHalf): Estimate {
  const { from, times, plus, source } = ratioOf(name)
  const measure = half[from]
  if (!measure) throw new RangeError(`${name} is estimated from ${from}, which is not known`)
  const value = times * measure.value + plus
  const own = (RATIO_ERRORS[name] ?? 0) * value
  return { value, ...throughError(own, { [from]: times }, half), source }
}

/** The standard error of an estimate from estimates: its own and theirs, taken as independent. */
function throughError(
  own: number,
  slopes: Readonly<Partial<Record<MeasureName, number>>>,
  half: BodyHalf,
): { readonly standardError: number } {
  const theirs = Object.entries(slopes).map(([name, slope]) => slope * (half[name as MeasureName]?.standardError ?? 0))
  return { standardError: Math.hypot(own, ...theirs) }
}

function ratioOf(name: MeasureName): Ratio {
  const ratio = RATIOS.find(({ target }) => target === name)
  if (!ratio) throw new RangeError(`there is no estimate of ${name}`)
  return ratio
}
