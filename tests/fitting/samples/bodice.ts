import type { Pattern } from '../../../src/pattern/pattern.ts'
import { pieceOf } from '../../../src/pattern/seam.ts'
import { cubics, mostWider, type XY } from '../measure.ts'
import type { Measured, Sample } from './sample.ts'
import { away, longer, mm, start, WRIST } from './tape.ts'

const FRONT = 'bodice front'
const BACK = 'bodice back'

/** Apart from neck, shoulder and upper armscye. */
const SIDE = { do: 'let out', settings: { seam: 'side seam', by: '4 mm', 'taper to': 'underarm' } }

/** Apart from waist and side. */
const NECKLINE = { do: 'let out', settings: { seam: 'neckline', by: '3 mm' } }

/** Corrections of the bodice. */
export const BODICE_SAMPLES: Readonly<Record<string, readonly Sample[]>> = {
  'shoulder slope': [
    {
      name: 'more slope',
      written: (by) => ({ by: mm(by), direction: 'down' }),
      amounts: [2, 15],
      pieces: [FRONT, BACK],
      apart: { do: 'dart intake', settings: { dart: 'waist dart', by: '2 mm', direction: 'more' } },
      measure: (before, after, by) =>
        [FRONT, BACK].flatMap((piece) => [
          longer(before, after, [piece, 'shoulder'], 0, 0.02),
          longer(before, after, [piece, 'armscye'], 0, 0.1),
          {
            what: `${piece}, shoulder point`,
            is: away(start(before, piece, 'shoulder'), start(after, piece, 'shoulder')),
            should: by,
            within: 0.02,
          },
        ]),
    },
  ],
  'forward shoulder': [
    {
      name: 'forward',
      written: (by) => ({ by: mm(by) }),
      amounts: [3, 15],
      pieces: [FRONT, BACK, 'sleeve'],
      apart: SIDE,
      measure: (before, after, by) => [
        longer(before, after, [FRONT, 'armscye'], -by, 0.1),
        longer(before, after, [BACK, 'armscye'], by, 0.1),
      ],
    },
  ],
  'shoulder length': [
    {
      name: 'longer',
      written: (by) => ({ by: mm(by), direction: 'longer' }),
      amounts: [2, 15],
      pieces: [FRONT, BACK],
      apart: SIDE,
      measure: (before, after, by) =>
        [FRONT, BACK].map((piece) => longer(before, after, [piece, 'shoulder'], by, 0.02)),
    },
    {
      name: 'shorter',
      written: (by) => ({ by: mm(by), direction: 'shorter' }),
      amounts: [2, 12],
      pieces: [FRONT, BACK],
      apart: SIDE,
      measure: (before, after, by) =>
        [FRONT, BACK].map((piece) => longer(before, after, [piece, 'shoulder'], -by, 0.02)),
    },
  ],
  'raise underarm': [
    {
      name: 'to nothing at the notches',
      written: (by) => ({ by: mm(by) }),
      amounts: [2, 12],
      pieces: [FRONT, BACK],
      apart: NECKLINE,
      measure: (before, after, by) =>
        [FRONT, BACK].map((piece) => longer(before, after, [piece, 'side seam'], by, 0.05)),
    },
  ],
  'lower underarm': [
    {
      name: 'to nothing at the notches',
      written: (by) => ({ by: mm(by) }),
      amounts: [2, 15],
      pieces: [FRONT, BACK],
      apart: NECKLINE,
      measure: (before, after, by) =>
        [FRONT, BACK].map((piece) => longer(before, after, [piece, 'side seam'], -by, 0.05)),
    },
  ],
  'back width': [
    {
      name: 'wider',
      written: (by) => ({ by: mm(by), direction: 'wider' }),
      amounts: [1, 10],
      pieces: [BACK],
      apart: SIDE,
      measure: (before, after, by) => [wider(before, after, BACK, by)],
    },
  ],
  'front width': [
    {
      name: 'narrower',
      written: (by) => ({ by: mm(by), direction: 'narrower' }),
      amounts: [1, 8],
      pieces: [FRONT],
      apart: SIDE,
      measure: (before, after, by) => [wider(before, after, FRONT, -by)],
    },
  ],
  lengthen: [
    {
      name: 'the bodice',
      written: (by) => ({ part: 'bodice', by: mm(by) }),
      amounts: [2, 30],
      pieces: [FRONT, BACK],
      oneSided: false,
      apart: NECKLINE,
      measure: (before, after, by) => [
        longer(before, after, [FRONT, 'center front'], by, 0.02),
        longer(before, after, [BACK, 'center back'], by, 0.02),
      ],
    },
    {
      name: 'the sleeve above the elbow',
      written: (by) => ({ part: 'above elbow', by: mm(by) }),
      amounts: [2, 30],
      pieces: ['sleeve'],
      measure: (before, after, by) => [
        longer(before, after, ['sleeve', 'front underarm seam'], by, 0.05 * by),
        longer(before, after, ['sleeve', 'back underarm seam'], by, 0.05 * by),
      ],
    },
  ],
  shorten: [
    {
      name: 'the sleeve below the elbow',
      written: (by) => ({ part: 'below elbow', by: mm(by) }),
      amounts: [2, 25],
      pieces: ['sleeve'],
      measure: (before, after, by) => [
        longer(before, after, ['sleeve', 'front underarm seam'], -by, 0.08 * by),
        longer(before, after, ['sleeve', 'back underarm seam'], -by, 0.08 * by),
      ],
    },
  ],
  'drop neckline': [
    {
      name: 'at the center front',
      written: (by) => ({ at: 'center front', by: mm(by) }),
      amounts: [2, 40],
      pieces: [FRONT],
      oneSided: false,
      apart: SIDE,
      measure: (before, after, by) => [longer(before, after, [FRONT, 'center front'], -by, 0.02)],
    },
  ],
  'raise neckline': [
    {
      name: 'at the center back',
      written: (by) => ({ at: 'center back', by: mm(by) }),
      amounts: [2, 15],
      pieces: [BACK],
      oneSided: false,
      apart: SIDE,
      measure: (before, after, by) => [longer(before, after, [BACK, 'center back'], by, 0.02)],
    },
  ],
  'round back': [
    {
      name: 'a shoulder dart takes it up',
      written: (by) => ({ by: mm(by) }),
      amounts: [2, 15],
      pieces: [BACK],
      apart: WRIST,
      oneSided: false,
      measure: (before, after, by) => [
        longer(before, after, [BACK, 'center back'], by, 0.02),
        ...['shoulder', 'neckline', 'side seam', 'waist'].map((id) => longer(before, after, [BACK, id], 0, 0.02)),
        longer(before, after, [BACK, 'armscye'], 0, 0.5),
      ],
    },
  ],
  'sway back': [
    {
      name: 'pinned above the waist',
      written: (by) => ({ by: mm(by) }),
      amounts: [2, 20],
      pieces: [BACK],
      apart: NECKLINE,
      oneSided: false,
      measure: (before, after, by) => [
        longer(before, after, [BACK, 'center back'], -by, 0.02),
        longer(before, after, [BACK, 'side seam'], 0, 0.001),
      ],
    },
  ],
  'move bust point': [
    {
      name: 'down',
      written: (by) => ({ by: mm(by), direction: 'down' }),
      amounts: [2, 20],
      pieces: [FRONT],
      apart: NECKLINE,
      measure: (before, after, by) => [
        {
          what: 'point of the waist dart',
          is: pointHeight(before) - pointHeight(after),
          should: by,
          within: 1e-6,
        },
        longer(before, after, [FRONT, 'side seam'], 0, 0.5),
        longer(before, after, [FRONT, 'waist'], 0, 0.5),
      ],
    },
    {
      name: 'to a point between two marks',
      written: (distance) => ({ to: { from: 'bust point', toward: 'underarm', distance: mm(distance) } }),
      amounts: [2, 20],
      pieces: [FRONT],
      zero: () => ({ to: { landmark: 'bust point' } }),
      apart: NECKLINE,
      measure: (before, after, distance) => [
        { what: 'bust point', is: away(bustPoint(before), bustPoint(after)), should: distance, within: 1e-6 },
        {
          what: 'toward the underarm',
          is:
            away(bustPoint(before), start(before, FRONT, 'armscye')) -
            away(bustPoint(after), start(before, FRONT, 'armscye')),
          should: distance,
          within: 1e-6,
        },
      ],
    },
  ],
  'dart intake': [
    {
      name: 'more into the waist darts',
      written: (by) => ({ dart: 'waist dart', by: mm(by), direction: 'more' }),
      amounts: [1, 8],
      pieces: [FRONT, BACK],
      apart: NECKLINE,
      measure: (before, after, by) => [FRONT, BACK].map((piece) => longer(before, after, [piece, 'waist'], -by, 0.1)),
    },
  ],
  'move dart': [
    {
      name: 'a share of the waist dart to the shoulder',
      written: (percent) => ({ dart: 'waist dart', of: 'front', 'to seam': 'shoulder', share: `${percent} %` }),
      amounts: [20, 100],
      pieces: [FRONT],
      zero: (settings) => ({ ...settings, share: 0 }),
      apart: NECKLINE,
      measure: (before, after) =>
        ['waist', 'side seam', 'armscye', 'shoulder', 'neckline'].map((id) =>
          longer(before, after, [FRONT, id], 0, 0.02),
        ),
    },
  ],
}

/** Across the body, level, where it changed most. */
function wider(before: Pattern, after: Pattern, piece: string, by: number): Measured {
  const path = (pattern: Pattern) => cubics(pieceOf(pattern, piece), 'armscye')
  return { what: `${piece}, width at the armscye`, is: mostWider(path(before), path(after)), should: by, within: 0.05 }
}

function pointHeight(pattern: Pattern): number {
  return pieceOf(pattern, FRONT).darts.find((dart) => dart.id === 'waist dart')?.point.y ?? Number.NaN
}

function bustPoint(pattern: Pattern): XY {
  const mark = pieceOf(pattern, FRONT).landmarks.find(({ id }) => id === 'bust point')
  if (!mark || !('at' in mark)) throw new Error('no bust point')
  return mark.at
}
