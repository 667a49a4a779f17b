import * as z from 'zod'
import type { Problem } from '../../base/problem.ts'
import type { Readers } from '../../base/readers.ts'
import { collect, failure, type Result, success } from '../../base/result.ts'
import { CAP } from '../../drafting/defaults.ts'
import { endOf, startOf } from '../../geometry/path.ts'
import { point, scale, subtract, unit } from '../../geometry/point.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import type { Piece } from '../../pattern/piece.ts'
import { pieceOf } from '../../pattern/seam.ts'
import { bendSeams } from '../bend-seams.ts'
import { bentBack } from '../cap-fairness.ts'
import { type CapLine, capLine, fromUnderarm, sleevesOf } from '../cap-line.ts'
import type { CorrectionContext, SettingDefault, SlipWords } from '../correction.ts'
import { holdMatchPoints } from '../hold-match-points.ts'
import { inSetting } from '../in-setting.ts'
import { crownBends } from '../move-crown.ts'
import { type OperationResult, type PatternOperation, runOperations, unchanged } from '../operation.ts'
import { placeReader, type SeamPlace } from '../position.ts'
import type { PositionMap, SeamPosition } from '../position-map.ts'
import { resolvePlace } from '../resolve-place.ts'
import { sayPlaces } from '../say-places.ts'
import { seamLines } from '../seam-names.ts'
import { seamRun } from '../seam-run.ts'
import { carried, splitsFor } from '../shift-line.ts'
import { sleeveFigures } from '../sleeve-figures.ts'

/** The cap rises at most this fast on its way up to the crown, mm per mm: steeper is a tower, not a cap. Our own. */
const STEEPEST = 0.6

/** The settings of `raise cap` and `lower cap`. */
export function capHeightSettings(read: Readers) {
  return z.strictObject({ by: read.positiveLength(), 'taper to': read.listOf(placeReader(read)).optional() })
}

export type CapHeightSettings = z.output<ReturnType<typeof capHeightSettings>>

export const CAP_HEIGHT_DEFAULTS = [
  { setting: 'taper to', value: 'front notch and back notch', source: 'common practice' },
] as const satisfies readonly SettingDefault[]

const NOTCHES: readonly SeamPlace[] = [{ landmark: 'front notch' }, { landmark: 'back notch' }]

/**
 * Moves the crown along the grain by `by` times `sign`, running to nothing at the notches or the places given; below
 * them, and so at the underarm and the biceps line, nothing moves.
 */
export function moveCapHeight(
  { worn, side }: CorrectionContext,
  given: CapHeightSettings,
  sign: 1 | -1,
): Result<readonly PatternOperation[]> {
  const runs = seamLines(worn, 'cap', side).map((line) => seamRun(pieceOf(worn, line.piece), line.seams))
  if (runs.length === 0) return failure(noCap())
  const places = given['taper to'] ?? NOTCHES
  const tapers = collect(places.map((place, i) => inSetting(`taper to.${i + 1}`, resolvePlace(place, runs, 'cap'))))
  if (!tapers.ok) return tapers
  const pieces = runs.map((run) => run.piece.id)
  return success([
    ...splitsFor(side, pieces),
    (pattern, since) =>
      runOperations(
        pattern,
        since,
        sleevesOf(pattern, side).map(
          (id): PatternOperation =>
            (now, sinceWorn) =>
              moveOne(now, sinceWorn, capLine(pieceOf(now, id)), tapers.value.flat(), sign * given.by),
        ),
      ),
  ])
}

function moveOne(
  pattern: Pattern,
  since: PositionMap,
  cap: CapLine,
  tapers: readonly SeamPosition[],
  by: number,
): Result<OperationResult> {
  if (by === 0) return success(unchanged(pattern))
  const kept: number[] = []
  for (const half of cap.halves) {
    const line = { piece: cap.piece.id, seams: [half.seam.id], side: 'both' } as const
    const places = carried(tapers, since, line, (_, at) => fromUnderarm(half, at.along))
    if (!places.ok) return inSetting('taper to', places)
    // Without a place on this half it runs to nothing where the underarm part ends.
    const keep = places.value.length > 0 ? Math.max(...places.value) : Math.min(CAP.copied, half.length / 3)
    const room = half.length - keep
    if ((1.5 * Math.abs(by)) / room > STEEPEST) return failure(tooShort(cap.piece, half.seam.id, by, room))
    kept.push(keep)
  }
  const low = by < 0 ? tooLow(cap, by) : undefined
  if (low) return failure(low)
  const move = { by: scale(up(cap.piece), by), kept: kept as [number, number] }
  const bent = bendSeams(pattern, cap.piece.id, crownBends(cap, move))
  if (!bent.ok) return bent
  const back = bentBack(cap, capLine(pieceOf(bent.value.pattern, cap.piece.id)))
  if (back) return failure(bendsBack(cap, back.seam.id, by))
  return success({ ...bent.value, pattern: holdMatchPoints(pattern, bent.value.pattern, cap) })
}

/** The way up the grain; pieces are drawn upright, so without a grain line it is up the sheet. */
function up(piece: Piece) {
  const grain = piece.lines.find((line) => line.id === 'grain')
  if (!grain) return point(0, 1)
  const along = unit(subtract(endOf(grain.path), startOf(grain.path)))
  return along.y < 0 ? scale(along, -1) : along
}

function tooLow(cap: CapLine, by: number): Problem | undefined {
  const height = sleeveFigures(cap.piece)?.capHeight ?? 0
  const length = cap.halves[0].length + cap.halves[1].length
  if (height + by >= CAP.leastRatio * length) return undefined
  return {
    code: 'cap-too-low',
    where: { piece: cap.piece.id, seam: 'cap' },
    actual: `a cap ${height.toFixed(1)} mm high lowered by ${(-by).toFixed(1)} mm`,
    expected: `at least ${(CAP.leastRatio * length).toFixed(1)} mm left, ${CAP.leastRatio * 100} % of the cap's length`,
    hint: 'lower it by less, or widen the upper arm instead',
  }
}

function bendsBack(cap: CapLine, seam: string, by: number): Problem {
  return {
    code: 'cap-bends-back',
    where: { piece: cap.piece.id, seam },
    actual: `the crown ${by > 0 ? 'raised' : 'lowered'} by ${Math.abs(by).toFixed(1)} mm, after which the ${seam} would change between hollow and round more than once`,
    expected: 'one change from hollow to round on each half',
    hint: 'take a smaller amount, or taper to a place farther down',
  }
}

function tooShort(piece: Piece, seam: string, by: number, room: number): Problem {
  return {
    code: 'taper-too-short',
    where: { piece: piece.id, seam },
    actual: `${Math.abs(by).toFixed(1)} mm within ${room.toFixed(1)} mm of the ${seam}`,
    expected: `at least ${((1.5 * Math.abs(by)) / STEEPEST).toFixed(1)} mm from the taper to the crown for this amount`,
    hint: 'taper to a place farther down, or take a smaller amount',
  }
}

export function wordCapHeight(order: string, given: CapHeightSettings, say: (mm: number) => string): SlipWords {
  return {
    what: `${order} the cap by ${say(given.by)} at the crown`,
    where: `along the grain, to nothing at ${sayPlaces(given['taper to'] ?? NOTCHES, say)}; the underarm and the biceps width stay`,
  }
}

function noCap(): Problem {
  return {
    code: 'no-such-seam',
    where: { seam: 'cap' },
    actual: 'no sleeve cap on this pattern',
    expected: 'a sleeve',
    hint: 'record this on a pattern with a sleeve',
  }
}
