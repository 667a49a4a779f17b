import type { Pattern } from '../../../src/pattern/pattern.ts'
import { pieceOf } from '../../../src/pattern/seam.ts'
import type { XY } from '../measure.ts'
import type { Sample } from './sample.ts'
import {
  away,
  bicepsWidth,
  capEase,
  capTop,
  intakes,
  longer,
  mm,
  moved,
  notchPlace,
  REFIT,
  sewnLength,
  WRIST,
} from './tape.ts'

/** Apart from what is done to the lower sleeve. */
const CAP = {
  do: 'let out',
  settings: {
    seam: 'cap',
    at: { line: 'cap line', 'side of cap': 'front' },
    by: '4 mm',
    'taper to': ['shoulder notch', 'front notch'],
  },
}

/** Corrections of the sleeve. */
export const SLEEVE_SAMPLES: Readonly<Record<string, readonly Sample[]>> = {
  'raise cap': [
    {
      name: 'at the crown',
      written: (by) => ({ by: mm(by) }),
      amounts: [1, 8],
      pieces: ['sleeve'],
      apart: WRIST,
      measure: (before, after, by) => [
        { what: 'crown rose', is: capTop(after) - capTop(before), should: by, within: REFIT },
      ],
    },
  ],
  'lower cap': [
    {
      name: 'at the crown',
      written: (by) => ({ by: mm(by) }),
      amounts: [1, 5],
      pieces: ['sleeve'],
      apart: WRIST,
      measure: (before, after, by) => [
        { what: 'crown fell', is: capTop(before) - capTop(after), should: by, within: REFIT },
      ],
    },
  ],
  'turn sleeve': [
    {
      name: 'forward',
      written: (by) => ({ direction: 'forward', by: mm(by) }),
      amounts: [2, 15],
      pieces: ['sleeve'],
      apart: WRIST,
      measure: (before, after, by) => {
        const [was, now] = [notchPlace(before, 'shoulder notch'), notchPlace(after, 'shoulder notch')]
        return [
          { what: 'outline', is: moved(before, after, 'sleeve', 'front cap'), should: 0, within: 2e-3 },
          // Over the nearly level crown the way along the cap is little longer than the chord.
          {
            what: 'shoulder notch',
            is: Math.hypot(now.x - was.x, now.y - was.y),
            should: by,
            within: 0.03 * by + 0.01,
          },
          { what: 'toward the front', is: Math.sign(now.x - was.x), should: 1, within: 0 },
        ]
      },
    },
  ],
  'underarm reach': [
    {
      name: 'at the underarm',
      written: (by) => ({ by: mm(by), 'along cap': '38 mm' }),
      amounts: [2, 15],
      pieces: ['sleeve'],
      apart: WRIST,
      measure: (before, after, by) =>
        ['front underarm seam', 'back underarm seam'].map((id) => ({
          what: `${id} longer`,
          is: sewnLength(after, 'sleeve', id) - sewnLength(before, 'sleeve', id),
          should: by,
          within: 0.1,
        })),
    },
  ],
  'rematch cap': [
    {
      name: 'to an ease asked for',
      written: (ease) => ({ ease: mm(ease) }),
      amounts: [18, 40],
      pieces: ['sleeve'],
      zero: () => ({}),
      apart: WRIST,
      measure: (_, after, ease) => [{ what: 'ease of the cap', is: capEase(after), should: ease, within: 0.05 }],
    },
  ],
  widen: [
    {
      name: 'the upper arm',
      written: (by) => ({ at: 'upper arm', by: mm(by) }),
      amounts: [2, 14],
      pieces: ['sleeve'],
      apart: WRIST,
      measure: (before, after, by) => [
        { what: 'biceps width', is: bicepsWidth(after) - bicepsWidth(before), should: by, within: 0.02 },
        longer(before, after, ['sleeve', 'front cap'], 0, 0.05),
        longer(before, after, ['sleeve', 'back cap'], 0, 0.05),
      ],
    },
    {
      name: 'the wrist',
      written: (by) => ({ at: 'wrist', by: mm(by) }),
      amounts: [2, 14],
      pieces: ['sleeve'],
      apart: CAP,
      measure: (before, after, by) => [longer(before, after, ['sleeve', 'wrist'], by, 0.05 * by)],
    },
  ],
  narrow: [
    {
      name: 'the upper arm',
      written: (by) => ({ at: 'upper arm', by: mm(by) }),
      amounts: [2, 10],
      pieces: ['sleeve'],
      apart: WRIST,
      measure: (before, after, by) => [
        { what: 'biceps width', is: bicepsWidth(before) - bicepsWidth(after), should: by, within: 0.02 },
        longer(before, after, ['sleeve', 'front cap'], 0, 0.05),
        longer(before, after, ['sleeve', 'back cap'], 0, 0.05),
      ],
    },
  ],
  'move elbow darts': [
    {
      name: 'down',
      written: (by) => ({ direction: 'down', by: mm(by) }),
      amounts: [2, 20],
      pieces: ['sleeve'],
      apart: CAP,
      measure: (before, after, by) => [
        {
          what: 'intake',
          is: intakes(after, 'sleeve', 'elbow dart'),
          should: intakes(before, 'sleeve', 'elbow dart'),
          within: 0.01,
        },
        longer(before, after, ['sleeve', 'back underarm seam'], 0, 0.05),
        {
          what: 'upper dart lower',
          is: away(upperMouth(before), upperMouth(after)),
          should: by,
          // Along a seam that bends a little there.
          within: 0.02 * by + 0.02,
        },
      ],
    },
  ],
  'elbow dart intake': [
    {
      name: 'of both together',
      written: (intake) => ({ intake: mm(intake) }),
      amounts: [22, 44],
      pieces: ['sleeve'],
      zero: (_, pattern) => ({ intake: intakes(pattern, 'sleeve', 'elbow dart') }),
      apart: CAP,
      measure: (before, after, intake) => [
        { what: 'intake', is: intakes(after, 'sleeve', 'elbow dart'), should: intake, within: 0.02 },
        longer(before, after, ['sleeve', 'back underarm seam'], 0),
        longer(before, after, ['sleeve', 'front underarm seam'], 0),
      ],
    },
  ],
}

function upperMouth(pattern: Pattern): XY {
  const dart = pieceOf(pattern, 'sleeve').darts.find((d) => d.id === 'elbow dart upper')
  if (!dart) throw new Error('no upper elbow dart')
  return dart.mouth[0]
}
