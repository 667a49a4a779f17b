import * as z from 'zod'
import type { Readers } from '../../base/readers.ts'
import { failure, type Result, success } from '../../base/result.ts'
import { seamLength } from '../../pattern/seam.ts'
import { amountWithin } from '../amount-within.ts'
import { asDraftedPlace, bodiceHalves, halfSeam, seamIdOf } from '../bodice-half.ts'
import type { CorrectionContext, SlipWords } from '../correction.ts'
import { noBodice } from '../no-bodice.ts'
import type { PatternOperation } from '../operation.ts'
import { shiftLine } from '../shift-line.ts'

/** The most, mm: below, it is another neckline, to be drafted. Our own. */
const MOST = 120

const AT = ['center front', 'center back', 'neck point'] as const

/** The settings of `drop neckline` and `raise neckline`. */
export function necklineSettings(read: Readers) {
  return z.strictObject({ by: read.positiveLength(), at: read.listOf(read.name('place on the neckline', AT)) })
}

export type NecklineSettings = z.output<ReturnType<typeof necklineSettings>>

/**
 * Moves the neckline at the center front, the center back or the neck point (front and back alike), to nothing at the
 * other end of each half. Down and away from the neck with −1, up and toward it with 1.
 */
export function changeNeckline(
  { worn, side }: CorrectionContext,
  given: NecklineSettings,
  sign: 1 | -1,
): Result<readonly PatternOperation[]> {
  const correction = sign < 0 ? 'drop neckline' : 'raise neckline'
  const large = amountWithin(given.by, { correction, most: MOST, why: 'more is another neckline, to be drafted' })
  if (large) return failure(large)
  const atCenter = given.at.filter((place) => place !== 'neck point')
  if (side !== 'both' && atCenter.length > 0) {
    return failure({
      code: 'both-sides-only',
      where: { seam: 'neckline', field: 'side' },
      actual: `the neckline at the ${atCenter[0]} on one side only`,
      expected: 'side: both at the center, where both halves meet',
      hint: 'leave side out, or name the neck point',
    })
  }
  const halves = bodiceHalves(worn, side)
  if (halves.length === 0) return failure(noBodice('neckline'))
  const stations = halves.flatMap((half) => {
    const length = seamLength(halfSeam(half, 'neckline'))
    const ends = [
      ...(given.at.includes('neck point') ? [0] : []),
      ...(given.at.includes(`center ${half.half}`) ? [length] : []),
    ]
    return ends.map((end) => ({
      piece: half.piece.id,
      seam: seamIdOf(half, 'neckline'),
      along: asDraftedPlace(half, 'neckline', end),
      amount: sign * given.by,
    }))
  })
  return success(shiftLine({ seam: 'neckline', side, stations, anchors: [] }))
}

export function wordNeckline(order: string, given: NecklineSettings, say: (mm: number) => string): SlipWords {
  return {
    what: `${order} the neckline by ${say(given.by)}`,
    where: `at the ${given.at.join(' and the ')}, to nothing at the other end; the seams that meet it follow`,
  }
}
