import * as z from 'zod'
import type { Readers } from '../../base/readers.ts'
import { defineCorrection } from '../correction.ts'
import { moveElbowDartPoints, moveElbowDarts as slideElbowDarts } from '../move-elbow-darts.ts'
import { onSleeves } from './on-sleeves.ts'

const DIRECTIONS = ['up', 'down', 'forward', 'back'] as const

/** Brings the elbow darts to where the arm bends: along their seam, or their points along the darts. */
export const moveElbowDarts = defineCorrection({
  name: 'move elbow darts',
  does: 'moves the elbow darts up or down their seam, or their points along the darts; their intakes stay',
  answers: ['the elbow darts lie above the elbow', 'the elbow darts lie below the elbow', 'the elbow darts poke'],
  settings: (read: Readers) =>
    z.strictObject({ direction: read.name('direction', DIRECTIONS), by: read.positiveLength() }),
  defaults: [],
  compile: (context, { direction, by }) =>
    onSleeves(context, (piece) => (pattern) => {
      if (direction === 'up' || direction === 'down') {
        return slideElbowDarts(pattern, { piece, up: direction === 'up' ? by : -by })
      }
      return moveElbowDartPoints(pattern, { piece, forward: direction === 'forward' ? by : -by })
    }),
  word: ({ direction, by }, say) =>
    direction === 'up' || direction === 'down'
      ? {
          what: `move the elbow darts ${direction} by ${say(by)}`,
          where: 'along the back underarm seam, as they are; elbow notch and elbow line go with them',
        }
      : {
          what: `move the points of the elbow darts ${direction} by ${say(by)}`,
          where: `along the darts, which get ${direction === 'forward' ? 'longer' : 'shorter'}; mouths and intakes stay`,
        },
})
