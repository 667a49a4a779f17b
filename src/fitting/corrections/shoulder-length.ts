import * as z from 'zod'
import type { Problem } from '../../base/problem.ts'
import type { Readers } from '../../base/readers.ts'
import { failure, type Result, success } from '../../base/result.ts'
import { line } from '../../geometry/cubic.ts'
import { endOf, type Path, startOf } from '../../geometry/path.ts'
import { directionAlong, pathLength } from '../../geometry/path-length.ts'
import { add, along as alongBy, scale } from '../../geometry/point.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import { seamLength } from '../../pattern/seam.ts'
import { amountWithin } from '../amount-within.ts'
import { asDraftedPlace, type BodiceHalf, bodiceHalves, draftedParts, seamIdOf } from '../bodice-half.ts'
import { isStraight } from '../close-cut.ts'
import { defineCorrection } from '../correction.ts'
import { cutPath } from '../cut-path.ts'
import { eachHalf } from '../each-half.ts'
import { followDart } from '../gap-at.ts'
import { notchPlaces } from '../named-places.ts'
import { noBodice } from '../no-bodice.ts'
import type { OperationResult } from '../operation.ts'
import { replacedHalf, warpHalfSeam } from '../redraw-half.ts'
import { replaceSeams } from '../replace-seams.ts'
import { seamRun } from '../seam-run.ts'

/** The most, mm: a shoulder that is off by more was measured to another point. Our own. */
const MOST = 40

function settings(read: Readers) {
  return z.strictObject({ by: read.positiveLength(), direction: read.name('direction', ['longer', 'shorter']) })
}

/**
 * Makes both shoulder seams longer or shorter at the shoulder point: the armscye moves out or in there along the
 * shoulder, to nothing at the front and back notch.
 */
export const shoulderLength = defineCorrection({
  name: 'shoulder length',
  does: 'moves the shoulder point out or in along the shoulder, the armscye with it, to nothing at the notches',
  answers: ['the armscye seam sits on the arm', 'the armscye seam sits on the shoulder, short of its point'],
  settings,
  defaults: [],
  leaves: 'the armscye changes its length a little: rematch cap draws the sleeve to it again',
  compile: ({ worn, side }, given) => {
    const large = amountWithin(given.by, {
      correction: 'shoulder length',
      most: MOST,
      why: 'a shoulder off by more was measured to another point',
    })
    if (large) return failure(large)
    const halves = bodiceHalves(worn, side)
    if (halves.length === 0) return failure(noBodice('shoulder'))
    if (given.by === 0) return success([])
    const amount = given.direction === 'longer' ? given.by : -given.by
    return success(eachHalf(worn, side, ['front', 'back'], (pattern, half) => moveTip(pattern, half, amount)))
  },
  word: (given, say) => ({
    what: `make the shoulder ${given.direction} by ${say(given.by)}, front and back`,
    where: 'at the shoulder point along the shoulder seam, to nothing at the front and back notch',
  }),
})

function moveTip(pattern: Pattern, half: BodiceHalf, amount: number): Result<OperationResult> {
  const { piece } = half
  const [outer, ...others] = draftedParts(half, 'shoulder') as [Path, ...Path[]]
  if (-amount > pathLength(outer) / 2) return failure(noRoom(half, -amount, pathLength(outer)))
  const by = scale(directionAlong(outer, 0), -amount)
  const length = pathLength(draftedParts(half, 'armscye').flat())
  const from = upperNotch(half) ?? 0
  const armscyeId = seamIdOf(half, 'armscye')
  const armscye = warpHalfSeam(
    half,
    'armscye',
    (at, along) => {
      const u = Math.min(1, Math.max(0, (along - from) / (length - from)))
      return alongBy(at, by, u * u * (3 - 2 * u))
    },
    { from },
  )
  const tip = add(startOf(outer), by)
  const drawn = isStraight(outer)
    ? [line(tip, endOf(outer))]
    : amount > 0
      ? [line(tip, startOf(outer)), ...outer]
      : cutPath(outer, -amount, pathLength(outer))
  const shoulder = replacedHalf(half, 'shoulder', [drawn, ...others], (along) => {
    if (along <= 1e-6) return 0
    return along + amount < 0 ? { gone: 'the end of the shoulder was cut off there' } : along + amount
  })
  const seams = new Map([
    [armscyeId, armscye],
    [seamIdOf(half, 'shoulder'), shoulder],
  ])
  const end = seamLength(armscye.seam)
  const place = half.asDrafted ? { from, to: end } : { from: 0, to: end - from }
  return replaceSeams(pattern, piece, {
    seams,
    darts: piece.darts.map((dart) => followDart(piece, dart, seams, (p) => p)),
    effects: [{ kind: 'seam moved', piece: piece.id, seam: armscyeId, amount, ...place }],
  })
}

/** The notch of the armscye nearest to the shoulder, in the order of the draft. */
function upperNotch(half: BodiceHalf): number | undefined {
  const notches = notchPlaces(seamRun(half.piece, [seamIdOf(half, 'armscye')]))
  const nearest = half.asDrafted ? notches[notches.length - 1] : notches[0]
  return nearest === undefined ? undefined : asDraftedPlace(half, 'armscye', nearest)
}

function noRoom(half: BodiceHalf, by: number, length: number): Problem {
  return {
    code: 'no-room-on-shoulder',
    where: { piece: half.piece.id, seam: seamIdOf(half, 'shoulder') },
    actual: `${by.toFixed(1)} mm off a shoulder that has ${length.toFixed(1)} mm there`,
    expected: 'at most half of it, up to the neck point or the dart',
    hint: 'take a smaller amount, or move the dart first',
  }
}
