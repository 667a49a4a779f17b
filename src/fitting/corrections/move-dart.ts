import * as z from 'zod'
import { normaliseName } from '../../base/names.ts'
import type { Readers } from '../../base/readers.ts'
import { failure, type Result, success } from '../../base/result.ts'
import { seamLength } from '../../pattern/seam.ts'
import { type BodiceHalf, halfSeam, seamIdOf } from '../bodice-half.ts'
import { defineCorrection } from '../correction.ts'
import { eachHalf } from '../each-half.ts'
import { dartNamed, halvesWithDart, noSuchDart } from '../half-darts.ts'
import { inSetting } from '../in-setting.ts'
import { unchanged } from '../operation.ts'
import { placeReader, type SeamPlace } from '../position.ts'
import type { SeamPosition } from '../position-map.ts'
import { resolvePlace, sayPlace } from '../resolve-place.ts'
import { rotateDart } from '../rotate-dart.ts'
import { seamRun } from '../seam-run.ts'
import { carried } from '../shift-line.ts'

const SEAMS = ['waist', 'side seam', 'armscye', 'shoulder', 'neckline', 'center front', 'center back'] as const

function settings(read: Readers) {
  return z.strictObject({
    dart: read.text().transform(normaliseName),
    of: read.name('half of the bodice', ['front', 'back']).optional(),
    'to seam': read.name('seam', SEAMS),
    at: placeReader(read).optional(),
    share: read.share().optional(),
  })
}

/**
 * Turns a dart of the bodice, or a share of it, about its point to another seam: the angle at the point stays, and every
 * seam keeps its sewn length.
 */
export const moveDart = defineCorrection({
  name: 'move dart',
  does: 'turns a dart about its point to another seam, whole or in part; nothing else about the fit changes',
  answers: ['a dart that is to be hidden in another seam', 'one dart too wide to lie flat'],
  settings,
  defaults: [
    { setting: 'of', value: 'front and back, where they have a dart of that name', source: 'common practice' },
    { setting: 'at', value: 'the middle of the seam', source: 'common practice' },
    { setting: 'share', value: '100 %', source: 'common practice' },
  ],
  compile: ({ worn, side }, given) => {
    const which = given.of === undefined ? (['front', 'back'] as const) : [given.of]
    const halves = halvesWithDart(worn, side, given.dart, which)
    if (halves.length === 0) return failure(noSuchDart(worn, given.dart))
    if (given.share !== undefined && !(given.share >= 0 && given.share <= 1)) {
      return failure({
        code: 'share-out-of-range',
        where: { field: 'share' },
        actual: `a share of ${(100 * given.share).toFixed(0)} %`,
        expected: 'at most 100 %',
        hint: 'leave share out to move the whole dart',
      })
    }
    const places: SeamPosition[] = []
    for (const half of halves) {
      const place = placeFor(half, given['to seam'], given.at)
      if (!place.ok) return place
      places.push(...place.value)
    }
    return success(
      eachHalf(worn, side, [...new Set(halves.map(({ half }) => half))], (pattern, half, since) => {
        const dart = dartNamed(half, given.dart)
        if (!dart) return success(unchanged(pattern))
        const id = seamIdOf(half, given['to seam'])
        const found = carried(places, since, { piece: half.piece.id, seams: [id], side: half.side }, (_, at) => at)
        if (!found.ok) return inSetting('at', found)
        const [to] = found.value
        if (!to) return success(unchanged(pattern))
        const where = given.at === undefined ? 'to seam' : 'at'
        const turned = rotateDart(pattern, {
          piece: half.piece.id,
          dart: dart.id,
          to,
          ...(given.share === undefined ? {} : { share: given.share, id: secondId(half, dart.id, given.share) }),
        })
        return inSetting(where, turned)
      }),
    )
  },
  word: (given, say) => ({
    what:
      `turn ${given.share === undefined || given.share === 1 ? 'the' : `${Math.round(100 * given.share)} % of the`} ` +
      `${given.of === undefined ? '' : `${given.of} `}${given.dart} to the ${given['to seam']}`,
    where: `about its point, opening at ${given.at === undefined ? 'the middle of the seam' : sayPlace(given.at, say)}`,
  }),
})

function placeFor(half: BodiceHalf, seam: string, at: SeamPlace | undefined): Result<SeamPosition[]> {
  const id = seamIdOf(half, seam)
  if (!half.piece.seams.some((s) => s.id === id)) {
    return failure({
      code: 'no-such-seam',
      where: { piece: half.piece.id, seam, field: 'to seam' },
      actual: `no ${seam} on the ${half.piece.id}`,
      expected: 'a seam of the piece that the dart is on',
      hint: 'name another seam, or say of: front or of: back',
    })
  }
  if (at !== undefined) return inSetting('at', resolvePlace(at, [seamRun(half.piece, [id])], seam))
  return success([{ piece: half.piece.id, seam: id, along: seamLength(halfSeam(half, seam)) / 2 }])
}

/** The name of what a shared dart opens: the old one's with the next number, and with the side that it carries. */
function secondId(half: BodiceHalf, id: string, share: number): string {
  if (share === 1) return id
  const [, base = id, suffix = ''] = /^(.*?)( left| right)?$/.exec(id) ?? []
  let number = 2
  while (half.piece.darts.some((dart) => dart.id === `${base} ${number}${suffix}`)) number++
  return `${base} ${number}${suffix}`
}
