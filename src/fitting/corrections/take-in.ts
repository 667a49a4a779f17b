import { defineCorrection } from '../correction.ts'
import { MOVE_SEAM_DEFAULTS, moveSeam, moveSeamSettings, wordMoveSeam } from './move-seam.ts'

/** Takes a seam in: as `let out`, inwards. The cloth that was pinned away is added to the allowance. */
export const takeIn = defineCorrection({
  name: 'take in',
  does: 'moves a stitching line in, tapering to nothing on both sides',
  answers: ['loose across a seam', 'folds that can be pinned away along a seam'],
  settings: moveSeamSettings,
  defaults: MOVE_SEAM_DEFAULTS,
  leaves:
    'the seam is longer or shorter than the one it is sewn to; on the cap or an armscye, rematch cap restores the ease',
  compile: (context, settings) => moveSeam(context, settings, -1),
  word: (settings, say) => wordMoveSeam('take in', settings, say),
})
