import * as z from 'zod'
import type { Readers } from '../../base/readers.ts'
import { defineCorrection } from '../correction.ts'
import { turnCap } from '../turn-cap.ts'
import { onSleeves } from './on-sleeves.ts'

function settings(read: Readers) {
  return z.strictObject({ direction: read.name('direction', ['forward', 'back']), by: read.positiveLength() })
}

/**
 * Turns the sleeve in its armscye so that it hangs as the arm does: all match points move along the cap together, over
 * the top toward the front or the back. Turned forward, the wrist swings forward. No line is drawn anew.
 */
export const turnSleeve = defineCorrection({
  name: 'turn sleeve',
  does: 'turns the sleeve in its armscye: all match points move along the cap, the outline stays',
  answers: ['drag lines slant across the sleeve', 'the sleeve hangs behind the arm', 'the sleeve hangs before the arm'],
  settings,
  defaults: [],
  compile: (context, { direction, by }) =>
    onSleeves(
      context,
      (piece) => (pattern) => turnCap(pattern, { piece, forward: direction === 'forward' ? by : -by }),
    ),
  word: ({ direction, by }, say) => ({
    what: `turn the sleeve ${direction} by ${say(by)} in its armscye`,
    where:
      'shoulder, front and back notch and the point that meets the side seam move along the cap, over the top toward ' +
      `the ${direction === 'forward' ? 'front' : 'back'}; the outline stays`,
  }),
})
