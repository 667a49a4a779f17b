import { defineCorrection } from '../correction.ts'
import { CAP_HEIGHT_DEFAULTS, capHeightSettings, moveCapHeight, wordCapHeight } from './cap-height.ts'

/** Makes the cap lower at the crown: the fold that stood there is gone, and there is less cap to ease in. */
export const lowerCap = defineCorrection({
  name: 'lower cap',
  does: 'lowers the crown of the cap along the grain, to nothing at the notches',
  answers: [
    'a fold lies across the top of the cap',
    'the crown stands up above the shoulder',
    'too much to ease in at the crown',
  ],
  settings: capHeightSettings,
  defaults: CAP_HEIGHT_DEFAULTS,
  leaves: 'the cap has less ease over its armscye than before; rematch cap restores it',
  compile: (context, settings) => moveCapHeight(context, settings, -1),
  word: (settings, say) => wordCapHeight('lower', settings, say),
})
