import { defineCorrection } from '../correction.ts'
import { changeUnderarm, UNDERARM_DEFAULTS, underarmSettings, wordUnderarm } from './change-underarm.ts'

/** Lowers the underarm of the bodice; the armscye changes its length, the sleeve does not. */
export const lowerUnderarm = defineCorrection({
  name: 'lower underarm',
  does: 'moves the bottom of the armscye down, to nothing at the notches; the side seams follow',
  answers: ['the armscye cuts under the arm', 'binds under the arm at rest'],
  settings: underarmSettings,
  defaults: UNDERARM_DEFAULTS,
  leaves: 'the armscye is longer or shorter than before: rematch cap draws the sleeve to it again',
  compile: (context, settings) => changeUnderarm(context, settings, -1),
  word: (settings, say) => wordUnderarm('lower', settings, say),
})
