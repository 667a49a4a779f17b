import * as z from 'zod'
import type { Readers } from '../../base/readers.ts'
import { defineCorrection } from '../correction.ts'
import { setElbowIntake } from '../elbow-intake.ts'
import { onSleeves } from './on-sleeves.ts'

/** Bends the sleeve more or less at the elbow. */
export const elbowDartIntake = defineCorrection({
  name: 'elbow dart intake',
  does: 'gives the elbow darts together another intake: the forearm turns forward for more, back for less',
  answers: ['the forearm of the sleeve stands behind the arm', 'folds at the front of the elbow', 'the elbow strains'],
  settings: (read: Readers) => z.strictObject({ intake: read.positiveLength() }),
  defaults: [],
  compile: (context, { intake }) =>
    onSleeves(context, (piece) => (pattern) => setElbowIntake(pattern, { piece, intake })),
  word: ({ intake }, say) => ({
    what: `make the elbow darts ${say(intake)} together`,
    where: 'the forearm turns about the elbow notch of the front seam; both underarm seams keep their lengths',
  }),
})
