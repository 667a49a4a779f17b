// A correction of one's own: brings the sleeve down over the wrist bone, which shows when the arm is bent.
// Run it from the project's folder: npx tsx examples/own-correction.ts
import { readFileSync } from 'node:fs'
import * as z from 'zod'
import {
  CORRECTIONS,
  defineCorrection,
  failure,
  makePattern,
  pieceOf,
  seamLength,
  seamLines,
  seamOf,
  shiftLine,
  slipText,
  success,
} from '../src/index.ts'

/** More is another wrist, to be drafted, mm (common practice). */
const MOST = 30

export const coverWrist = defineCorrection({
  name: 'cover wrist',
  does: 'brings the sleeve down over the wrist bone, to nothing at the underarm seam',
  answers: ['the wrist bone shows when the arm is bent'],
  settings: (read) => z.strictObject({ by: read.positiveLength() }),
  defaults: [],
  compile: ({ worn, side }, { by }) => {
    if (by > MOST) {
      const actual = `cover wrist by ${by.toFixed(1)} mm`
      const hint = 'lengthen the sleeve below the elbow instead'
      return failure({ code: 'amount-too-large', where: { field: 'by' }, actual, expected: `at most ${MOST} mm`, hint })
    }
    // Places are said of the mock-up as it was worn; what earlier corrections did to them is followed.
    const at = (share: number) =>
      seamLines(worn, 'wrist', side).flatMap(({ piece, seams }) =>
        seams.map((seam) => ({ piece, seam, along: share * seamLength(seamOf(pieceOf(worn, piece), seam)) })),
      )
    const stations = at(0.5).map((place) => ({ ...place, amount: by }))
    return success(shiftLine({ seam: 'wrist', side, stations, anchors: [...at(0), ...at(1)] }))
  },
  word: ({ by }, say) => ({
    what: `bring the wrist down by ${say(by)}`,
    where: 'over the wrist bone, to nothing at the underarm seam',
  }),
})

/** The Lamplighter with one more fitting, in which the draper wrote the correction like any other. */
export function withOwnCorrection(by = '3/8') {
  const file = readFileSync(new URL('lamplighter.yaml', import.meta.url), 'utf8')
  const fitting = `\n  - label: at the bench\n    corrections:\n      - do: cover wrist\n        by: ${by}\n`
  return makePattern(file.trimEnd() + fitting, 'lamplighter.yaml', { corrections: [...CORRECTIONS, coverWrist] })
}

if (process.argv[1]?.endsWith('own-correction.ts')) {
  const made = withOwnCorrection()
  if (made.ok) console.log(slipText(made.value.report.slip, { performer: 'Lamplighter', units: 'in' }))
  else console.error(made.problems)
}
