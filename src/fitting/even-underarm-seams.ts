import { type Result, success } from '../base/result.ts'
import { type Point, point, scale } from '../geometry/point.ts'
import type { Pattern } from '../pattern/pattern.ts'
import { directionOnSeam, pieceOf } from '../pattern/seam.ts'
import { baseName } from '../pattern/side-names.ts'
import { bendParts } from './bend-parts.ts'
import { type OperationResult, unchanged } from './operation.ts'
import { composeMaps } from './position-map.ts'
import { replaceSeams } from './replace-seams.ts'
import { type UnderarmHalf, underarmHalves } from './underarm-half.ts'

/** Seams that differ by less than this are even, mm. */
const EVEN = 1e-6

/** Each seam takes its share over this much above the wrist, mm. */
const OVER = 80

/**
 * Makes back less front underarm seam `difference` mm again: what they miss it by is shared between the two ends of the
 * wrist, as in the draft, each seam growing or shrinking in its own direction. The wrist tilts by a hair. The same
 * pattern where they are even already.
 */
export function evenUnderarmSeams(pattern: Pattern, id: string, difference: number): Result<OperationResult> {
  let now = pattern
  let result = unchanged(pattern)
  // The wrist's tilt is of second order: twice is enough.
  for (let round = 0; round < 3; round++) {
    const piece = pieceOf(now, id)
    const [front, back] = underarmHalves(piece)
    const miss = difference - (back.length - front.length)
    if (Math.abs(miss) < EVEN) break
    const moves = [moveOf(front, -miss / 2), moveOf(back, miss / 2)] as const
    const wrist = piece.seams.find((seam) => baseName(seam.id) === 'wrist')
    if (!wrist) break
    const [start, end] = back.runsDown ? [moves[1], moves[0]] : [moves[0], moves[1]]
    const step = replaceSeams(now, piece, {
      seams: new Map([
        [front.seam.id, lengthened(front, moves[0])],
        [back.seam.id, lengthened(back, moves[1])],
        [wrist.id, bendParts(wrist, (_, length) => ({ from: 0, to: length, bend: tilt(length, start, end) }))],
      ]),
      darts: piece.darts,
    })
    if (!step.ok) return step
    now = step.value.pattern
    result = { ...step.value, map: composeMaps(result.map, step.value.map) }
  }
  return success(result)
}

/** Where the wrist end of a seam goes when the seam grows by `by` mm. */
function moveOf(half: UnderarmHalf, by: number): Point {
  const down = directionOnSeam(half.seam, half.runsDown ? half.length : 0)
  return scale(down, half.runsDown ? by : -by)
}

function lengthened(half: UnderarmHalf, by: Point) {
  const last = half.runsDown ? half.seam.parts.length - 1 : 0
  return bendParts(half.seam, (index, length) => {
    if (index !== last) return undefined
    const span = Math.min(OVER, length)
    const way = half.runsDown ? 1 : -1
    return {
      from: half.runsDown ? length - span : 0,
      to: half.runsDown ? length : span,
      bend: (at) => {
        const raw = half.runsDown ? 1 - (length - at) / span : 1 - at / span
        const u = Math.min(1, Math.max(0, raw))
        return { by: scale(by, u * u * (3 - 2 * u)), change: scale(by, (way * 6 * u * (1 - u)) / span) }
      },
    }
  })
}

/** From one end's move to the other's; the ends keep their angles to the seams. */
function tilt(length: number, start: Point, end: Point) {
  return (at: number) => {
    const u = at <= 0 ? 0 : at >= length - 1e-9 ? 1 : at / length
    const share = u * u * (3 - 2 * u)
    const rate = (6 * u * (1 - u)) / length
    return {
      by: point(start.x + (end.x - start.x) * share, start.y + (end.y - start.y) * share),
      change: point((end.x - start.x) * rate, (end.y - start.y) * rate),
    }
  }
}
