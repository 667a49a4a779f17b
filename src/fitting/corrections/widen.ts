import { defineCorrection } from '../correction.ts'
import { changeWidth, SLEEVE_WIDTH_DEFAULTS, sleeveWidthSettings, wordSleeveWidth } from './sleeve-width.ts'

/** Lets width into the sleeve at the upper arm, the elbow or the wrist, evenly at both underarm seams. */
export const widen = defineCorrection({
  name: 'widen',
  does: 'widens the sleeve at the upper arm, the elbow or the wrist, evenly front and back',
  answers: ['tight over the upper arm', 'the elbow binds when it bends', 'the hand does not pass the wrist'],
  settings: sleeveWidthSettings,
  defaults: SLEEVE_WIDTH_DEFAULTS,
  leaves:
    'a wider upper arm has a lower cap of the same length, or, with the cap height kept, a longer cap with more ease; rematch cap then restores the ease',
  compile: (context, settings) => changeWidth(context, settings, 1),
  word: (settings, say) => wordSleeveWidth('widen', settings, say),
})
