import { describe, expect, it } from 'vitest'
import * as arcLength from '../../src/geometry/arc-length.ts'
import { area } from '../../src/geometry/area.ts'
import * as boxes from '../../src/geometry/bounds.ts'
import * as inside from '../../src/geometry/contains.ts'
import * as meet from '../../src/geometry/crossings.ts'
import * as cubics from '../../src/geometry/cubic.ts'
import * as extrema from '../../src/geometry/curvature-extrema.ts'
import { fitCubic } from '../../src/geometry/fit-cubic.ts'
import { flatten } from '../../src/geometry/flatten.ts'
import { hobbySpline } from '../../src/geometry/hobby.ts'
import * as bends from '../../src/geometry/inflections.ts'
import { levelCrossings } from '../../src/geometry/level-crossings.ts'
import { lineCrossings } from '../../src/geometry/line-crossings.ts'
import { moveBeyond } from '../../src/geometry/move-beyond.ts'
import * as near from '../../src/geometry/nearest.ts'
import { offset } from '../../src/geometry/offset.ts'
import { offsetOutline } from '../../src/geometry/offset-outline.ts'
import * as paths from '../../src/geometry/path.ts'
import * as lengths from '../../src/geometry/path-length.ts'
import * as parts from '../../src/geometry/path-part.ts'
import * as points from '../../src/geometry/point.ts'
import { refit } from '../../src/geometry/refit.ts'
import { roots } from '../../src/geometry/roots.ts'
import { spread } from '../../src/geometry/spread.ts'
import * as moves from '../../src/geometry/transform.ts'
import { wedge } from '../../src/geometry/wedge.ts'
import { partsOf, promised } from './promises.ts'

const { point } = points
const GOOD = cubics.cubic(point(0, 0), point(10, 20), point(30, 40), point(50, 0))
const BAD: cubics.Cubic = { ...GOOD, p1: point(Number.NaN, 20) }
const NOT = point(Number.NaN, 1)
const SPECK = cubics.cubic(point(1, 1), point(1, 1), point(1, 1), point(1, 1))
const P = point(3, 4)
const PLACE = { index: 0, t: 0.5 }
const ZERO = { accuracy: 0 }
const BAD_RUN = {
  xs: Float64Array.of(0, Number.NaN, 2),
  ys: Float64Array.of(0, 0, 0),
  lengths: Float64Array.of(0, 1, 2),
}

/** Calls with something that is not a number that do not throw; for every function that never does. */
const NOT_NUMBERS: Readonly<Record<string, readonly (() => unknown)[]>> = {
  point: [() => point(Number.NaN, 0)],
  add: [() => points.add(NOT, P)],
  subtract: [() => points.subtract(NOT, P)],
  scale: [() => points.scale(P, Number.NaN)],
  along: [() => points.along(P, P, Number.NaN)],
  between: [() => points.between(NOT, P, 0.5)],
  dot: [() => points.dot(NOT, P)],
  cross: [() => points.cross(NOT, P)],
  magnitude: [() => points.magnitude(NOT)],
  equalPoints: [() => points.equalPoints(NOT, P)],
  distance: [() => points.distance(NOT, P)],
  heading: [() => points.heading(Number.NaN)],
  angleOf: [() => points.angleOf(NOT)],
  turnBetween: [() => points.turnBetween(NOT, P)],
  leftOf: [() => points.leftOf(NOT)],
  rightOf: [() => points.rightOf(NOT)],
  rotateAbout: [() => points.rotateAbout(P, P, Number.NaN)],
  cubic: [() => cubics.cubic(NOT, P, P, P)],
  line: [() => cubics.line(NOT, P)],
  isLine: [() => cubics.isLine(BAD)],
  pointAt: [() => cubics.pointAt(BAD, 0.5)],
  derivativeAt: [() => cubics.derivativeAt(BAD, 0.5)],
  secondDerivativeAt: [() => cubics.secondDerivativeAt(BAD, 0.25)],
  curvatureAt: [() => cubics.curvatureAt(BAD, 0.5)],
  reverseCubic: [() => cubics.reverseCubic(BAD)],
  moveCubic: [() => cubics.moveCubic(BAD, (p) => p)],
  splitCubic: [() => cubics.splitCubic(BAD, 0.5)],
  subCubic: [() => cubics.subCubic(BAD, 0.2, 0.5)],
  curvatureExtrema: [() => extrema.curvatureExtrema(BAD)],
  smallestRadius: [() => extrema.smallestRadius(BAD)],
  inflections: [() => bends.inflections(BAD)],
  curvatureChanges: [() => [bends.curvatureChanges([BAD])]],
  curvatureSigns: [() => bends.curvatureSigns([BAD])],
  fitCubic: [() => fitCubic(BAD_RUN, 0, 2, P, P, 0.01)],
  roots: [() => roots([1, Number.NaN, 3])],
  lengthBounds: [() => arcLength.lengthBounds(BAD)],
  reversePath: [() => paths.reversePath([BAD])],
  movePath: [() => paths.movePath([BAD], (p) => p)],
  pathUntil: [() => parts.pathUntil([BAD], PLACE)],
  pathFrom: [() => parts.pathFrom([BAD], PLACE)],
  pathBetween: [() => parts.pathBetween([BAD], PLACE, { index: 0, t: 0.8 })],
  nearestOnCubic: [() => [near.nearestOnCubic(BAD, P)]],
  alongOf: [() => near.alongOf([BAD], PLACE)],
  cubicBounds: [() => [boxes.cubicBounds(BAD)]],
  joinBoxes: [() => [boxes.joinBoxes(boxes.cubicBounds(GOOD), boxes.cubicBounds(BAD))]],
  boxesMeet: [() => [boxes.boxesMeet(boxes.cubicBounds(GOOD), boxes.cubicBounds(BAD))]],
  contains: [() => inside.contains([GOOD], NOT), () => inside.contains([BAD], P)],
  windingNumber: [() => [inside.windingNumber([BAD], P)]],
  crossings: [() => [meet.crossings([BAD], [GOOD])]],
  selfCrossings: [() => [meet.selfCrossings([BAD, GOOD])]],
  levelCrossings: [() => levelCrossings([BAD], 3)],
  mirrorX: [() => moves.mirrorX(Number.NaN)(P)],
  mirrorPathX: [() => moves.mirrorPathX([BAD])],
  shift: [() => moves.shift(NOT)(P)],
  turn: [() => moves.turn(P, Number.NaN)(P)],
  inTurn: [() => moves.inTurn(moves.shift(NOT), moves.turn(P, 1))(P)],
}

/** Calls that throw, as the docstrings say. */
const MISUSES: Readonly<Record<string, readonly (() => unknown)[]>> = {
  unit: [() => points.unit(point(0, 0))],
  tangentAt: [() => lengths.tangentAt(SPECK, 0)],
  arcLength: [() => arcLength.arcLength(GOOD, ZERO)],
  arcLengthBetween: [() => arcLength.arcLengthBetween(GOOD, 0, 0.5, ZERO)],
  parameterAtLength: [() => arcLength.parameterAtLength(GOOD, 5, ZERO)],
  splitCubicAtLength: [() => arcLength.splitCubicAtLength(GOOD, 5, ZERO)],
  polyline: [() => paths.polyline([P])],
  startOf: [() => paths.startOf([])],
  endOf: [() => paths.endOf([])],
  isClosed: [() => paths.isClosed([])],
  firstCubic: [() => paths.firstCubic([])],
  lastCubic: [() => paths.lastCubic([])],
  pathLength: [() => lengths.pathLength([GOOD], ZERO)],
  locate: [() => lengths.locate([GOOD], -1), () => lengths.locate([GOOD], 1000)],
  pointAlong: [() => lengths.pointAlong([GOOD], 1000)],
  directionAlong: [() => lengths.directionAlong([GOOD], 1000)],
  subPath: [() => lengths.subPath([GOOD], 5, 1000), () => lengths.subPath([GOOD], 5, 5)],
  splitPath: [() => lengths.splitPath([GOOD], 0), () => lengths.splitPath([GOOD], 1000)],
  nearest: [() => near.nearest([], P)],
  nearestParameter: [() => near.nearestParameter([], P)],
  bounds: [() => boxes.bounds([])],
  area: [() => area([])],
  contains: [() => inside.contains([], P)],
  windingNumber: [() => inside.windingNumber([], P)],
  flatten: [() => flatten([GOOD], { tolerance: 0 })],
  lineCrossings: [() => lineCrossings([GOOD], P, P)],
  hobbySpline: [
    () => hobbySpline([{ at: P }]),
    () => hobbySpline([{ at: P }, { at: P }]),
    () => hobbySpline([{ at: P }, { at: point(0, 0) }], { closed: true }),
  ],
  refit: [() => refit([P, P]), () => refit([P, NOT]), () => refit([P, point(0, 0)], { tolerance: 0 })],
  offset: [() => offset([SPECK], 5)],
  offsetOutline: [() => offsetOutline([{ path: [GOOD], distance: 5 }])],
  mirrorAcross: [() => moves.mirrorAcross(P, P)],
  moveBeyond: [() => moveBeyond([GOOD], P, P, (p) => p), () => moveBeyond([], P, point(0, 0), (p) => p)],
  wedge: [() => wedge([GOOD], P, P, 0.1), () => wedge([], P, point(0, 0), 0.1)],
  spread: [() => spread([GOOD], P, P, 1), () => spread([], P, point(0, 0), 1)],
}

describe('failures of the kernel are those its docstrings state', () => {
  const all = promised().filter(({ kind }) => kind === 'function')
  const stated = (says: string) => partsOf(says).failure.startsWith('throws')

  it('every function is tried', () => {
    const tried = all.map(({ name, says }) => (stated(says) ? MISUSES : NOT_NUMBERS)[name]?.length ?? `${name} is not`)
    expect(tried.filter((one) => typeof one === 'string' || one === 0)).toEqual([])
    const names = all.map(({ name }) => name)
    for (const name of [...Object.keys(NOT_NUMBERS), ...Object.keys(MISUSES)]) expect(names).toContain(name)
  })

  for (const [name, calls] of Object.entries(NOT_NUMBERS)) {
    it(`${name} takes what is not a number`, () => {
      for (const call of calls) expect(blank(call())).toBe(true)
    })
  }

  for (const [name, calls] of Object.entries(MISUSES)) {
    it(`${name} throws`, () => {
      for (const call of calls) expect(call).toThrow(RangeError)
    })
  }
})

/** Not a number, false, a list of whatever, or holding something that is not a number. */
function blank(value: unknown): boolean {
  if (typeof value === 'number') return Number.isNaN(value)
  if (typeof value === 'boolean') return !value
  if (Array.isArray(value)) return true
  return Object.values(value as object).some((one) => blank(one))
}
