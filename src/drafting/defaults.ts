/**
 * The draft's own numbers: mm, radians or shares, each with its source. The relations between them are in the
 * files that use them; a performer file can override ease, cloth, opening and dart intakes.
 */

import { NARROWEST_ARMSCYE } from '../body/together.ts'

const degrees = (value: number) => (value * Math.PI) / 180

/** Proportions of the neckline; units are the back neck width. Common practice. */
export const NECK = {
  backRise: 0.21,
  frontWidth: 0.95,
  frontDepth: 1.08,
  /** The neckline leaves the back shoulder at 90° plus this and the front one at 90° less: 180° when sewn. */
  turn: degrees(20),
} as const

export const SHOULDER = {
  /** The seam lies forward of the ridge: the back slopes less, the front more, their mean is the measure. */
  slopeShift: degrees(2),
  /** Back shoulder eased to the front, mm: 1/4 in (read: Woman's Encyclopaedia vol. 4; The Cutter's Practical Guide part 13). */
  backEase: 6,
  /** A shoulder point nearer the width line than this makes the armscye hook, mm. Our own. */
  outsideWidth: 5,
  /** How far beyond its chord the armscye leans in to a shoulder point inside the width line, as a share. Our own. */
  leanShare: 1.5,
} as const

export const ARMSCYE = {
  /** The narrowest armscye between the width lines, mm. */
  narrowest: NARROWEST_ARMSCYE,
  /** From underarm to shoulder point, upright: at least so many mm, and this share of what lies between them across. Our own: the survey's least are 145 and 1.8. */
  lowest: { height: 100, share: 0.8 },
  /** Height of the width point as a share of the armscye's height. Common practice. */
  widthPoint: 0.5,
  /** Depth of the hollow on the 45° line: share of the armscye width + constant, at most, mm. Common practice. */
  hollow: { back: { share: 0.19, plus: 4, most: 30 }, front: { share: 0.15, plus: 2, most: 24 } },
} as const

export const WAIST = {
  /** Shares of the suppression. Common practice. */
  sideShare: 0.3,
  /** The most that one half of the side seam takes, mm. Common practice. */
  sideMost: 25,
  dartLeast: 8,
  dartMost: 45,
  /** Waist darts end this far below the bust point (front) or the underarm line (back), mm. Common practice. */
  shortOf: 25,
  /** A waist dart at least this long, and this far from center and side seam, mm. Our own: room to sew. */
  shortest: 50,
  clear: 8,
  /** Half a dart's mouth as a share of its length, at most: a wider one is no dart. Our own. */
  widest: 0.6,
  /** Cloth left between two waist darts that share an intake, mm. Our own. */
  betweenDarts: 14,
  /** And it bends with at least this radius, mm: an allowance of 1 in and room to turn it. Our own. */
  stripRadius: 45,
  /** A pressed dart is this much longer than its legs, mm: an allowance of 1 in and room to turn it. Our own. */
  pressedBelow: 45,
} as const

/**
 * Back shoulder dart in place of ease, mm: intake 10–13, length 75–90 (common practice); `along` is its place as a share
 * of the shoulder from the neck (our own).
 */
export const SHOULDER_DART = { least: 10, most: 13, length: 80, along: 0.45 } as const

export const BUST_DART = {
  /** Without a dart, more than the first share of the front side seam eased in is gathers, more than the second none. Our own. */
  eased: { flat: 0.12, most: 0.25 },
  /** Below this the difference is eased, mm. Common practice. */
  least: 8,
  /** The dart ends this far short of the bust point, mm: 20–25, common practice. */
  shortOf: 22,
  /** Side seam above the dart is at least this long, mm. Our own: room to sew the underarm. */
  belowUnderarm: 25,
  /** And below it, mm. Our own. */
  aboveWaist: 25,
  /** Legs are at least this long, mm. Our own. */
  shortest: 40,
  /** Intake when nothing tells, mm: common practice, labelled an estimate. */
  unknown: 15,
  /** 0.35 · (bust − upper chest) + 12, held to 0–60 mm: common practice, labelled an estimate. */
  perChestDifference: 0.35,
  plus: 12,
  most: 60,
} as const

export const CAP = {
  /** The first part of each cap side is the armscye's own curve, mm: 1 1/2 in pinned flat (common practice). */
  copied: 38,
  /** Back share of the cap ease: between 45/55 and 40/60 (from memory). */
  backShare: 0.55,
  /** Cap height as a share of the armscye: below, look again; below, refuse. From memory: 1/3 fitted, 1/4 a shirt. */
  lowRatio: 0.2,
  leastRatio: 0.15,
  /** The cap line lies at this share of the cap height. */
  capLine: 2 / 3,
} as const

/** Notches: share of the armscye from the underarm, held to 63–89 mm (2 1/2–3 1/2 in, from memory). */
export const NOTCH = { front: 0.36, back: 0.34, least: 63, most: 89, pairStep: 12 } as const

export const ELBOW = {
  /** Total intake of the elbow darts, mm: 1–1 1/2 in (from memory). */
  intake: 32,
  usualIntake: { least: 25, most: 38 },
  /** Distance of the centers of the two mouths, mm: about 1 in (from memory). */
  apart: 25,
  /** Length of a dart, mm: 2 1/2–3 1/2 in (from memory), and at least `shortOf` from the elbow center. */
  shortest: 65,
  longest: 90,
  shortOf: 25,
  /** Where there is room a dart ends this far from the elbow's center, mm. Our own. */
  usualShort: 60,
  /** A dart shorter than this is none, mm. Our own. */
  least: 40,
  /** Cloth left between two darts too wide for their distance, mm. Our own. */
  between: 6,
  /** How far from the elbow the seams begin to bend, mm, and as a share of the seam at most. Our own. */
  bend: 70,
  bendShare: 0.45,
} as const

/** The center opening's allowance, mm: 25, room for a closing. Common practice. */
export const OPENING_ALLOWANCE = 25

/** How far seams drafted equal may differ when walked, mm: half of what shops accept (1/32–1/16 in). */
export const EQUAL_SEAMS = 0.5

/** How much cap a cloth takes: share of the armscye, asked for and at most (REFERENCES.md section 6, from memory). */
export const CLOTH_EASE = {
  muslin: { asked: 0.06, most: 0.09 },
  'soft wool': { asked: 0.08, most: 0.12 },
  firm: { asked: 0.03, most: 0.05 },
  leather: { asked: 0.01, most: 0.02 },
} as const

/** What a draft comes to on nearly everybody; beyond it measures are taken again. */
export const LIKELY = {
  /** Back neck width, as a part of the neck base girth: a sixth to a fifth (read: School Sewing, 1916). */
  neckWidth: { least: 5, most: 6 },
  /** The drafted armscye as a share of the body's armscye girth: D5585-95 bodies (from memory) come to 1.00–1.03. Our own. */
  armscye: { least: 0.95, most: 1.12 },
  /** The drafted center front, within this of front neck to waist, mm: D5585-95 bodies come within 10. Our own. */
  centerFront: 25,
} as const

/** Where lines and marks are drawn inside the pieces; all our own. */
export const MARKS = {
  /** A width line ends this far below the shoulder point, mm. */
  belowShoulder: 25,
  /** The grain of a bodice half: ends as shares of the underarm's and the shoulder point's height. */
  bodiceGrain: { from: 0.3, to: 0.88 },
  /** And it ends this far below the neckline, mm. */
  belowNeckline: 10,
  /** The waist line is drawn from the center over this share of the width. */
  waistLine: 1 / 3,
  /** The grain of a sleeve: ends as shares of the cap height above and of the elbow's depth below the biceps line. */
  sleeveGrain: { above: 0.55, below: 0.8 },
} as const
