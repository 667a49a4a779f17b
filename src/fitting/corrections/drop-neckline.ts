import { defineCorrection } from '../correction.ts'
import { changeNeckline, necklineSettings, wordNeckline } from './change-neckline.ts'

/** Drops the neckline at the center front, the center back or the neck point. */
export const dropNeckline = defineCorrection({
  name: 'drop neckline',
  does: 'cuts the neckline lower at the center or the neck point, to nothing at the other end',
  answers: ['the neckline chokes', 'folds under the neckline'],
  settings: necklineSettings,
  defaults: [],
  compile: (context, settings) => changeNeckline(context, settings, -1),
  word: (settings, say) => wordNeckline('drop', settings, say),
})
