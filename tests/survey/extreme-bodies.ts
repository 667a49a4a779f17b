import type { GivenMeasures } from '../../src/body/given.ts'
import { MEASURE_NAMES, type MeasureName } from '../../src/body/measure.ts'
import { SURVEY } from '../../src/body/regressions.ts'

const SEXES = ['women', 'men'] as const
type Sex = (typeof SEXES)[number]

type Spread = readonly [mean: number, deviation: number]

/** Mean and spread of what the survey did not measure: our own, the size of what was, only to have something to vary. */
const UNSURVEYED: Readonly<Partial<Record<MeasureName, Readonly<Record<Sex, Spread>>>>> = {
  'upper chest girth': { women: [905, 75], men: [1035, 80] },
  'front width': { women: [349, 28], men: [402, 33] },
  'front waist length': { women: [445, 28], men: [490, 29] },
  'neck to bust point': { women: [269, 21], men: [297, 22] },
  'bust point width': { women: [208, 17], men: [230, 17] },
  'front neck to waist': { women: [360, 25], men: [405, 27] },
  'armscye girth': { women: [400, 33], men: [465, 38] },
  'elbow girth': { women: [259, 18], men: [289, 20] },
}

/** How far off the measures of a pair are, in standard deviations. */
const FAR = 4

export interface ExtremeBody {
  readonly id: string
  readonly given: GivenMeasures
}

/** The survey's average woman or man; with changes in standard deviations, which also give what is else estimated. */
export function averageBody(sex: Sex, changes: Readonly<Partial<Record<MeasureName, number>>> = {}): GivenMeasures {
  return Object.fromEntries(
    MEASURE_NAMES.flatMap((name) => {
      const change = changes[name]
      if (SURVEY[name] === undefined && change === undefined) return []
      const [mean, deviation] = spread(name, sex)
      return [[name, mean + (change ?? 0) * deviation]]
    }),
  )
}

/** Bodies that nobody has: for women and men every pair of measures, each of the two far above or below the mean. */
export function extremePairs(): ExtremeBody[] {
  const signs = [-FAR, FAR]
  return SEXES.flatMap((sex) =>
    MEASURE_NAMES.flatMap((one, k) =>
      MEASURE_NAMES.slice(k + 1).flatMap((other) =>
        signs.flatMap((a) =>
          signs.map((b) => ({
            id: `${sex}: ${one} ${a < 0 ? 'low' : 'high'}, ${other} ${b < 0 ? 'low' : 'high'}`,
            given: averageBody(sex, { [one]: a, [other]: b }),
          })),
        ),
      ),
    ),
  )
}

function spread(name: MeasureName, sex: Sex): Spread {
  const surveyed = SURVEY[name]?.[sex]
  if (surveyed) return [surveyed.mean, surveyed.deviation]
  const guessed = UNSURVEYED[name]?.[sex]
  if (!guessed) throw new RangeError(`no mean and spread for ${name}`)
  return guessed
}
