import type { Bezier } from 'bezier-js'
import { crossings } from '../../src/geometry/crossings.ts'
import { type Cubic, cubic, pointAt } from '../../src/geometry/cubic.ts'
import { hobbySpline } from '../../src/geometry/hobby.ts'
import { nearestParameter } from '../../src/geometry/nearest.ts'
import { offset } from '../../src/geometry/offset.ts'
import type { Path } from '../../src/geometry/path.ts'
import { pathLength } from '../../src/geometry/path-length.ts'
import { distance, type Point } from '../../src/geometry/point.ts'
import { refit } from '../../src/geometry/refit.ts'
import type { Agreement, BenchCase } from './bench-case.ts'
import { largest, roundKnots, seamCubics, summed, toBezier, toCurve, toPaperPath } from './shapes.ts'

const TOLERANCE = 0.01

/** A hundred samples of each of some offset lines, which no single cubic follows. */
const RUNS = seamCubics(12, 4).map((c) => {
  const samples = sampled(offset([c], -25.4), 100)
  const path = toPaperPath(samples)
  return { samples, path, made: keepingItsPoints(path) }
})
type Run = (typeof RUNS)[number]

const KNOTS = Array.from({ length: 16 }, (_, k) => roundKnots(8, 50 + k))
const SMOOTHED = KNOTS.map((knots) => toPaperPath(knots.map(({ at }) => at)))

const PAIRS = crossingPairs(48)
// A crossing takes bezier-js so long that a few have to do.
const FEW = PAIRS.slice(0, 8)

export const curveCases: readonly BenchCase[] = [
  {
    name: 'refit of 100 samples, within 0.01 mm',
    count: RUNS.length,
    ours: summed(RUNS, ({ samples }) => refit(samples, { tolerance: TOLERANCE }).path.length),
    theirs: { library: 'paper', work: summed(RUNS, (run) => simplified(run).length) },
    wanted: { ratio: 1 },
    agree: () => {
      const ours = RUNS.map(({ samples }) => refit(samples, { tolerance: TOLERANCE }).path)
      const theirs = RUNS.map((run) => toPath(simplified(run)))
      return {
        apart: largest([...ours, ...theirs].map((path, k) => worstMiss((RUNS[k % RUNS.length] as Run).samples, path))),
        within: TOLERANCE,
        what: `mm of a sample from either path; ${ours.flat().length} cubics, theirs ${theirs.flat().length}`,
      }
    },
  },
  {
    name: 'fair curve through 8 knots',
    count: KNOTS.length,
    ours: summed(KNOTS, (knots) => hobbySpline(knots).length),
    // Another spline: natural, with continuous second derivatives; the nearest thing there is.
    theirs: { library: 'paper', work: summed(SMOOTHED, (path) => smoothed(path).segments.length) },
    wanted: { ratio: 1 },
    agree: () => ({
      apart: largest(
        KNOTS.map((knots, k) => {
          const ours = pathLength(hobbySpline(knots))
          return Math.abs(ours - smoothed(SMOOTHED[k] as paper.Path).length) / ours
        }),
      ),
      within: 0.02,
      what: 'of the length: two kinds of spline',
    }),
  },
  {
    name: 'crossings of two seams',
    count: PAIRS.length,
    ours: summed(PAIRS, ({ a, b }) => crossings([a], [b]).crossings.length),
    theirs: { library: 'paper', work: summed(PAIRS, ({ curves: [a, b] }) => a.getIntersections(b).length) },
    wanted: { ratio: 1 },
    agree: () =>
      agreementOfCrossings(PAIRS, ({ curves: [a, b] }) => a.getIntersections(b).map(({ point }) => point), 1e-6),
  },
  {
    name: 'crossings of two seams',
    count: FEW.length,
    ours: summed(FEW, ({ a, b }) => crossings([a], [b]).crossings.length),
    // To a thousandth of a millimetre, a thousand times coarser than ours.
    theirs: { library: 'bezier-js', work: summed(FEW, ({ beziers: [a, b] }) => a.intersects(b, 1e-3).length) },
    wanted: { ratio: 1 },
    agree: () =>
      agreementOfCrossings(
        FEW,
        ({ a, beziers }) => beziers[0].intersects(beziers[1], 1e-3).map((pair) => pointAt(a, Number.parseFloat(pair))),
        0.02,
      ),
  },
]

interface Pair {
  readonly a: Cubic
  readonly b: Cubic
  readonly curves: readonly [paper.Curve, paper.Curve]
  readonly beziers: readonly [Bezier, Bezier]
}

/** Pairs of seams that meet, most of them once. */
function crossingPairs(count: number): Pair[] {
  const pairs: Pair[] = []
  const cubics = seamCubics(2000, 5)
  for (let k = 0; pairs.length < count; k += 2) {
    const [a, b] = cubics.slice(k, k + 2)
    if (!a || !b) throw new Error('not enough pairs of seams that meet')
    if (crossings([a], [b]).crossings.length === 0) continue
    pairs.push({ a, b, curves: [toCurve(a), toCurve(b)], beziers: [toBezier(a), toBezier(b)] })
  }
  return pairs
}

/** How far the places where the library sees a crossing lie from ours, and ours from the library's; it may repeat one. */
function agreementOfCrossings(
  pairs: readonly Pair[],
  theirs: (pair: Pair) => readonly Point[],
  within: number,
): Agreement {
  const apart = largest(
    pairs.map((pair) => {
      const ours = crossings([pair.a], [pair.b]).crossings.map(({ at }) => at)
      const found = theirs(pair)
      return Math.max(farthest(ours, found), farthest(found, ours))
    }),
  )
  return { apart, within, what: 'mm of place' }
}

function farthest(points: readonly Point[], others: readonly Point[]): number {
  return largest(
    points.map((p) => others.reduce((least, q) => Math.min(least, distance(p, q)), Number.POSITIVE_INFINITY)),
  )
}

function sampled(path: Path, count: number): Point[] {
  return Array.from({ length: count }, (_, k) => {
    const place = (path.length * k) / (count - 1)
    const index = Math.min(path.length - 1, Math.floor(place))
    return pointAt(path[index] as Path[number], place - index)
  })
}

/** The largest distance of a sample, of every third, from the path. */
function worstMiss(samples: readonly Point[], path: Path): number {
  return largest(samples.filter((_, k) => k % 3 === 1).map((p) => nearestParameter(path, p).distance))
}

/** Paper's fit of a path's points: `simplify` would put it in their place, so here the path gives it out instead. */
function simplified({ path, made }: Run): readonly paper.Segment[] {
  // Its tolerance is the square of the distance.
  path.simplify(TOLERANCE * TOLERANCE)
  return made.segments
}

function keepingItsPoints(path: paper.Path): { segments: readonly paper.Segment[] } {
  const made: { segments: readonly paper.Segment[] } = { segments: [] }
  Object.assign(path, {
    setSegments: (segments: readonly paper.Segment[]) => {
      made.segments = segments
    },
  })
  return made
}

function toPath(segments: readonly paper.Segment[]): Path {
  return segments.slice(1).map((to, k) => {
    const from = segments[k] as paper.Segment
    return cubic(from.point, from.point.add(from.handleOut), to.point.add(to.handleIn), to.point)
  })
}

function smoothed(path: paper.Path): paper.Path {
  path.smooth({ type: 'continuous' })
  return path
}
