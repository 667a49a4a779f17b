import { hobbySpline } from '../geometry/hobby.ts'
import { movePath, type Path } from '../geometry/path.ts'
import { mirrorX } from '../geometry/transform.ts'

/**
 * Outlines of a grown body of average build, by eye: cm, x from the middle of the body, y from the floor. Front and
 * back share one silhouette; the wearer's left is at +x from the front.
 */
export type Knots = readonly (readonly [number, number])[]

/** A fair line through points in cm. */
export function curve(knots: Knots, closed = false): Path {
  return hobbySpline(
    knots.map(([x, y]) => ({ at: { x, y } })),
    { closed },
  )
}

/** The line and its mirror image across the middle of the body. */
function both(knots: Knots): Path[] {
  const one = curve(knots)
  return [one, movePath(one, mirrorX())]
}

const HEAD = curve(
  [
    [0, 171],
    [5.6, 168.6],
    [7.7, 161.5],
    [6.7, 154],
    [3.2, 148.6],
    [0, 147.6],
    [-3.2, 148.6],
    [-6.7, 154],
    [-7.7, 161.5],
    [-5.6, 168.6],
  ],
  true,
)

const EARS = both([
  [7.6, 162.4],
  [8.7, 162.2],
  [8.3, 158.6],
  [7.3, 156.6],
])

const NECK_AND_SHOULDER: Knots = [
  [5.5, 151.2],
  [5.5, 146.5],
  [7, 142.9],
  [11.5, 140.6],
  [18, 138.2],
  [22, 134.4],
  [23.6, 129],
]

const OUTER_ARM: Knots = [
  [23.6, 129],
  [24.3, 121],
  [25.3, 112],
  [26.7, 106],
  [28.4, 100],
  [29.3, 93],
  [29.8, 84],
]

/** From the armpit down the inside of the arm. */
const INNER_ARM: Knots = [
  [15.3, 126.6],
  [16.5, 119.5],
  [18.4, 111.5],
  [20, 106],
  [21.6, 99],
  [23.8, 90.5],
  [25.2, 84],
]

const FLANK: Knots = [
  [15.3, 126.6],
  [14.7, 121],
  [13.3, 114],
  [12.4, 107],
  [14.3, 98.5],
  [16.8, 90],
  [17.4, 82],
]

const HAND: Knots = [
  [29.8, 84],
  [31.4, 79],
  [32.9, 73],
  [33.2, 67],
  [32.2, 63.4],
  [30.4, 63.2],
  [28.6, 66],
  [27.4, 70.6],
  [26.6, 72.4],
  [25.9, 70],
  [24.7, 69.8],
  [24.2, 73],
  [24.6, 79],
  [25.2, 84],
]

/** The fold between arm and body, from the armpit up. */
const CREASE: Knots = [
  [15.3, 126.6],
  [16.6, 129],
  [17.2, 132.6],
]

/** Arms end at mid-forearm where they are not what is measured. */
function upTo(knots: Knots, lowest: number): Knots {
  return knots.filter(([, y]) => y >= lowest)
}

function below(knots: Knots, highest: number): Knots {
  return knots.filter(([, y]) => y <= highest)
}

const TORSO: readonly Path[] = [
  HEAD,
  ...EARS,
  ...both([...NECK_AND_SHOULDER, ...upTo(OUTER_ARM, 100).slice(1)]),
  ...both(upTo(INNER_ARM, 99)),
  ...both(FLANK),
]

const FRONT_DETAIL: readonly Path[] = [
  ...both([
    [3.6, 117.6],
    [8.6, 114.9],
    [13.2, 117.8],
  ]),
  ...both([
    [1.6, 139.6],
    [6, 140.6],
    [14.5, 138.6],
  ]),
  ...both(CREASE),
]

const BACK_DETAIL: readonly Path[] = [
  ...both([
    [4.6, 134.5],
    [5.4, 127],
    [9.4, 122.6],
  ]),
  ...both(CREASE),
]

/** Lines of a body, the heavy ones and the light ones inside. */
export interface BodyOutline {
  readonly outline: readonly Path[]
  readonly detail: readonly Path[]
}

export const FRONT: BodyOutline = { outline: TORSO, detail: FRONT_DETAIL }
export const BACK: BodyOutline = { outline: TORSO, detail: BACK_DETAIL }

/** Head, neck and shoulders alone. */
export const SHOULDERS: BodyOutline = {
  outline: [HEAD, ...EARS, ...both(NECK_AND_SHOULDER), ...both(upTo(INNER_ARM, 119)), ...both(upTo(FLANK, 114))],
  detail: FRONT_DETAIL.slice(2),
}

/** The wearer's left arm hanging, from the front. */
export const ARM: BodyOutline = {
  outline: [curve([...NECK_AND_SHOULDER, ...OUTER_ARM.slice(1)]), curve(INNER_ARM), curve(HAND), curve(FLANK)],
  detail: [curve(CREASE), ...FRONT_DETAIL.filter((_, k) => k === 0 || k === 2)],
}

/** The forearm and hand of the same arm. */
export const FOREARM: BodyOutline = {
  outline: [curve(below(OUTER_ARM, 113)), curve(below(INNER_ARM, 112)), curve(HAND)],
  detail: [],
}
