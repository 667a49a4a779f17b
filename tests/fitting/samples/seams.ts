import type { Sample } from './sample.ts'
import { mm, moved, REFIT, WRIST } from './tape.ts'

const CAP_LINE = [
  { line: 'cap line', 'side of cap': 'front' },
  { line: 'cap line', 'side of cap': 'back' },
]

const NECKLINE = { do: 'let out', settings: { seam: 'neckline', by: '3 mm' } }

/** Corrections of any seam, and of left and right. */
export const SEAM_SAMPLES: Readonly<Record<string, readonly Sample[]>> = {
  'let out': [
    {
      name: 'the cap over the upper arm',
      written: (by) => ({
        seam: 'cap',
        at: CAP_LINE,
        by: mm(by),
        'taper to': ['shoulder notch', 'front notch', 'back notch'],
      }),
      amounts: [1, 12],
      pieces: ['sleeve'],
      apart: WRIST,
      measure: (before, after, by) =>
        ['front cap', 'back cap'].map((id) => ({
          what: `${id} moved`,
          is: moved(before, after, 'sleeve', id),
          should: by,
          within: REFIT,
        })),
    },
    {
      name: 'the side seam, to nothing at the underarm',
      written: (by) => ({ seam: 'side seam', by: mm(by), 'taper to': 'underarm' }),
      amounts: [1, 15],
      pieces: ['bodice front', 'bodice back'],
      apart: NECKLINE,
      measure: (before, after, by) =>
        ['bodice front', 'bodice back'].map((piece) => ({
          what: `${piece} moved`,
          is: moved(before, after, piece, 'side seam'),
          should: by,
          // The waist is longer by the amount square to the side seam; along the slanting waist the end goes farther.
          within: 0.05 * by + REFIT,
        })),
    },
  ],
  'take in': [
    {
      name: 'the cap at the cap line',
      written: (by) => ({
        seam: 'cap',
        at: CAP_LINE,
        by: mm(by),
        'taper to': ['shoulder notch', 'front notch', 'back notch'],
      }),
      amounts: [1, 6],
      pieces: ['sleeve'],
      apart: WRIST,
      measure: (before, after, by) =>
        ['front cap', 'back cap'].map((id) => ({
          what: `${id} moved`,
          is: moved(before, after, 'sleeve', id),
          should: by,
          within: REFIT,
        })),
    },
  ],
  hollow: [
    {
      name: 'the front armscye',
      written: (by) => ({ seam: 'front armscye', by: mm(by) }),
      amounts: [1, 6],
      pieces: ['bodice front'],
      apart: NECKLINE,
      measure: (before, after, by) => [
        { what: 'armscye moved', is: moved(before, after, 'bodice front', 'armscye'), should: by, within: REFIT },
      ],
    },
  ],
  'join sides': [
    {
      name: 'of a pair: nothing',
      written: () => ({ piece: 'sleeve' }),
      amounts: [0, 0],
      pieces: [],
      zero: (settings) => settings,
      apart: WRIST,
      oneSided: false,
      measure: (before, after) => [
        { what: 'cap moved', is: moved(before, after, 'sleeve', 'front cap'), should: 0, within: 2e-3 },
      ],
    },
  ],
}
