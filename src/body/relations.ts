import type { MeasureName } from './measure.ts'
import { NARROWEST_ARMSCYE } from './together.ts'

/** How measures of one body go together, as they were taken: mm, radians, in the order of `names`. */
export interface Relation {
  readonly code: string
  readonly names: readonly MeasureName[]
  /** What is expected, in words. */
  readonly expected: string
  /** False: look again. */
  readonly likely: (...values: number[]) => boolean
  /** False: there is no such body. Left out where any body can be. */
  readonly possible?: (...values: number[]) => boolean
}

/**
 * Cross-checks between measures. Shares and differences are common practice and our own, set so that the bodies of
 * ASTM D5585-95 (from memory) and all but a few of the survey's pass.
 */
export const RELATIONS: readonly Relation[] = [
  {
    code: 'widths-and-bust',
    names: ['back width', 'front width', 'bust girth'],
    expected: `half the bust girth wider than half the back width, half the front width and an armscye of ${NARROWEST_ARMSCYE} mm`,
    likely: (back, front, bust) => bust - back - front >= 2 * NARROWEST_ARMSCYE,
    possible: (back, front, bust) => bust > back + front,
  },
  {
    code: 'back-width-and-bust',
    names: ['back width', 'bust girth'],
    expected: 'a back width of 30 to 50 % of the bust girth',
    likely: (back, bust) => back > 0.3 * bust && back < 0.5 * bust,
    possible: (back, bust) => back < 0.55 * bust,
  },
  {
    code: 'front-width-and-bust',
    names: ['front width', 'bust girth'],
    expected: 'a front width of 27 to 47 % of the bust girth',
    likely: (front, bust) => front > 0.27 * bust && front < 0.47 * bust,
    possible: (front, bust) => front < 0.55 * bust,
  },
  {
    code: 'scye-and-waist',
    names: ['scye depth', 'back waist length'],
    expected: 'a scye depth of 36 to 58 % of the back waist length',
    likely: (scye, waist) => scye > 0.36 * waist && scye < 0.58 * waist,
    possible: (scye, waist) => scye < waist,
  },
  {
    code: 'bust-point-and-waist',
    names: ['neck to bust point', 'front waist length'],
    expected: 'a bust point well above the waist',
    likely: (bustPoint, waist) => bustPoint < waist - 80,
    possible: (bustPoint, waist) => bustPoint < waist,
  },
  {
    code: 'bust-point-and-back',
    names: ['neck to bust point', 'back waist length'],
    expected: 'a bust point at 45 to 85 % of the back waist length',
    likely: (bustPoint, back) => bustPoint > 0.45 * back && bustPoint < 0.85 * back,
    possible: (bustPoint, back) => bustPoint < 1.1 * back,
  },
  {
    code: 'bust-points-and-bust',
    names: ['bust point width', 'bust girth'],
    expected: 'bust points nearer than a quarter of the bust girth',
    likely: (width, bust) => width < 0.25 * bust && width > 0.15 * bust,
    possible: (width, bust) => width < bust / 2,
  },
  {
    code: 'elbow-and-arm',
    names: ['shoulder to elbow', 'outer arm length'],
    expected: 'an elbow at 48 to 68 % of the outer arm length',
    likely: (elbow, arm) => elbow > 0.48 * arm && elbow < 0.68 * arm,
    possible: (elbow, arm) => elbow < arm,
  },
  {
    code: 'waist-and-bust',
    names: ['waist girth', 'bust girth'],
    expected: 'a waist girth of 55 to 125 % of the bust girth',
    likely: (waist, bust) => waist > 0.55 * bust && waist < 1.25 * bust,
  },
  {
    code: 'front-and-back-width',
    names: ['front width', 'back width'],
    expected: 'a front width of 75 to 108 % of the back width',
    likely: (front, back) => front > 0.75 * back && front < 1.08 * back,
  },
  {
    code: 'front-and-back-length',
    names: ['front waist length', 'back waist length'],
    expected: 'a front waist length from 25 mm shorter to 115 mm longer than the back waist length',
    likely: (front, back) => front > back - 25 && front < back + 115,
  },
  {
    code: 'center-front-and-front',
    names: ['front neck to waist', 'front waist length'],
    expected: 'a center front shorter than the front waist length, which starts higher and runs over the bust',
    likely: (center, front) => center < front,
  },
  {
    code: 'wrist-and-hand',
    names: ['wrist girth', 'hand girth'],
    expected: 'a wrist no wider than the hand',
    likely: (wrist, hand) => wrist <= hand,
  },
  {
    code: 'wrist-and-elbow',
    names: ['wrist girth', 'elbow girth'],
    expected: 'a wrist narrower than the elbow',
    likely: (wrist, elbow) => wrist < elbow,
  },
  {
    code: 'elbow-and-upper-arm',
    names: ['elbow girth', 'upper arm girth'],
    expected: 'an elbow of 75 to 120 % of the upper arm girth',
    likely: (elbow, arm) => elbow > 0.75 * arm && elbow < 1.2 * arm,
  },
  {
    code: 'flexed-and-relaxed',
    names: ['upper arm girth flexed', 'upper arm girth'],
    expected: 'a flexed upper arm at least as wide as the relaxed one, by at most a quarter',
    likely: (flexed, relaxed) => flexed >= relaxed && flexed < 1.25 * relaxed,
  },
  {
    code: 'armscye-and-upper-arm',
    names: ['armscye girth', 'upper arm girth'],
    expected: 'an armscye girth of 105 to 190 % of the upper arm girth',
    likely: (armscye, arm) => armscye > 1.05 * arm && armscye < 1.9 * arm,
  },
  {
    code: 'shoulder-and-back-width',
    names: ['neck base girth', 'shoulder length', 'shoulder slope', 'back width'],
    expected: 'shoulder points within 45 mm of the back width line',
    // A back neck width of N/5.5, the middle of N/6 and N/5 (REFERENCES.md section 3).
    likely: (neck, shoulder, slope, back) => Math.abs(neck / 5.5 + shoulder * Math.cos(slope) - back / 2) < 45,
  },
]
