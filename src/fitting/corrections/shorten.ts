import { defineCorrection } from '../correction.ts'
import { CHANGE_LENGTH_DEFAULTS, changeLength, changeLengthSettings, wordChangeLength } from './change-length.ts'

/** Shortens the bodice, or the sleeve above or below the elbow, inside the piece; the hem keeps its shape. */
export const shorten = defineCorrection({
  name: 'shorten',
  does: 'folds length away inside a piece, across its whole width; partner seams change alike',
  answers: ['folds all round above the waist', 'the elbow darts sit below the elbow', 'the sleeve covers the hand'],
  settings: changeLengthSettings,
  defaults: CHANGE_LENGTH_DEFAULTS,
  compile: (context, settings) => changeLength(context, settings, -1),
  word: (settings, say) => wordChangeLength('shorten', settings, say),
})
