import * as z from 'zod'
import type { Readers } from '../../base/readers.ts'
import { failure, type Result, success } from '../../base/result.ts'
import { line } from '../../geometry/cubic.ts'
import { endOf, type Path, startOf } from '../../geometry/path.ts'
import { pathLength } from '../../geometry/path-length.ts'
import type { Point } from '../../geometry/point.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import { pieceOf, seamLength, seamOf } from '../../pattern/seam.ts'
import { amountWithin } from '../amount-within.ts'
import {
  type BodiceHalf,
  bodiceHalves,
  centerSeam,
  draftedEnds,
  draftedParts,
  halfSeam,
  seamIdOf,
} from '../bodice-half.ts'
import { isStraight } from '../close-cut.ts'
import { defineCorrection } from '../correction.ts'
import { followDart } from '../gap-at.ts'
import { noBodice } from '../no-bodice.ts'
import { type OperationResult, type PatternOperation, runOperations } from '../operation.ts'
import type { AlongMap } from '../position-map.ts'
import { replacedHalf, warpHalfSeam } from '../redraw-half.ts'
import { type ReplacedSeam, replaceSeams } from '../replace-seams.ts'

/** The most at the center back, mm; and how high above the waist the wedge is pinned, 1 1/2 in: common practice. */
const MOST = 38.1
const ABOVE_WAIST = 38.1

function settings(read: Readers) {
  return z.strictObject({ by: read.positiveLength(), 'above waist': read.positiveLength().default(ABOVE_WAIST) })
}

/**
 * Folds a wedge out of the back above the waist, from the center to nothing at the side seam: the center back loses it, the
 * side seam stays as it is, the waist is drawn again, square to the center and to the side seam.
 */
export const swayBack = defineCorrection({
  name: 'sway back',
  does: 'folds a wedge out of the back above the waist, from the center to nothing at the side seam; the waist is trued',
  answers: ['folds across the back above the waist', 'the back waist sags below the waist of the body'],
  settings,
  defaults: [
    { setting: 'above waist', value: '1 1/2 in', source: 'where the fold is pinned at the center, common practice' },
  ],
  compile: ({ worn, side }, given) => {
    const large = amountWithin(given.by, {
      correction: 'sway back',
      most: MOST,
      why: 'more is a shorter back waist: use shorten',
    })
    if (large) return failure(large)
    if (side !== 'both') {
      return failure({
        code: 'both-sides-only',
        where: { piece: 'bodice back', field: 'side' },
        actual: 'a sway back on one side only',
        expected: 'side: both; the center back has one length',
        hint: 'leave side out; for one high hip take the waist in on that side',
      })
    }
    if (given['above waist'] < given.by) {
      return failure({
        code: 'wedge-below-waist',
        where: { piece: 'bodice back', field: 'by' },
        actual: `a wedge of ${given.by.toFixed(1)} mm pinned ${given['above waist'].toFixed(1)} mm above the waist`,
        expected: 'a fold that lies above the waist',
        hint: 'pin it higher: above waist: 1 1/2 is usual',
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
                fold(now, id, given.by, given['above waist']),
          ),
        )
      },
    ])
  },
  word: (given, say) => ({
    what: `fold a wedge of ${say(given.by)} out of the back for a sway back`,
    where: `at the center back ${say(given['above waist'])} above the waist, to nothing at the side seam; the waist is trued`,
  }),
})

/** A piece that was opened has both halves on it: they are drawn again together. */
function fold(pattern: Pattern, id: string, by: number, above: number): Result<OperationResult> {
  const piece = pieceOf(pattern, id)
  const halves = bodiceHalves(pattern, 'both', ['back']).filter((half) => half.piece.id === id)
  const seams = new Map<string, ReplacedSeam>()
  for (const half of halves) {
    const length = seamLength(halfSeam(half, 'waist'))
    seams.set(
      seamIdOf(half, 'waist'),
      warpHalfSeam(half, 'waist', (at, along) => ({ x: at.x, y: at.y + by * share(along / length) })),
    )
    const center = centerSeam(half)
    if (center) seams.set(center.id, shorterCenter(half, by, above))
  }
  const inside = (at: Point): Point => {
    const half = halves.find((h) => at.x * draftedEnds(h, 'side seam')[1].x >= 0) ?? (halves[0] as BodiceHalf)
    const [center, side] = draftedEnds(half, 'waist')
    const u = Math.min(1, Math.max(0, (at.x - center.x) / (side.x - center.x)))
    const edge = center.y + above * (1 - u) + (side.y - center.y) * u
    return at.y < edge ? { x: at.x, y: at.y + by * share(u) } : at
  }
  return replaceSeams(pattern, piece, {
    seams,
    darts: piece.darts.map((dart) => followDart(piece, dart, seams, inside)),
    inside,
  })
}

/** Share of the wedge from the center (0) to the side seam (1): flat at both, so that the waist stays square there. */
function share(u: number): number {
  const v = Math.min(1, Math.max(0, 1 - u))
  return v * v * (3 - 2 * v)
}

/** The center back without the wedge; places between its edges are folded away. */
function shorterCenter(half: BodiceHalf, by: number, above: number): ReplacedSeam {
  const name = 'center back'
  const parts = draftedParts(half, name)
  const last = parts[parts.length - 1] as Path
  const length = seamLength(seamOf(half.piece, name))
  const low = endOf(last)
  const end = { x: low.x, y: low.y + by }
  const top = length - above - by
  const map: AlongMap = (at) => {
    if (at <= top + 1e-9) return at
    return at < top + by - 1e-9 ? { gone: 'it was folded away in the wedge' } : at - by
  }
  if (isStraight(last)) return replacedHalf(half, name, [...parts.slice(0, -1), [line(startOf(last), end)]], map)
  const lastLength = pathLength(last)
  return warpHalfSeam(half, name, (at, along) => {
    const u = Math.min(1, Math.max(0, (along - (length - lastLength)) / lastLength))
    return { x: at.x, y: at.y + by * u * u * (3 - 2 * u) }
  })
}
