import * as z from 'zod'
import type { Problem } from '../../base/problem.ts'
import type { Readers } from '../../base/readers.ts'
import { collect, failure, type Result, success } from '../../base/result.ts'
import { pieceOf } from '../../pattern/seam.ts'
import { baseName } from '../../pattern/side-names.ts'
import type { CorrectionContext, SettingDefault, SlipWords } from '../correction.ts'
import { inSetting } from '../in-setting.ts'
import { notchPlaces } from '../named-places.ts'
import type { PatternOperation } from '../operation.ts'
import { placeReader, type SeamPlace } from '../position.ts'
import type { SeamPosition } from '../position-map.ts'
import type { CorrectionSide } from '../record.ts'
import { resolvePlace } from '../resolve-place.ts'
import { sayPlaces } from '../say-places.ts'
import { SEAM_NAME_LIST, type SeamName, seamLines } from '../seam-names.ts'
import { nextSeam, previousSeam, runPosition, type SeamRun, seamPosition, seamRun } from '../seam-run.ts'
import { shiftLine } from '../shift-line.ts'

/**
 * A notch nearer to the let-out place than this is not where it runs to nothing by itself, mm: 1 in, common
 * practice; and never nearer than twice the amount, or the line would turn too sharply.
 */
const SHORTEST_TAPER = 25.4
const TAPER_PER_AMOUNT = 2

/** The settings of `let out` and `take in`. */
export function moveSeamSettings(read: Readers) {
  const place = placeReader(read)
  return z.strictObject({
    seam: read.name('seam', SEAM_NAME_LIST),
    by: read.positiveLength(),
    at: read.listOf(place).optional(),
    from: place.optional(),
    to: place.optional(),
    'taper to': read.listOf(place).optional(),
  })
}

export type MoveSeamSettings = z.output<ReturnType<typeof moveSeamSettings>>

export const MOVE_SEAM_DEFAULTS = [
  { setting: 'at, from, to', value: 'the whole seam, evenly, except where it tapers', source: 'common practice' },
  {
    setting: 'taper to',
    value: 'on each side the next notch at least 1 in and twice the amount away, else the end of the seam',
    source: 'common practice',
  },
] as const satisfies readonly SettingDefault[]

/** Moves the named line by `by` times `sign`: outwards with 1, inwards with −1. */
export function moveSeam(
  context: CorrectionContext,
  settings: MoveSeamSettings,
  sign: 1 | -1,
): Result<readonly PatternOperation[]> {
  const { worn, side } = context
  const runs = seamLines(worn, settings.seam, side).map((line) => seamRun(pieceOf(worn, line.piece), line.seams))
  if (runs.length === 0) return failure(noSuchSeam(settings.seam))
  const tapers = resolveAll(settings['taper to'] ?? [], runs, settings.seam, 'taper to')
  if (!tapers.ok) return tapers
  const stations = stationsOf(settings, runs, tapers.value, side)
  if (!stations.ok) return stations
  const anchors = [...tapers.value, ...defaultTapers(settings, runs, stations.value, tapers.value)]
  return success(
    shiftLine({
      seam: settings.seam,
      side,
      stations: stations.value.map((place) => ({ ...place, amount: sign * settings.by })),
      anchors,
    }),
  )
}

function resolveAll(
  places: readonly SeamPlace[],
  runs: readonly SeamRun[],
  seam: string,
  setting: string,
): Result<SeamPosition[]> {
  const found = collect(places.map((place, i) => inSetting(`${setting}.${i + 1}`, resolvePlace(place, runs, seam))))
  return found.ok ? success(found.value.flat()) : found
}

/** Where the full amount is: at places, along a span, or at the ends of the whole seam that do not taper. */
function stationsOf(
  settings: MoveSeamSettings,
  runs: readonly SeamRun[],
  tapers: readonly SeamPosition[],
  side: CorrectionSide,
): Result<SeamPosition[]> {
  const { at, from, to, seam } = settings
  if ((from === undefined) !== (to === undefined) || (at !== undefined && from !== undefined)) {
    return failure(placesContradict(seam))
  }
  if (at !== undefined) return resolveAll(at, runs, seam, 'at')
  if (from !== undefined && to !== undefined) {
    const span = collect([resolveAll([from], runs, seam, 'from'), resolveAll([to], runs, seam, 'to')])
    return span.ok ? success(span.value.flat()) : span
  }
  const ends = runs.flatMap((run) =>
    [0, run.length]
      // One side alone cannot move the center of a piece: there it runs to nothing.
      .filter((end) => side === 'both' || !isCenter(run, end))
      .filter((end) => !tapers.some((taper) => Math.abs((runPosition(run, taper) ?? Number.NaN) - end) < 0.05))
      .map((end) => seamPosition(run, end)),
  )
  return ends.length > 0 ? success(ends) : failure(nowhereFull(seam))
}

/** Whether an end of the run is the center of a piece on the fold, or of one that was opened. */
function isCenter(run: SeamRun, end: number): boolean {
  const seam = (end === 0 ? run.seams[0] : run.seams[run.seams.length - 1]) as SeamRun['seams'][number]
  const neighbour = end === 0 ? previousSeam(run.piece, seam.id) : nextSeam(run.piece, seam.id)
  if (run.piece.side === 'fold') return neighbour.allowance === 0
  return run.piece.side === 'whole' && baseName(neighbour.id) === baseName(seam.id)
}

/**
 * Anchors on the sides of stations where none was given: the next notch far enough away; the ends of the seam are
 * anchors by themselves. Between two stations only when no taper was given at all, and never inside a span.
 */
function defaultTapers(
  settings: MoveSeamSettings,
  runs: readonly SeamRun[],
  stations: readonly SeamPosition[],
  tapers: readonly SeamPosition[],
): SeamPosition[] {
  if (settings.at === undefined && settings.from === undefined) return []
  const least = Math.max(SHORTEST_TAPER, TAPER_PER_AMOUNT * settings.by)
  return runs.flatMap((run) => {
    const onRun = (places: readonly SeamPosition[]) =>
      places.map((place) => runPosition(run, place)).filter((at): at is number => at !== undefined)
    const full = onRun(stations).sort((a, b) => a - b)
    const given = onRun(tapers)
    const notches = sharedNotches(settings.seam, runs, run)
    const between = (a: number, b: number) => given.some((at) => at > a && at < b)
    return full.flatMap((at, i) =>
      [-1, 1].flatMap((way) => {
        const neighbour = full[i + way]
        const end = neighbour ?? (way < 0 ? 0 : run.length)
        if (between(Math.min(at, end), Math.max(at, end)) || given.includes(end)) return []
        if (neighbour !== undefined && (given.length > 0 || settings.from !== undefined)) return []
        const next = (way < 0 ? [...notches].reverse() : notches).find(
          (notch) => (notch - at) * way >= least && (neighbour === undefined || (neighbour - notch) * way >= least),
        )
        return next === undefined ? [] : [seamPosition(run, next)]
      }),
    )
  })
}

/**
 * The notches that a line tapers to: its own and, where both underarm seams are moved, those of the other one at the same
 * distance from the underarm, so that front and back change alike. The two seams of a sleeve run opposite ways.
 */
function sharedNotches(seam: SeamName, runs: readonly SeamRun[], run: SeamRun): number[] {
  const own = notchPlaces(run)
  if (seam !== 'underarm seam') return own
  const others = runs.filter((other) => other !== run && other.piece === run.piece)
  const theirs = others
    .flatMap((other) => notchPlaces(other).map((at) => run.length - at))
    .filter((at) => at > 0 && at < run.length)
  return [...own, ...theirs].sort((a, b) => a - b)
}

export function wordMoveSeam(order: string, settings: MoveSeamSettings, say: (mm: number) => string): SlipWords {
  const { at, from, to, seam } = settings
  const where =
    at !== undefined
      ? `at ${sayPlaces(at, say)}`
      : from !== undefined && to !== undefined
        ? `from ${sayPlaces([from], say)} to ${sayPlaces([to], say)}`
        : 'along the whole seam'
  const taper = settings['taper to']
  const nothing =
    taper !== undefined
      ? `, to nothing at ${sayPlaces(taper, say)}`
      : at === undefined && from === undefined
        ? ''
        : ', to nothing at the next notches or the ends of the seam'
  return { what: `${order} the ${seam} by ${say(settings.by)}`, where: `${where}${nothing}` }
}

function noSuchSeam(seam: SeamName): Problem {
  return {
    code: 'no-such-seam',
    where: { seam, field: 'seam' },
    actual: `no ${seam} on this pattern`,
    expected: 'a seam of one of its pieces',
    hint: 'name a seam that the pattern has',
  }
}

function placesContradict(seam: string): Problem {
  return {
    code: 'places-contradict',
    where: { seam, field: 'at' },
    actual: 'at together with from and to, or only one of from and to',
    expected: 'at: one or more places; or from: and to: for a span; or neither for the whole seam',
    hint: 'keep the one that was meant',
  }
}

function nowhereFull(seam: string): Problem {
  return {
    code: 'tapers-at-both-ends',
    where: { seam, field: 'taper to' },
    actual: `the ${seam} is to taper to nothing at both ends and no place has the full amount`,
    expected: 'a place with the full amount',
    hint: 'say at: and the place where it is largest',
  }
}
