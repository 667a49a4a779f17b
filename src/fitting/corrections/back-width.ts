import { defineCorrection } from '../correction.ts'
import { changeWidth, WIDTH_DEFAULTS, widthSettings, wordWidth } from './change-width.ts'

/** Makes the back wider or narrower between the armscyes; `by` counts on each side. */
export const backWidth = defineCorrection({
  name: 'back width',
  does: 'moves the back armscye out or in at the width line, to nothing at the underarm and the shoulder',
  answers: ['tight across the back when reaching', 'vertical folds beside the shoulder blades'],
  settings: widthSettings,
  defaults: WIDTH_DEFAULTS,
  leaves: 'the back armscye changes its length: rematch cap draws the sleeve to it again',
  compile: (context, settings) => changeWidth(context, 'back', settings),
  word: (settings, say) => wordWidth('back', settings, say),
})
