import type { Bezier } from 'bezier-js'
import { arcLength, parameterAtLength } from '../../src/geometry/arc-length.ts'
import { pointAt } from '../../src/geometry/cubic.ts'
import { distance } from '../../src/geometry/point.ts'
import type { BenchCase } from './bench-case.ts'
import { largest, paperCurve, seamCubics, summed, toBezier, toValues } from './shapes.ts'

const CUBICS = seamCubics(64, 1)
const BEZIERS = CUBICS.map(toBezier)
const VALUES = CUBICS.map(toValues)

/** Where to find a length: another share of each cubic. */
const PLACES = CUBICS.map((c, k) => ({ c, values: VALUES[k] as number[], along: arcLength(c) * ((k + 0.5) / 64) }))

export const lengthCases: readonly BenchCase[] = [
  {
    name: 'arc length, within 1e-7 mm',
    count: CUBICS.length,
    ours: summed(CUBICS, (c) => arcLength(c)),
    theirs: { library: 'bezier-js', work: summed(BEZIERS, (b) => b.length()) },
    wanted: { ratio: 1.5 },
    agree: () => ({
      apart: largest(CUBICS.map((c, k) => Math.abs(arcLength(c) - (BEZIERS[k] as Bezier).length()))),
      within: 1e-6,
      what: 'mm of length',
    }),
  },
  {
    name: 'arc length, within 1e-7 mm',
    count: CUBICS.length,
    ours: summed(CUBICS, (c) => arcLength(c)),
    theirs: { library: 'paper', work: summed(VALUES, (v) => paperCurve.getLength(v)) },
    wanted: { ratio: 1 },
    agree: () => ({
      apart: largest(CUBICS.map((c, k) => Math.abs(arcLength(c) - paperCurve.getLength(VALUES[k] as number[])))),
      within: 1e-3,
      what: 'mm of length',
    }),
  },
  {
    name: 'inverse length, within 1e-5 mm',
    count: PLACES.length,
    // As far as paper's is from the truth.
    ours: summed(PLACES, ({ c, along }) => parameterAtLength(c, along, { accuracy: 1e-5 })),
    theirs: { library: 'paper', work: summed(PLACES, ({ values, along }) => paperCurve.getTimeAt(values, along)) },
    wanted: { ratio: 1 },
    agree: () => ({
      apart: largest(
        PLACES.map(({ c, values, along }) =>
          distance(
            pointAt(c, parameterAtLength(c, along, { accuracy: 1e-5 })),
            pointAt(c, paperCurve.getTimeAt(values, along)),
          ),
        ),
      ),
      within: 1e-3,
      what: 'mm of place',
    }),
  },
]
