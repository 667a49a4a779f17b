import { defineCorrection } from '../correction.ts'
import { CHANGE_LENGTH_DEFAULTS, changeLength, changeLengthSettings, wordChangeLength } from './change-length.ts'

/** Lengthens the bodice, or the sleeve above or below the elbow, inside the piece; the hem keeps its shape. */
export const lengthen = defineCorrection({
  name: 'lengthen',
  does: 'makes a piece longer inside, across its whole width; partner seams change alike',
  answers: ['too short between underarm and waist', 'the elbow darts sit above the elbow', 'the wrist does not reach'],
  settings: changeLengthSettings,
  defaults: CHANGE_LENGTH_DEFAULTS,
  compile: (context, settings) => changeLength(context, settings, 1),
  word: (settings, say) => wordChangeLength('lengthen', settings, say),
})
