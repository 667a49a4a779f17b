import { defineCorrection } from '../correction.ts'
import { changeNeckline, necklineSettings, wordNeckline } from './change-neckline.ts'

/** Raises the neckline at the center front, the center back or the neck point. */
export const raiseNeckline = defineCorrection({
  name: 'raise neckline',
  does: 'brings the neckline up into its allowance at the center or the neck point, to nothing at the other end',
  answers: ['the neckline stands away below the neck', 'the neckline shows what it should cover'],
  settings: necklineSettings,
  defaults: [],
  compile: (context, settings) => changeNeckline(context, settings, 1),
  word: (settings, say) => wordNeckline('raise', settings, say),
})
