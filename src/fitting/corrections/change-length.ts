import * as z from 'zod'
import type { Problem } from '../../base/problem.ts'
import type { Readers } from '../../base/readers.ts'
import { failure, type Result, success } from '../../base/result.ts'
import { lineCrossings } from '../../geometry/line-crossings.ts'
import { alongOf } from '../../geometry/nearest.ts'
import { endOf, startOf } from '../../geometry/path.ts'
import { pathLength } from '../../geometry/path-length.ts'
import { add, dot, type Point, scale, subtract, unit } from '../../geometry/point.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import type { Piece, Seam } from '../../pattern/piece.ts'
import { pieceOf, pointOnSeam, seamEnd, seamLength, seamOf, seamStart } from '../../pattern/seam.ts'
import { baseName } from '../../pattern/side-names.ts'
import { amountWithin } from '../amount-within.ts'
import { bodiceHalves, draftedParts, halfSeam } from '../bodice-half.ts'
import { sleevesOf } from '../cap-line.ts'
import type { CorrectionContext, SettingDefault, SlipWords } from '../correction.ts'
import { dartPlace } from '../dart-place.ts'
import { inSetting } from '../in-setting.ts'
import { type OperationResult, type PatternOperation, runOperations } from '../operation.ts'
import type { SeamPoint } from '../outline-places.ts'
import { placeReader } from '../position.ts'
import type { PositionMap, SeamPosition } from '../position-map.ts'
import { resolvePlace, sayPlace } from '../resolve-place.ts'
import { seamLines } from '../seam-names.ts'
import { seamRun } from '../seam-run.ts'
import { carried, splitsFor } from '../shift-line.ts'
import { BLEND, spread } from '../spread.ts'

/** The most that one correction lengthens or shortens, mm: beyond, the measure was wrong. Our own. */
const MOST = 150

const PARTS = ['bodice', 'above elbow', 'below elbow'] as const

/** The settings of `lengthen` and `shorten`. */
export function changeLengthSettings(read: Readers) {
  return z.strictObject({
    part: read.name('part', PARTS),
    by: read.positiveLength(),
    at: placeReader(read).optional(),
  })
}

export type ChangeLengthSettings = z.output<ReturnType<typeof changeLengthSettings>>

export const CHANGE_LENGTH_DEFAULTS = [
  {
    setting: 'at',
    value:
      'bodice: halfway from the waist to the bust dart, or to the underarm; above elbow: halfway from the underarm to the first elbow dart; below elbow: halfway from the last one to the wrist',
    source: 'common practice',
  },
] as const satisfies readonly SettingDefault[]

/**
 * Cuts the piece straight across and moves what lies below by `by` times `sign`: the bodice down along its center, the
 * upper sleeve along the grain, the forearm along its own line. Seams that are sewn together are cut at the same
 * distance from the same end, so that they change alike and their notches still meet.
 */
export function changeLength(
  context: CorrectionContext,
  given: ChangeLengthSettings,
  sign: 1 | -1,
): Result<readonly PatternOperation[]> {
  const word = sign > 0 ? 'lengthen' : 'shorten'
  const large = amountWithin(given.by, { correction: word, most: MOST, why: 'more is another measure of the body' })
  if (large) return failure(large)
  const bodice = given.part === 'bodice'
  if (bodice && context.side !== 'both') return failure(bothSides(word))
  const { worn, side } = context
  const pieces = bodice ? [...new Set(bodiceHalves(worn, 'both').map((h) => h.piece.id))] : sleevesOf(worn, side)
  if (pieces.length === 0) return failure(nothingThere(given.part))
  const cuts = given.at === undefined ? usualCuts(worn, pieces, given.part) : placedCuts(context, given)
  if (!cuts.ok) return cuts
  const seam = bodice ? 'side seam' : 'underarm seam'
  return success([
    ...splitsFor(side, bodice ? [] : pieces),
    (pattern, since) => {
      const now = [...new Set(seamLines(pattern, seam, side).map((line) => line.piece))]
      return runOperations(
        pattern,
        since,
        now.map(
          (id): PatternOperation =>
            (present, sinceWorn) =>
              cutPiece(present, sinceWorn, id, cuts.value, given.part, sign * given.by),
        ),
      )
    },
  ])
}

/** Where the cut meets the seams when nothing is said: the same distance from the same end on seams sewn together. */
function usualCuts(
  worn: Pattern,
  pieces: readonly string[],
  part: ChangeLengthSettings['part'],
): Result<SeamPosition[]> {
  if (part === 'bodice') {
    const halves = bodiceHalves(worn, 'both')
    const up = Math.min(...halves.map((half) => pathLength(draftedParts(half, 'side seam')[0] ?? []))) / 2
    return success(
      halves.map((half) => {
        const seam = halfSeam(half, 'side seam')
        return { piece: half.piece.id, seam: seam.id, along: half.asDrafted ? up : seamLength(seam) - up }
      }),
    )
  }
  const positions: SeamPosition[] = []
  for (const id of pieces) {
    const piece = pieceOf(worn, id)
    const { front, back } = underarmSeams(piece)
    const darts = piece.darts
      .filter((dart) => dart.seam === back.id)
      .map((dart) => fromUnderarm(piece, back, dartPlace(piece, dart).along))
    const length = Math.min(seamLength(front), seamLength(back))
    const first = darts.length > 0 ? Math.min(...darts) : length / 2
    const last = darts.length > 0 ? Math.max(...darts) : length / 2
    for (const seam of [front, back]) {
      const toWrist = seamLength(back) - last
      const away = part === 'above elbow' ? first / 2 : seamLength(seam) - toWrist / 2
      positions.push({ piece: id, seam: seam.id, along: fromUnderarm(piece, seam, away) })
    }
  }
  return success(positions)
}

/** The place that was named, on each seam: of two that are sewn together, the same distance from the same end. */
function placedCuts({ worn, side }: CorrectionContext, given: ChangeLengthSettings): Result<SeamPosition[]> {
  const name = given.part === 'bodice' ? 'side seam' : 'underarm seam'
  const runs = seamLines(worn, name, side).flatMap((line) =>
    line.seams.map((id) => seamRun(pieceOf(worn, line.piece), [id])),
  )
  return given.at === undefined ? success([]) : inSetting('at', resolvePlace(given.at, runs, name))
}

function cutPiece(
  pattern: Pattern,
  since: PositionMap,
  id: string,
  cuts: readonly SeamPosition[],
  part: ChangeLengthSettings['part'],
  by: number,
): Result<OperationResult> {
  const piece = pieceOf(pattern, id)
  const ids = piece.seams.map((seam) => seam.id)
  const found = carried(cuts, since, { piece: id, seams: ids, side: 'both' }, (_, at): SeamPoint => at)
  if (!found.ok) return found
  const [one] = found.value
  if (!one) return failure(notOnBoth(piece))
  const other = found.value.length > 1 ? found.value[found.value.length - 1] : onCenter(piece, one)
  if (!other || other.seam === one.seam) return failure(notOnBoth(piece))
  const vector = part === 'bodice' ? { x: 0, y: -by } : scale(sleeveDown(piece, part), by)
  const low = piece.seams.findIndex((seam) => /^(waist|wrist)/.test(seam.id))
  const steps = (at: SeamPoint) => (low - ids.indexOf(at.seam) + ids.length) % ids.length
  const [from, to] = steps(one) < steps(other) ? [one, other] : [other, one]
  const blend = Math.max(BLEND, Math.min(...[one, other].map((at) => roomAround(piece, at))))
  return spread(pattern, { piece: id, from, to, by: vector, blend })
}

/** From a place to the nearest end, dart or notch of its seam, mm: so far the seam may be drawn again, fair from end to end. */
function roomAround(piece: Piece, { seam: id, along }: SeamPoint): number {
  const places = [
    0,
    seamLength(seamOf(piece, id)),
    ...piece.darts.filter((dart) => dart.seam === id).map((dart) => dartPlace(piece, dart).along),
    ...piece.notches.filter((notch) => notch.seam === id).map((notch) => notch.along),
  ]
  return Math.min(...places.map((place) => Math.abs(place - along)))
}

/** The place of the center edge at the height of a place on the side seam. */
function onCenter(piece: Piece, at: SeamPoint): SeamPoint | undefined {
  const center = piece.seams.find((seam) => /^center (front|back)$/.test(seam.id))
  if (!center) return undefined
  const { y } = pointOnSeam(seamOf(piece, at.seam), at.along)
  const path = center.parts.flat()
  const [crossing] = lineCrossings(path, { x: 0, y }, { x: 1, y })
  return crossing && { seam: center.id, along: alongOf(path, crossing) }
}

/** The direction down a sleeve: along the grain above the elbow, along the forearm's line below it. */
function sleeveDown(piece: Piece, part: ChangeLengthSettings['part']): Point {
  const line =
    (part === 'below elbow' ? piece.lines.find((l) => l.id === 'forearm line') : undefined) ??
    piece.lines.find((l) => l.id === 'grain')
  const { front, back } = underarmSeams(piece)
  const wrist = piece.seams.find((seam) => baseName(seam.id) === 'wrist') as Seam
  const low = scale(add(seamStart(wrist), seamEnd(wrist)), 0.5)
  const ends = [front, back].map((seam) => pointOnSeam(seam, fromUnderarm(piece, seam, 0)))
  const high = scale(add(ends[0] as Point, ends[1] as Point), 0.5)
  const way = line ? unit(subtract(endOf(line.path), startOf(line.path))) : unit(subtract(low, high))
  return dot(way, subtract(low, high)) >= 0 ? way : scale(way, -1)
}

function underarmSeams(piece: Piece): { front: Seam; back: Seam } {
  return { front: seamOf(piece, 'front underarm seam'), back: seamOf(piece, 'back underarm seam') }
}

/** A distance from the underarm as a place along an underarm seam, or back. */
function fromUnderarm(piece: Piece, seam: Seam, along: number): number {
  const index = piece.seams.indexOf(seam)
  const before = piece.seams[(index + piece.seams.length - 1) % piece.seams.length] as Seam
  return /cap/.test(before.id) ? along : seamLength(seam) - along
}

export function wordChangeLength(order: string, given: ChangeLengthSettings, say: (mm: number) => string): SlipWords {
  const what = given.part === 'bodice' ? 'bodice, front and back' : `sleeve ${given.part}`
  const where =
    given.at !== undefined
      ? `across at ${sayPlace(given.at, say)}`
      : given.part === 'bodice'
        ? 'straight across, halfway from the waist to the bust dart or the underarm'
        : given.part === 'above elbow'
          ? 'square to the grain, halfway from the underarm to the first elbow dart'
          : 'square to the forearm, halfway from the last elbow dart to the wrist'
  return { what: `${order} the ${what} by ${say(given.by)}`, where: `${where}; seams sewn together change alike` }
}

function bothSides(word: string): Problem {
  return {
    code: 'both-sides-only',
    where: { field: 'side' },
    actual: `${word} the bodice on one side only`,
    expected: 'side: both; center front and center back have one length',
    hint: 'for one low shoulder or hip use shoulder slope, or take in or let out the waist on that side',
  }
}

function nothingThere(part: string): Problem {
  return {
    code: 'no-such-seam',
    where: { field: 'part' },
    actual: `no ${part === 'bodice' ? 'bodice' : 'sleeve'} on this pattern`,
    expected: part === 'bodice' ? 'a bodice' : 'a sleeve',
    hint: 'name a part that the pattern has',
  }
}

function notOnBoth(piece: Piece): Problem {
  return {
    code: 'cut-needs-two-ends',
    where: { piece: piece.id, field: 'at' },
    actual: 'a place from which no straight line runs across the piece',
    expected: 'a place on the side seam or on both underarm seams',
    hint: 'measure from the underarm, such as { from: underarm, toward: wrist, distance: 5 }',
  }
}
