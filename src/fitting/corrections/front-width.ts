import { defineCorrection } from '../correction.ts'
import { changeWidth, WIDTH_DEFAULTS, widthSettings, wordWidth } from './change-width.ts'

/** Makes the front wider or narrower between the armscyes; `by` counts on each side. */
export const frontWidth = defineCorrection({
  name: 'front width',
  does: 'moves the front armscye out or in at the width line, to nothing at the underarm and the shoulder',
  answers: ['tight across the chest', 'vertical folds in front of the arm'],
  settings: widthSettings,
  defaults: WIDTH_DEFAULTS,
  leaves: 'the front armscye changes its length: rematch cap draws the sleeve to it again',
  compile: (context, settings) => changeWidth(context, 'front', settings),
  word: (settings, say) => wordWidth('front', settings, say),
})
