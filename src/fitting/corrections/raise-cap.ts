import { defineCorrection } from '../correction.ts'
import { CAP_HEIGHT_DEFAULTS, capHeightSettings, moveCapHeight, wordCapHeight } from './cap-height.ts'

/** Makes the cap taller at the crown: the sleeve hangs closer, and there is more cap to ease in. */
export const raiseCap = defineCorrection({
  name: 'raise cap',
  does: 'raises the crown of the cap along the grain, to nothing at the notches',
  answers: [
    'pulls across the top of the cap',
    'drag lines from the shoulder point down the sleeve',
    'the crown is flat',
  ],
  settings: capHeightSettings,
  defaults: CAP_HEIGHT_DEFAULTS,
  leaves: 'the cap has more ease over its armscye than before; rematch cap restores it',
  compile: (context, settings) => moveCapHeight(context, settings, 1),
  word: (settings, say) => wordCapHeight('raise', settings, say),
})
