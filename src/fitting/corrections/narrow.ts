import { defineCorrection } from '../correction.ts'
import { changeWidth, SLEEVE_WIDTH_DEFAULTS, sleeveWidthSettings, wordSleeveWidth } from './sleeve-width.ts'

/** Takes width out of the sleeve at the upper arm, the elbow or the wrist, evenly at both underarm seams. */
export const narrow = defineCorrection({
  name: 'narrow',
  does: 'narrows the sleeve at the upper arm, the elbow or the wrist, evenly front and back',
  answers: ['the sleeve is loose round the upper arm', 'the sleeve hangs off the elbow', 'the wrist is wide'],
  settings: sleeveWidthSettings,
  defaults: SLEEVE_WIDTH_DEFAULTS,
  leaves:
    'a narrower upper arm has a higher cap of the same length, or, with the cap height kept, a shorter cap with less ease; rematch cap then restores the ease',
  compile: (context, settings) => changeWidth(context, settings, -1),
  word: (settings, say) => wordSleeveWidth('narrow', settings, say),
})
