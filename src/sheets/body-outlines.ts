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
export function both(knots: Knots): Path[] {
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

/** From the side, facing right, the arm bent: x from the shoulder point. */
export const BENT_ARM: BodyOutline = {
  outline: [
    curve(
      [
        [-0.5, 171],
        [6.2, 168.4],
        [8.8, 161.5],
        [10.9, 156.2],
        [9.2, 152.4],
        [8.2, 148.2],
        [3.6, 148],
        [-2, 152],
        [-7.2, 152.5],
        [-10.3, 160],
        [-7.6, 168.2],
      ],
      true,
    ),
    curve([
      [-7, 152.2],
      [-6.3, 148],
      [-7.4, 144.6],
      [-11, 137],
      [-12.4, 128],
      [-10.4, 116],
      [-8.4, 107],
      [-10.4, 98],
      [-12.8, 90],
    ]),
    curve([
      [3.8, 148],
      [3.5, 143.8],
      [4.6, 139.6],
      [9, 132],
      [13, 123],
      [12.2, 117.8],
      [10.8, 113.6],
    ]),
    curve([
      [9.6, 102.6],
      [10.4, 96],
      [10.4, 90],
    ]),
    curve([
      [3.6, 137.4],
      [0, 139.6],
      [-4.8, 137.6],
      [-6.6, 131],
      [-6.4, 122],
      [-5.4, 112],
      [-5.4, 106],
      [-2.8, 102.6],
      [4, 103.2],
      [13, 105],
      [21.5, 107.2],
      [25.5, 106.8],
      [30, 108.4],
      [31.2, 112.6],
      [28.6, 115.8],
      [24, 114.8],
      [21, 112.2],
      [14, 113.4],
      [8, 114],
      [4.3, 115.2],
    ]),
    curve([
      [5.6, 113.6],
      [4.2, 116],
      [5.6, 122],
      [5, 130],
      [3.2, 134.6],
    ]),
  ],
  detail: [],
}

/** The back of a hand, thumb tucked in: y from the wrist. */
export const HAND_BACK: BodyOutline = {
  outline: [
    curve([
      [-3.5, -8],
      [-3.1, -3],
      [-3, 0],
      [-4.2, 5],
      [-4.5, 9.5],
      [-4.1, 14],
      [-3.2, 15.6],
      [-2.2, 14.6],
    ]),
    curve([
      [-2.2, 14.6],
      [-1.7, 17.4],
      [-0.8, 18.2],
      [0.1, 17.2],
    ]),
    curve([
      [0.1, 17.2],
      [0.6, 18.2],
      [1.5, 17.9],
      [2.2, 16],
    ]),
    curve([
      [2.2, 16],
      [3.2, 16.2],
      [4, 13.8],
      [4.4, 9.5],
      [4.5, 5],
      [3.9, 2],
      [3, -0.5],
      [3.1, -3],
      [3.5, -8],
    ]),
  ],
  detail: [
    curve([
      [-2.2, 14.6],
      [-2.1, 10.4],
    ]),
    curve([
      [0.1, 17.2],
      [0, 10.8],
    ]),
    curve([
      [2.2, 16],
      [2.1, 10.6],
    ]),
  ],
}
