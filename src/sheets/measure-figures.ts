import type { Box } from '../geometry/bounds.ts'
import type { Cubic } from '../geometry/cubic.ts'
import { hobbySpline } from '../geometry/hobby.ts'
import { endOf, type Path, polyline, startOf } from '../geometry/path.ts'
import { directionAlong, pathLength } from '../geometry/path-length.ts'
import { add, along, between, distance, dot, leftOf, type Point, scale, subtract, unit } from '../geometry/point.ts'
import { ARM, BACK, type BodyOutline, curve, FOREARM, FRONT, type Knots, SHOULDERS } from './body-outlines.ts'
import { BENT_ARM, HAND_BACK } from './side-outlines.ts'

/** A picture of where a tape goes: the body's lines and the tape's, cm as in body-outlines.ts. */
export interface MeasureFigure {
  readonly body: BodyOutline
  /** What is shown of it. */
  readonly box: Box
  /** From where it is seen. */
  readonly view: 'front' | 'back' | 'side' | 'hand'
  /** The tape where it is seen, where it runs behind the body, and what only helps to find its place. */
  readonly tape: readonly Path[]
  readonly behind: readonly Path[]
  readonly aids: readonly Path[]
}

type Tape = Pick<MeasureFigure, 'tape' | 'behind' | 'aids'>

const TORSO_BOX: Box = { left: -30, bottom: 81, right: 30, top: 172 }
const SHOULDER_BOX: Box = { left: -25, bottom: 113, right: 25, top: 172 }
const ARM_BOX: Box = { left: -4, bottom: 62, right: 40, top: 153 }
const FOREARM_BOX: Box = { left: 13, bottom: 62, right: 40, top: 113 }
const SIDE_BOX: Box = { left: -14, bottom: 89, right: 33, top: 172 }
const HAND_BOX: Box = { left: -9, bottom: -8, right: 9, top: 20 }

/** Half a tick at the end of a length, cm. */
const TICK = 2.2

/** Handle of the cubic that is nearest to a quarter of a circle, in radii. */
const CIRCLE = 0.5523

/** How much of its width a level tape seems to sag in front and rise behind. */
const SAG = 0.11

const SIDE_NECK: readonly [number, number] = [7, 142.9]
const SHOULDER_POINT: readonly [number, number] = [18, 138.2]
const NAPE: readonly [number, number] = [0, 145.2]
const PIT: readonly [number, number] = [0, 139.6]
const BUST_POINT: readonly [number, number] = [8.8, 121]
const WAIST = 107
const ARMPIT = 126.6

/** A figure for every measure that has one, by the measure's name. */
export const MEASURE_FIGURES: Readonly<Record<string, MeasureFigure>> = {
  'neck base girth': shoulders(around([-7, 142.6], [7, 142.6], 0.21)),
  'shoulder length': shoulders(length([SIDE_NECK, [11.5, 140.6], SHOULDER_POINT])),
  'shoulder slope': shoulders(slope(SIDE_NECK, SHOULDER_POINT)),
  'upper chest girth': front(around([-15.2, 127.4], [15.2, 127.4])),
  'bust girth': front(around([-14.7, 121], [14.7, 121])),
  'waist girth': front(around([-12.4, WAIST], [12.4, WAIST])),
  'back waist length': back(
    withAid(length([NAPE, [0, WAIST]]), [
      [-12.4, WAIST],
      [12.4, WAIST],
    ]),
  ),
  'scye depth': back(
    withAid(length([NAPE, [0, ARMPIT]]), [
      [-15.3, ARMPIT],
      [15.3, ARMPIT],
    ]),
  ),
  'back width': back(
    length([
      [-17.2, 132.4],
      [17.2, 132.4],
    ]),
  ),
  'front width': front(
    length([
      [-16.8, 131.4],
      [16.8, 131.4],
    ]),
  ),
  'front waist length': front(
    withAid(length([SIDE_NECK, BUST_POINT, [8.8, WAIST]]), [
      [-12.4, WAIST],
      [12.4, WAIST],
    ]),
  ),
  'neck to bust point': front(length([SIDE_NECK, BUST_POINT])),
  'bust point width': front(length([[-8.8, 121], BUST_POINT])),
  'front neck to waist': front(
    withAid(length([PIT, [0, WAIST]]), [
      [-12.4, WAIST],
      [12.4, WAIST],
    ]),
  ),
  'armscye girth': shoulders(around([17.6, 138.6], [15.6, 126.4], 0.2)),
  'upper arm girth': arm(around([16.1, 121.4], [24.4, 119.8])),
  'upper arm girth flexed': side(around([-6.5, 125], [5.4, 124.2])),
  'elbow girth': side(around([-5.2, 103.6], [4.6, 114.6])),
  'wrist girth': { ...pick(FOREARM, FOREARM_BOX, 'front'), ...around([25.2, 84.6], [29.8, 84.2], 0.16) },
  'hand girth': { ...pick(HAND_BACK, HAND_BOX, 'hand'), ...around([-4.5, 8.4], [4.4, 8.4]) },
  'outer arm length': arm(
    length([
      [18.4, 138.9],
      [22.6, 135],
      [24.5, 129],
      [25.2, 121],
      [26.2, 112],
      [27.6, 106],
      [29.3, 100],
      [30.2, 93],
      [30.7, 84.6],
    ]),
  ),
  'shoulder to elbow': side(
    length([
      [-0.4, 140.4],
      [-5.4, 138.2],
      [-7.5, 131],
      [-7.3, 122],
      [-6.3, 112],
      [-6.3, 105.6],
    ]),
  ),
}

function pick(body: BodyOutline, box: Box, view: MeasureFigure['view']): Omit<MeasureFigure, keyof Tape> {
  return { body, box, view }
}

function front(tape: Tape): MeasureFigure {
  return { ...pick(FRONT, TORSO_BOX, 'front'), ...tape }
}

function back(tape: Tape): MeasureFigure {
  return { ...pick(BACK, TORSO_BOX, 'back'), ...tape }
}

function shoulders(tape: Tape): MeasureFigure {
  return { ...pick(SHOULDERS, SHOULDER_BOX, 'front'), ...tape }
}

function arm(tape: Tape): MeasureFigure {
  return { ...pick(ARM, ARM_BOX, 'front'), ...tape }
}

function side(tape: Tape): MeasureFigure {
  return { ...pick(BENT_ARM, SIDE_BOX, 'side'), ...tape }
}

/** A tape round the body between two edges of its outline: in front as it hangs, behind as the other half of an ellipse. */
function around(from: readonly [number, number], to: readonly [number, number], sag = SAG): Tape {
  const [a, b] = [at(from), at(to)]
  const width = distance(a, b)
  const across = scale(subtract(b, a), 1 / width)
  // Down on the page for a level tape; toward the middle of the body for an upright one.
  const down = scale(leftOf(across), -1)
  const middle = between(a, b, 0.5)
  const half = (side: Point): Path => [
    quarter(a, along(middle, side, sag * width), side, across),
    quarter(along(middle, side, sag * width), b, across, scale(side, -1)),
  ]
  return { tape: [half(down)], behind: [half(scale(down, -1))], aids: [] }
}

/** A quarter of an ellipse from one end of its axes to another, to 0.03 % of them. */
function quarter(from: Point, to: Point, out: Point, into: Point): Cubic {
  const reach = (direction: Point) => CIRCLE * Math.abs(dot(subtract(to, from), direction))
  return { p0: from, p1: along(from, out, reach(out)), p2: along(to, into, -reach(into)), p3: to }
}

/** A tape along the body, with a tick at each end. */
function length(knots: Knots): Tape {
  const path = knots.length === 2 ? polyline(knots.map(at)) : curve(knots)
  const tick = (end: Point, direction: Point) => {
    const side = scale(leftOf(direction), TICK)
    return polyline([add(end, side), subtract(end, side)])
  }
  const ends = [tick(startOf(path), directionAlong(path, 0)), tick(endOf(path), directionAlong(path, pathLength(path)))]
  return { tape: [path, ...ends], behind: [], aids: [] }
}

function withAid(tape: Tape, aid: Knots): Tape {
  return { ...tape, aids: [polyline(aid.map(at))] }
}

/** The angle between a level line and the shoulder: both, and an arc from one to the other. */
function slope(from: readonly [number, number], to: readonly [number, number]): Tape {
  const [a, b] = [at(from), at(to)]
  const reach = distance(a, b) + 3
  const level = { x: a.x + reach, y: a.y }
  const fallen = along(a, unit(subtract(b, a)), reach)
  const down = unit(subtract(b, a))
  const bow = hobbySpline([
    { at: { x: a.x + 0.8 * reach, y: a.y }, direction: { x: 0, y: -1 } },
    { at: along(a, down, 0.8 * reach), direction: scale(leftOf(down), -1) },
  ])
  return { tape: [polyline([a, fallen]), bow], behind: [], aids: [polyline([a, level])] }
}

function at([x, y]: readonly [number, number]): Point {
  return { x, y }
}
