import * as z from 'zod'
import type { Readers } from '../../base/readers.ts'
import { failure, type Result, success } from '../../base/result.ts'
import { amountWithin } from '../amount-within.ts'
import { asDraftedPlace, type BodiceHalf, bodiceHalves, seamIdOf } from '../bodice-half.ts'
import type { CorrectionContext, SettingDefault, SlipWords } from '../correction.ts'
import { inSetting } from '../in-setting.ts'
import { notchPlaces } from '../named-places.ts'
import { noBodice } from '../no-bodice.ts'
import type { PatternOperation } from '../operation.ts'
import { placeReader } from '../position.ts'
import type { SeamPosition } from '../position-map.ts'
import { resolvePlace, sayPlace } from '../resolve-place.ts'
import { seamRun } from '../seam-run.ts'
import { shiftLine } from '../shift-line.ts'

/** Beyond this the armscye is another one: draft it again, mm. Our own. */
const MOST = 50

/** The settings of `raise underarm` and `lower underarm`. */
export function underarmSettings(read: Readers) {
  return z.strictObject({ by: read.positiveLength(), 'taper to': read.listOf(placeReader(read)).optional() })
}

export type UnderarmSettings = z.output<ReturnType<typeof underarmSettings>>

export const UNDERARM_DEFAULTS = [
  { setting: 'taper to', value: 'the front and the back notch', source: 'common practice' },
] as const satisfies readonly SettingDefault[]

/** Moves the bottom of the armscye up (1) or down (−1), running to nothing at the notches; the side seams follow alike. */
export function changeUnderarm(
  { worn, side }: CorrectionContext,
  given: UnderarmSettings,
  sign: 1 | -1,
): Result<readonly PatternOperation[]> {
  const correction = sign > 0 ? 'raise underarm' : 'lower underarm'
  const large = amountWithin(given.by, { correction, most: MOST, why: 'more is another armscye, to be drafted' })
  if (large) return failure(large)
  const halves = bodiceHalves(worn, side)
  if (halves.length === 0) return failure(noBodice('armscye'))
  const anchors = anchorsOf(halves, given)
  if (!anchors.ok) return anchors
  // The outward normal of the armscye at the underarm points up: raising lets it out.
  const stations = halves.map((half) => ({
    piece: half.piece.id,
    seam: seamIdOf(half, 'armscye'),
    along: asDraftedPlace(half, 'armscye', 0),
    amount: sign * given.by,
  }))
  return success(shiftLine({ seam: 'armscye', side, stations, anchors: anchors.value }))
}

function anchorsOf(halves: readonly BodiceHalf[], given: UnderarmSettings): Result<SeamPosition[]> {
  const runs = halves.map((half) => seamRun(half.piece, [seamIdOf(half, 'armscye')]))
  const named = given['taper to']
  if (named === undefined) {
    return success(
      runs.flatMap((run, i) => {
        const half = halves[i] as BodiceHalf
        const notches = notchPlaces(run)
        const nearest = half.asDrafted ? notches[0] : notches[notches.length - 1]
        return nearest === undefined ? [] : [{ piece: run.piece.id, seam: seamIdOf(half, 'armscye'), along: nearest }]
      }),
    )
  }
  const found: SeamPosition[] = []
  for (const [i, place] of named.entries()) {
    const resolved = inSetting(`taper to.${i + 1}`, resolvePlace(place, runs, 'armscye'))
    if (!resolved.ok) return resolved
    found.push(...resolved.value)
  }
  return success(found)
}

export function wordUnderarm(order: string, given: UnderarmSettings, say: (mm: number) => string): SlipWords {
  const named = given['taper to']
  const taper = named === undefined ? 'the notches' : named.map((place) => sayPlace(place, say)).join('; ')
  return {
    what: `${order} the underarm of the bodice by ${say(given.by)}, front and back`,
    where: `at the side seam, to nothing at ${taper}; both side seams change alike`,
  }
}
