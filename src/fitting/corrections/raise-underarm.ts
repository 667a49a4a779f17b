import { defineCorrection } from '../correction.ts'
import { changeUnderarm, UNDERARM_DEFAULTS, underarmSettings, wordUnderarm } from './change-underarm.ts'

/** Raises the underarm of the bodice; the armscye changes its length, the sleeve does not. */
export const raiseUnderarm = defineCorrection({
  name: 'raise underarm',
  does: 'moves the bottom of the armscye up, to nothing at the notches; the side seams follow',
  answers: ['the armscye stands low and drags on the bodice when the arm is lifted', 'skin shows below the arm'],
  settings: underarmSettings,
  defaults: UNDERARM_DEFAULTS,
  leaves: 'the armscye is longer or shorter than before: rematch cap draws the sleeve to it again',
  compile: (context, settings) => changeUnderarm(context, settings, 1),
  word: (settings, say) => wordUnderarm('raise', settings, say),
})
