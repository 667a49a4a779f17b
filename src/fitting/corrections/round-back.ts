import * as z from 'zod'
import type { Problem } from '../../base/problem.ts'
import type { Readers } from '../../base/readers.ts'
import { failure, type Result, success } from '../../base/result.ts'
import { asin } from '../../base/trig.ts'
import { lineCrossings } from '../../geometry/line-crossings.ts'
import { alongOf } from '../../geometry/nearest.ts'
import { add, distance, type Point, subtract } from '../../geometry/point.ts'
import { shift, turn } from '../../geometry/transform.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import type { Piece } from '../../pattern/piece.ts'
import { pieceOf, pointOnSeam, seamLength } from '../../pattern/seam.ts'
import { amountWithin } from '../amount-within.ts'
import { type BodiceHalf, bodiceHalves, centerSeam, draftedEnds, halfSeam, seamIdOf } from '../bodice-half.ts'
import { defineCorrection } from '../correction.ts'
import type { Region } from '../cut-seams.ts'
import { dartPlace } from '../dart-place.ts'
import { dartsOf } from '../half-darts.ts'
import { type MoveRegionsOptions, moveRegions } from '../move-regions.ts'
import { noBodice } from '../no-bodice.ts'
import { type OperationResult, type PatternOperation, runOperations } from '../operation.ts'
import type { SeamPoint } from '../outline-places.ts'
import { BLEND } from '../spread.ts'

/** The most at the center back, mm: more needs a back drafted to the body. Our own. */
const MOST = 38.1

/** The line lies this share of the armscye's height above the underarm: about the shoulder blade. Common practice. */
const BLADE = 0.5

/** Where a new dart opens, as a share of the shoulder from the neck. Common practice. */
const DART_AT = 0.45

function settings(read: Readers) {
  return z.strictObject({ by: read.positiveLength() })
}

/**
 * Gives length over the shoulder blades: the back is cut across from the center to the armscye and opened by the amount at
 * the center, to nothing at the armscye. The center stays straight; the shoulder opens into a dart, or a wider one, that
 * points at the blade and takes up the wedge. Armscye, shoulder and neckline keep their sewn lengths.
 */
export const roundBack = defineCorrection({
  name: 'round back',
  does: 'opens the back across the shoulder blades, from the center to nothing at the armscye; a shoulder dart takes it up',
  answers: [
    'the bodice rides up at the center back',
    'the neckline stands away at the nape',
    'drag lines from the shoulder blades',
  ],
  settings,
  defaults: [],
  compile: ({ worn, side }, given) => {
    const large = amountWithin(given.by, {
      correction: 'round back',
      most: MOST,
      why: 'more is a back to be drafted to the body',
    })
    if (large) return failure(large)
    if (side !== 'both') {
      return failure({
        code: 'both-sides-only',
        where: { piece: 'bodice back', field: 'side' },
        actual: 'a round back on one side only',
        expected: 'side: both; the center back has one length',
        hint: 'leave side out; for one fuller shoulder blade use dart intake or back width on that side',
      })
    }
    if (bodiceHalves(worn, side, ['back']).length === 0) return failure(noBodice('center back'))
    if (given.by === 0) return success([])
    return success([
      (pattern, since) => {
        const pieces = [...new Set(bodiceHalves(pattern, side, ['back']).map(({ piece }) => piece.id))]
        return runOperations(
          pattern,
          since,
          pieces.map(
            (id): PatternOperation =>
              (now) =>
                open(now, id, given.by),
          ),
        )
      },
    ])
  },
  word: (given, say) => ({
    what: `open the back by ${say(given.by)} for round shoulders`,
    where:
      'at the center back across the shoulder blades, to nothing at the armscye; the shoulder dart takes up the wedge',
  }),
})

/** Where one half is cut: on the shoulder, on the armscye, and the corner inside at the blade. */
interface Cut {
  readonly half: BodiceHalf
  readonly shoulder: SeamPoint
  readonly armscye: SeamPoint
  readonly blade: Point
  readonly dart: { readonly id: string; readonly isNew: boolean }
}

function open(pattern: Pattern, id: string, by: number): Result<OperationResult> {
  const piece = pieceOf(pattern, id)
  const halves = bodiceHalves(pattern, 'both', ['back']).filter((half) => half.piece.id === id)
  const cuts = halves.map(cutOf)
  const bad = cuts.find((cut): cut is Problem => 'code' in cut)
  if (bad) return failure(bad)
  const found = cuts as Cut[]
  const inner = innerRegion(found, by)
  if (!inner) return failure(noRoom(piece))
  const options: MoveRegionsOptions = {
    piece: id,
    regions: [inner, ...found.map((cut) => outerRegion(cut, by))],
    closed: found.filter((cut) => !cut.dart.isNew).map((cut) => cut.dart.id),
    opened: found.map((cut) => ({ id: cut.dart.id, at: cut.shoulder, point: add(cut.blade, { x: 0, y: by }) })),
  }
  return moveRegions(pattern, options)
}

function cutOf(half: BodiceHalf): Cut | Problem {
  const { piece } = half
  const shoulderId = seamIdOf(half, 'shoulder')
  const darts = dartsOf(half).filter((dart) => dart.seam === shoulderId)
  const dart = darts[0]
  if (darts.length > 1) return twoDarts(half)
  const armscye = halfSeam(half, 'armscye').parts.flat()
  const [underarm, tip] = draftedEnds(half, 'armscye')
  const y = dart ? dart.point.y : underarm.y + BLADE * (tip.y - underarm.y)
  const crossing = lineCrossings(armscye, { x: 0, y }, { x: 1, y })[0]
  if (!crossing) return noRoom(piece)
  const hingeAt = alongOf(armscye, crossing)
  const [center] = draftedEnds(half, 'waist')
  const blade = dart?.point ?? { x: (center.x + crossing.at.x) / 2, y }
  const shoulder = halfSeam(half, 'shoulder')
  const length = seamLength(shoulder)
  const side = piece.side === 'whole' ? ` ${half.side}` : ''
  return {
    half,
    armscye: { seam: seamIdOf(half, 'armscye'), along: hingeAt },
    shoulder: dart
      ? dartPlace(piece, dart)
      : { seam: shoulderId, along: (half.asDrafted ? 1 - DART_AT : DART_AT) * length },
    blade,
    dart: { id: dart?.id ?? `shoulder dart${side}`, isNew: dart === undefined },
  }
}

/** The part beside the center, over both halves of a piece that was opened: it goes straight up. */
function innerRegion(cuts: readonly Cut[], by: number): Region | undefined {
  const [one, other] = cuts
  if (!one) return undefined
  const move = (share: number) => shift({ x: 0, y: by * share })
  const common = { move, fromEnd: 'dart', toEnd: 'dart' } as const
  if (other) {
    // Anticlockwise over the neck: from the shoulder whose half runs as drafted to the other one.
    const [first, last] = one.half.asDrafted ? [one, other] : [other, one]
    return { ...common, from: first.shoulder, to: last.shoulder, inside: [last.blade, first.blade] }
  }
  const center = centerSeam(one.half)
  if (!center) return undefined
  const path = center.parts.flat()
  const crossing = lineCrossings(path, { x: 0, y: one.blade.y }, { x: 1, y: one.blade.y })[0]
  if (!crossing) return undefined
  const at = { seam: center.id, along: alongOf(path, crossing) }
  const end = { blend: BLEND }
  return one.half.asDrafted
    ? { ...common, from: one.shoulder, to: at, toEnd: end, inside: [one.blade] }
    : { ...common, from: at, fromEnd: end, to: one.shoulder, inside: [one.blade] }
}

/** The part beside the armscye: it turns about its place on the armscye, which keeps its length, until the blade meets. */
function outerRegion(cut: Cut, by: number): Region {
  const { half, blade } = cut
  const center = pointOnSeam(halfSeam(half, 'armscye'), cut.armscye.along)
  const size = 2 * asin(by / 2 / distance(center, blade))
  const up = subtract(turn(center, size)(blade), blade).y > 0
  const angle = up ? size : -size
  const common = { move: (share: number) => turn(center, angle * share), inside: [blade] }
  const end = { blend: BLEND, smooth: true }
  return half.asDrafted
    ? { ...common, from: cut.armscye, fromEnd: end, to: cut.shoulder, toEnd: 'dart' }
    : { ...common, from: cut.shoulder, fromEnd: 'dart', to: cut.armscye, toEnd: end }
}

function noRoom(piece: Piece): Problem {
  return {
    code: 'no-room-for-wedge',
    where: { piece: piece.id },
    actual: 'a back on which no level line runs from the center to the armscye at the shoulder blades',
    expected: 'a back with its center and its armscye beside each other',
    hint: 'let the center back out instead',
  }
}

function twoDarts(half: BodiceHalf): Problem {
  return {
    code: 'two-darts-on-shoulder',
    where: { piece: half.piece.id, seam: seamIdOf(half, 'shoulder') },
    actual: 'more than one dart on the shoulder',
    expected: 'one dart at most',
    hint: 'move one of them to another seam first',
  }
}
