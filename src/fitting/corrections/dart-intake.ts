import * as z from 'zod'
import { normaliseName } from '../../base/names.ts'
import type { Problem } from '../../base/problem.ts'
import type { Readers } from '../../base/readers.ts'
import { failure, success } from '../../base/result.ts'
import { distance } from '../../geometry/point.ts'
import type { Dart } from '../../pattern/piece.ts'
import { defineCorrection } from '../correction.ts'
import { eachHalf } from '../each-half.ts'
import { dartNamed, halvesWithDart, noSuchDart } from '../half-darts.ts'
import { unchanged } from '../operation.ts'
import { setDart } from '../set-dart.ts'

/** A dart with less intake is no dart, mm: it cannot be sewn to a point. Common practice. */
const LEAST = 4

/** A dart with more intake stands out in a cone, mm. Common practice. */
const MOST = 76.2

function settings(read: Readers) {
  return z.strictObject({
    dart: read.text().transform(normaliseName),
    of: read.name('half of the bodice', ['front', 'back']).optional(),
    by: read.positiveLength(),
    direction: read.name('direction', ['more', 'less']),
  })
}

/** Takes more or less into a dart of the bodice, evenly on both sides of it; its point stays. */
export const dartIntake = defineCorrection({
  name: 'dart intake',
  does: 'takes more or less into a dart, evenly on both sides; its seam is shorter or longer by as much',
  answers: [
    'the waist is loose or tight below a dart',
    'fullness at the point of a dart',
    'a dart that pokes at its point',
  ],
  settings,
  defaults: [
    { setting: 'of', value: 'front and back, where they have a dart of that name', source: 'common practice' },
  ],
  leaves: 'the seam of the dart is shorter or longer: let out or take in the one it is sewn to by as much',
  compile: ({ worn, side }, given) => {
    const which = given.of === undefined ? (['front', 'back'] as const) : [given.of]
    const halves = halvesWithDart(worn, side, given.dart, which)
    if (halves.length === 0) return failure(noSuchDart(worn, given.dart))
    const sign = given.direction === 'more' ? 1 : -1
    return success(
      eachHalf(worn, side, [...new Set(halves.map(({ half }) => half))], (pattern, half) => {
        const dart = dartNamed(half, given.dart)
        if (!dart) return success(unchanged(pattern))
        const intake = distance(dart.mouth[0], dart.mouth[1]) + sign * given.by
        const problem = tooMuch(half.piece.id, dart, intake)
        return problem ? failure(problem) : setDart(pattern, { piece: half.piece.id, dart: dart.id, intake })
      }),
    )
  },
  word: (given, say) => ({
    what: `take ${say(given.by)} ${given.direction} into the ${given.of === undefined ? '' : `${given.of} `}${given.dart}`,
    where: 'at its mouth, half on each side, to nothing at its point',
  }),
})

function tooMuch(piece: string, dart: Dart, intake: number): Problem | undefined {
  if (intake >= LEAST - 1e-9 && intake <= MOST + 1e-9) return undefined
  return {
    code: intake < LEAST ? 'dart-too-small' : 'dart-too-large',
    where: { piece, seam: dart.seam },
    actual: `an intake of ${intake.toFixed(1)} mm for the ${dart.id}`,
    expected: `${LEAST} mm to ${MOST} mm`,
    hint:
      intake < LEAST
        ? 'move the dart to another one with move dart, or take less out of it'
        : 'share it with another seam by move dart, or take the rest in at the side seam',
  }
}
