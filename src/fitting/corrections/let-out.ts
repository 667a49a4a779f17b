import { defineCorrection } from '../correction.ts'
import { MOVE_SEAM_DEFAULTS, moveSeam, moveSeamSettings, wordMoveSeam } from './move-seam.ts'

/**
 * Lets a seam out: its stitching line moves into the allowance, at one or more places, along a span, or evenly
 * from end to end. `seam: cap` means both halves as one line.
 */
export const letOut = defineCorrection({
  name: 'let out',
  does: 'moves a stitching line out into its allowance, tapering to nothing on both sides',
  answers: ['tight across a seam', 'drag lines across the upper arm', 'a seam that strains or gapes'],
  settings: moveSeamSettings,
  defaults: MOVE_SEAM_DEFAULTS,
  leaves:
    'the seam is longer or shorter than the one it is sewn to; on the cap or an armscye, rematch cap restores the ease',
  compile: (context, settings) => moveSeam(context, settings, 1),
  word: (settings, say) => wordMoveSeam('let out', settings, say),
})
