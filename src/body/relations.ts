import { percent } from '../base/percent.ts'
import { cos } from '../base/trig.ts'
import type { MeasureName } from './measure.ts'
import { NARROWEST_ARMSCYE } from './together.ts'

type Range = readonly [least: number, most: number]

/** How measures of one body go together, as they were taken: mm, radians, in the order of `names`. */
export interface Relation {
  readonly code: string
  readonly names: readonly MeasureName[]
  /** What is compared: mm, or a share. */
  readonly figure: (...values: number[]) => number
  /** The figure in words, for the reader of a finding; lengths in mm. */
  readonly says: (figure: number) => string
  /** What is expected, in words. */
  readonly expected: string
  /** At either end or between: nothing to say. Outside: look again. */
  readonly likely: Range
  /** At either end or outside: there is no such body. Left out where any body can be. */
  readonly possible?: Range
  /** What to do where the figure is below what is likely, and above. */
  readonly below: string
  readonly above: string
}

const WAIST = 'the waist, midway between the lowest rib and the top of the hip bone'
const BACK_WIDTH = 'measure across the back from armscye to armscye, at the middle of the armscye, arms down'
const FRONT_WIDTH = 'measure across the front from armscye to armscye, at the middle of the armscye, arms down'
const BUST = 'measure the bust round its fullest part, tape level'
const BACK_WAIST = `measure from the nape bone down the spine to ${WAIST}`
const SCYE = 'measure from the nape bone down the spine to the level of the armpit'
const FRONT_WAIST = `measure from the side of the neck base over the bust point straight down to ${WAIST}`
const TO_BUST_POINT = 'measure from the side of the neck base to the bust point'
const CENTER_FRONT = `measure from the pit of the throat down the center front to ${WAIST}`
const SHOULDER = 'measure from the side of the neck base to the bony shoulder point'

/**
 * Cross-checks between measures. Shares and differences are common practice and our own, set so that the bodies of
 * ASTM D5585-95 (from memory), the girths of D5585-11 (read) and all but a few of the survey's pass.
 */
export const RELATIONS: readonly Relation[] = [
  {
    code: 'widths-and-bust',
    names: ['back width', 'front width', 'bust girth'],
    figure: (back, front, bust) => (bust - back - front) / 2,
    says: (room) =>
      room > 0 ? `${mm(room)} for the armscye between back and front` : 'no armscye left between back and front',
    expected: `at least ${NARROWEST_ARMSCYE} mm for the armscye`,
    likely: [NARROWEST_ARMSCYE, Infinity],
    possible: [0, Infinity],
    below: `${BACK_WIDTH}; across the front the same; and the bust round its fullest part, level`,
    above: `${BACK_WIDTH}; and across the front the same`,
  },
  {
    code: 'back-width-and-bust',
    names: ['back width', 'bust girth'],
    figure: (back, bust) => back / bust,
    says: (share) => `the back is ${percent(share)} of the bust`,
    expected: 'a back width of 30 to 50 % of the bust girth',
    likely: [0.3, 0.5],
    possible: [0, 0.55],
    below: `${BACK_WIDTH}; and ${BUST}`,
    above: `${BACK_WIDTH}, not from shoulder point to shoulder point; and ${BUST}`,
  },
  {
    code: 'front-width-and-bust',
    names: ['front width', 'bust girth'],
    figure: (front, bust) => front / bust,
    says: (share) => `the front is ${percent(share)} of the bust`,
    expected: 'a front width of 27 to 47 % of the bust girth',
    likely: [0.27, 0.47],
    possible: [0, 0.55],
    below: `${FRONT_WIDTH}; and ${BUST}`,
    above: `${FRONT_WIDTH}, above the bust, not over it; and ${BUST}`,
  },
  {
    code: 'scye-and-waist',
    names: ['scye depth', 'back waist length'],
    figure: (scye, waist) => scye / waist,
    says: (share) => `the armpit lies at ${percent(share)} of the way to the waist`,
    expected: 'a scye depth of 36 to 58 % of the back waist length',
    likely: [0.36, 0.58],
    possible: [0, 1],
    below: `the waist may have been taken too low: ${BACK_WAIST}; and to the level of the armpit`,
    above: `the armpit may have been taken too low, or the waist too high: ${SCYE}; and on to ${WAIST}`,
  },
  {
    code: 'bust-point-and-waist',
    names: ['neck to bust point', 'front waist length'],
    figure: (bustPoint, waist) => waist - bustPoint,
    says: (below) => (below > 0 ? `${mm(below)} from the bust point to the waist` : 'a bust point below the waist'),
    expected: 'from 80 mm to 280 mm from the bust point to the waist',
    likely: [80, 280],
    possible: [0, Infinity],
    below: `${TO_BUST_POINT}, and on straight down to ${WAIST}`,
    above: `the waist may have been taken too low: ${TO_BUST_POINT}, and on straight down to ${WAIST}`,
  },
  {
    code: 'bust-point-and-back',
    names: ['neck to bust point', 'back waist length'],
    figure: (bustPoint, back) => bustPoint / back,
    says: (share) => `the bust point lies at ${percent(share)} of the back waist length`,
    expected: 'a bust point at 45 to 85 % of the back waist length',
    likely: [0.45, 0.85],
    possible: [0, 1.1],
    below: `the waist may have been taken too low: ${BACK_WAIST}; and ${TO_BUST_POINT}`,
    above: `${TO_BUST_POINT}; and from the nape bone down the spine to ${WAIST}`,
  },
  {
    code: 'bust-points-and-bust',
    names: ['bust point width', 'bust girth'],
    figure: (width, bust) => width / bust,
    says: (share) => `the bust points are ${percent(share)} of the bust apart`,
    expected: 'bust points 15 to 25 % of the bust girth apart',
    likely: [0.15, 0.25],
    possible: [0, 0.5],
    below: `measure straight from bust point to bust point; and ${BUST}`,
    above: `measure straight from bust point to bust point, not round to the sides; and ${BUST}`,
  },
  {
    code: 'upper-chest-and-bust',
    names: ['upper chest girth', 'bust girth'],
    figure: (chest, bust) => chest / bust,
    says: (share) => `the upper chest is ${percent(share)} of the bust`,
    expected: 'an upper chest girth of 78 to 108 % of the bust girth',
    likely: [0.78, 1.08],
    below: `measure round the chest high under the arms, above the bust; and ${BUST}`,
    above: `measure round the chest high under the arms, not over the arms; and ${BUST}`,
  },
  {
    code: 'elbow-and-arm',
    names: ['shoulder to elbow', 'outer arm length'],
    figure: (elbow, arm) => elbow / arm,
    says: (share) => `the elbow lies at ${percent(share)} of the arm`,
    expected: 'an elbow at 48 to 68 % of the outer arm length',
    likely: [0.48, 0.68],
    possible: [0, 1],
    below: 'measure from the shoulder point to the elbow, arm bent, and from the shoulder point down to the wrist bone',
    above: 'measure from the shoulder point, not from the neck, to the elbow, arm bent, and on to the wrist bone',
  },
  {
    code: 'waist-and-bust',
    names: ['waist girth', 'bust girth'],
    figure: (waist, bust) => waist / bust,
    says: (share) => `the waist is ${percent(share)} of the bust`,
    expected: 'a waist girth of 55 to 125 % of the bust girth',
    likely: [0.55, 1.25],
    below: `measure round ${WAIST}; and ${BUST}`,
    above: `measure round ${WAIST}, not lower; and ${BUST}`,
  },
  {
    code: 'front-and-back-width',
    names: ['front width', 'back width'],
    figure: (front, back) => front / back,
    says: (share) => `the front is ${percent(share)} of the back`,
    expected: 'a front width of 75 to 108 % of the back width',
    likely: [0.75, 1.08],
    below: `${FRONT_WIDTH}; and across the back the same`,
    above: `${FRONT_WIDTH}, above the bust; and across the back the same`,
  },
  {
    code: 'front-and-back-length',
    names: ['front waist length', 'back waist length'],
    figure: (front, back) => front - back,
    says: (longer) => `the front is ${mm(Math.abs(longer))} ${longer < 0 ? 'shorter' : 'longer'} than the back`,
    expected: 'a front waist length from 25 mm shorter to 115 mm longer than the back waist length',
    likely: [-25, 115],
    below: `both end at one waist, midway between the lowest rib and the top of the hip bone: ${FRONT_WAIST}; ${BACK_WAIST}`,
    above: `the front may have been taken to below the waist: ${FRONT_WAIST}`,
  },
  {
    code: 'center-front-and-front',
    names: ['front neck to waist', 'front waist length'],
    figure: (center, front) => front - center,
    says: (longer) => `the front waist length is ${mm(Math.abs(longer))} ${longer < 0 ? 'shorter' : 'longer'}`,
    expected: 'a front waist length from 20 mm to 160 mm longer: it starts at the side of the neck, which lies higher',
    likely: [20, 160],
    below: `${CENTER_FRONT}; and ${FRONT_WAIST}`,
    above: `both end at one waist: ${CENTER_FRONT}; and ${FRONT_WAIST}`,
  },
  {
    code: 'center-front-and-back',
    names: ['front neck to waist', 'back waist length'],
    figure: (center, back) => center / back,
    says: (share) => `the center front is ${percent(share)} of the center back`,
    expected: 'a front neck to waist of 72 to 105 % of the back waist length',
    likely: [0.72, 1.05],
    below: `both end at one waist: ${CENTER_FRONT}; and from the nape bone down the spine to the same level`,
    above: `the front may have been taken to below the waist: ${CENTER_FRONT}`,
  },
  {
    code: 'wrist-and-hand',
    names: ['wrist girth', 'hand girth'],
    figure: (wrist, hand) => wrist / hand,
    says: (share) => `the wrist is ${percent(share)} of the hand`,
    expected: 'a wrist of 55 to 100 % of the hand girth',
    likely: [0.55, 1],
    below: 'measure round the wrist at the outer wrist bone, and round the widest part of the hand, thumb tucked in',
    above: 'measure round the widest part of the hand, thumb tucked in, and round the wrist at the outer wrist bone',
  },
  {
    code: 'wrist-and-elbow',
    names: ['wrist girth', 'elbow girth'],
    figure: (wrist, elbow) => wrist / elbow,
    says: (share) => `the wrist is ${percent(share)} of the elbow`,
    expected: 'a wrist of 40 to 95 % of the elbow girth',
    likely: [0.4, 0.95],
    below: 'measure round the wrist at the outer wrist bone, and round the elbow with the arm bent',
    above: 'measure round the elbow with the arm bent, and round the wrist at the outer wrist bone',
  },
  {
    code: 'elbow-and-upper-arm',
    names: ['elbow girth', 'upper arm girth'],
    figure: (elbow, arm) => elbow / arm,
    says: (share) => `the elbow is ${percent(share)} of the upper arm`,
    expected: 'an elbow of 75 to 120 % of the upper arm girth',
    likely: [0.75, 1.2],
    below: 'measure round the elbow with the arm bent, and round the upper arm midway from shoulder point to elbow',
    above: 'measure round the upper arm midway from shoulder point to elbow, and round the elbow with the arm bent',
  },
  {
    code: 'flexed-and-relaxed',
    names: ['upper arm girth flexed', 'upper arm girth'],
    figure: (flexed, relaxed) => flexed / relaxed,
    says: (share) => `the flexed arm is ${percent(share)} of the relaxed one`,
    expected: 'a flexed upper arm of 100 to 125 % of the relaxed one',
    likely: [1, 1.25],
    below: 'the two may be exchanged: measure one place, midway from shoulder point to elbow, arm hanging, then tensed',
    above: 'measure one place, midway from shoulder point to elbow, first with the arm hanging, then bent and tensed',
  },
  {
    code: 'armscye-and-upper-arm',
    names: ['armscye girth', 'upper arm girth'],
    figure: (armscye, arm) => armscye / arm,
    says: (share) => `the armhole is ${percent(share)} of the upper arm`,
    expected: 'an armscye girth of 105 to 190 % of the upper arm girth',
    likely: [1.05, 1.9],
    below: 'measure round the armhole of the body, over the shoulder point and through the armpit, arm hanging',
    above: 'measure round the armhole of the body, close in at the armpit, not round the sleeve or the raised arm',
  },
  {
    code: 'armscye-and-scye',
    names: ['armscye girth', 'scye depth'],
    figure: (armscye, scye) => armscye / scye,
    says: (times) => `the armhole is ${times.toFixed(1)} times as long as the scye is deep`,
    expected: 'an armscye girth of 1.6 to 2.7 times the scye depth',
    likely: [1.6, 2.7],
    below: `measure round the armhole of the body, over the shoulder point and through the armpit; and ${SCYE}`,
    above: `${SCYE}; and round the armhole of the body, close in at the armpit`,
  },
  {
    code: 'shoulder-and-back-width',
    names: ['neck base girth', 'shoulder length', 'shoulder slope', 'back width'],
    // A back neck width of N/5.5, the middle of N/6 and N/5 (REFERENCES.md section 3).
    figure: (neck, shoulder, slope, back) => neck / 5.5 + shoulder * cos(slope) - back / 2,
    says: (outside) => `shoulder points ${mm(Math.abs(outside))} ${outside < 0 ? 'inside' : 'outside'} the back width`,
    expected: 'shoulder points within 45 mm of the back width line',
    likely: [-45, 45],
    below: `${SHOULDER}; and across the back from armscye to armscye, at the middle of the armscye, arms down`,
    above: `${SHOULDER}, not out over the arm; and across the back from armscye to armscye, arms down`,
  },
]

function mm(value: number): string {
  return `${Math.round(value)} mm`
}
