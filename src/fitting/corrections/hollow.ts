import * as z from 'zod'
import type { Finding, Problem } from '../../base/problem.ts'
import type { Readers } from '../../base/readers.ts'
import { collect, failure, type Result, success } from '../../base/result.ts'
import { atan } from '../../base/trig.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import { pieceOf } from '../../pattern/seam.ts'
import { type CorrectionContext, defineCorrection } from '../correction.ts'
import { inSetting } from '../in-setting.ts'
import { namedPlaces } from '../named-places.ts'
import { type Effect, type OperationResult, type PatternOperation, unchanged } from '../operation.ts'
import { placeReader, type SeamPlace } from '../position.ts'
import { composeMaps, type PositionMap, type SeamPosition } from '../position-map.ts'
import { resolvePlace, sayPlace } from '../resolve-place.ts'
import { type SeamLine, seamLines } from '../seam-names.ts'
import { type SeamRun, seamRun } from '../seam-run.ts'
import { carried, splitsFor } from '../shift-line.ts'
import type { Station } from '../shift-profile.ts'
import { shiftSeam } from '../shift-seam.ts'
import { hollowShape } from './hollow-shape.ts'
import { asFrontHalf } from './reach-profile.ts'

const SEAMS = ['front cap', 'back cap', 'cap', 'front armscye', 'back armscye', 'armscye'] as const
type HollowSeam = (typeof SEAMS)[number]
type HalfName = Exclude<HollowSeam, 'cap' | 'armscye'>

/** A corner at the underarm of more than this is worth saying, radians (5°). */
const CORNER = (5 * Math.PI) / 180

function settings(read: Readers) {
  const place = placeReader(read)
  return z.strictObject({
    seam: read.name('seam', SEAMS),
    by: read.positiveLength(),
    at: place.optional(),
    'taper to': read.listOf(place).optional(),
  })
}

type HollowSettings = z.output<ReturnType<typeof settings>>

/**
 * Hollows the lower part of a cap half or an armscye: the stitching line is scooped inwards between underarm and
 * notch, so that cloth that folds or cuts in there is gone. The underarm point stays; the line turns in there only as
 * much, and runs up past the notch only as far, as it must not to bend back.
 */
export const hollow = defineCorrection({
  name: 'hollow',
  does: 'scoops the lower part of a cap half or an armscye, between the underarm and the notch',
  answers: ['folds in front of the arm', 'the armscye cuts into the front of the arm', 'cloth bunches under the arm'],
  settings,
  defaults: [
    { setting: 'at', value: 'halfway from the underarm to the notch', source: 'common practice' },
    {
      setting: 'taper to',
      value: 'the underarm, and the notch or as far above it as the curve needs to stay fair',
      source: 'common practice',
    },
  ],
  leaves:
    'cap and armscye no longer lie on each other under the arm, and the ease changes; hollow the other one by the same, or rematch cap for the ease',
  compile: hollowing,
  word: (given, say) => ({
    what: `hollow the ${given.seam} by ${say(given.by)}`,
    where:
      `${given.at === undefined ? 'halfway from the underarm to the notch' : `at ${sayPlace(given.at, say)}`}, to nothing at ` +
      (given['taper to']?.map((place) => sayPlace(place, say)).join('; ') ??
        'the underarm and at the notch or a little above it'),
  }),
})

/** One half on the mock-up as worn: where it is deepest and where it runs to nothing. */
interface Half {
  readonly name: HalfName
  readonly deepest: SeamPosition
  readonly tapers: readonly SeamPosition[]
}

function hollowing({ worn, side }: CorrectionContext, given: HollowSettings): Result<readonly PatternOperation[]> {
  const names = halvesOf(given.seam)
  const runs = names.flatMap((name) =>
    seamLines(worn, name, side).map((line) => ({ name, run: seamRun(pieceOf(worn, line.piece), line.seams) })),
  )
  if (runs.length === 0) return failure(noSuchSeam(given.seam))
  const halves = collect(runs.map(({ name, run }) => halfOf(name, run, given)))
  if (!halves.ok) return halves
  return success([
    ...splitsFor(side, [...new Set(runs.map(({ run }) => run.piece.id))]),
    (pattern, since) => {
      let done = unchanged(pattern)
      const turns: Turn[] = []
      for (const name of names) {
        for (const line of seamLines(pattern, name, side)) {
          const next = hollowOne(
            done.pattern,
            composeMaps(since, done.map),
            line,
            halves.value.filter((half) => half.name === name),
            given,
          )
          if (!next.ok) return next
          const { result, slope } = next.value
          turns.push({ line, slope })
          done = {
            pattern: result.pattern,
            map: composeMaps(done.map, result.map),
            effects: [...done.effects, ...result.effects],
          }
        }
      }
      return success({ ...done, effects: [...done.effects, ...cornersMade(done.pattern, given.seam, turns)] })
    },
  ])
}

function halvesOf(seam: HollowSeam): HalfName[] {
  if (seam === 'cap') return ['front cap', 'back cap']
  return seam === 'armscye' ? ['front armscye', 'back armscye'] : [seam]
}

function halfOf(name: HalfName, run: SeamRun, given: HollowSettings): Result<Half> {
  const notch = name.startsWith('front') ? 'front notch' : 'back notch'
  const one = (place: SeamPlace, setting: string) => inSetting(setting, resolvePlace(place, [run], name))
  const deepest = one(given.at ?? { between: ['underarm', notch], share: 0.5 }, 'at')
  if (!deepest.ok) return deepest
  const tapers = collect(
    (given['taper to'] ?? [{ landmark: notch }]).map((place, i) => one(place, `taper to.${i + 1}`)),
  )
  if (!tapers.ok) return tapers
  return success({ name, deepest: deepest.value[0] as SeamPosition, tapers: tapers.value.flat() })
}

interface Hollowed {
  readonly result: OperationResult
  /** By how much the line turns in at the underarm, mm per mm. */
  readonly slope: number
}

function hollowOne(
  pattern: Pattern,
  since: PositionMap,
  line: SeamLine,
  halves: readonly Half[],
  given: HollowSettings,
): Result<Hollowed> {
  const deepest = carried(
    halves.map((half) => half.deepest),
    since,
    line,
    (_, at) => at.along,
  )
  if (!deepest.ok) return inSetting('at', deepest)
  const tapers = carried(
    halves.flatMap((half) => half.tapers),
    since,
    line,
    (_, at) => at.along,
  )
  if (!tapers.ok) return inSetting('taper to', tapers)
  const at = deepest.value[0]
  if (at === undefined) return success({ result: unchanged(pattern), slope: 0 })
  const run = seamRun(pieceOf(pattern, line.piece), line.seams)
  const seam = line.seams[0] as string
  const runsUp = namedPlaces(run).some((place) => place.name === 'underarm' && place.at < run.length / 2)
  // Everything from the underarm up.
  const up = (along: number) => (runsUp ? along : run.length - along)
  const places = tapers.value.map(up)
  const below = places.filter((place) => place < up(at) && place > 0.05)
  const above = places.filter((place) => place > up(at))
  const start = below.length > 0 ? Math.max(...below) : undefined
  const end = above.length > 0 ? Math.min(...above) : run.length
  const shape = hollowShape({
    half: asFrontHalf(
      run.stretches.flatMap((stretch) => stretch.path),
      runsUp,
    ),
    length: run.length,
    by: given.by,
    deepest: up(at),
    ...(start === undefined ? {} : { start }),
    end,
    fixed: given['taper to'] !== undefined,
  })
  const stations: Station[] = [{ seam, along: at, amount: -given.by }]
  if (start === undefined) {
    stations.push({ seam, along: up(0), amount: 0, slope: runsUp ? -shape.slope : shape.slope })
  }
  const anchors = [shape.end, ...(start === undefined ? [] : [start])].map((place) => ({ seam, along: up(place) }))
  const shifted = shiftSeam(pattern, { piece: line.piece, seams: line.seams, stations, anchors })
  return shifted.ok ? success({ result: shifted.value, slope: shape.slope }) : shifted
}

interface Turn {
  readonly line: SeamLine
  readonly slope: number
}

/** The corner that the line makes at the underarm, front and back together, where it shows. */
function cornersMade(pattern: Pattern, seam: HollowSeam, turns: readonly Turn[]): Effect[] {
  const family = seam.endsWith('cap') ? 'cap' : 'armscye'
  return (['left', 'right'] as const).flatMap((side, index): Effect[] => {
    const here = turns.filter(({ line }) => line.side === 'both' || line.side === side)
    // A pattern that is alike on both sides is told of once.
    if (index > 0 && here.every(({ line }) => line.side === 'both')) return []
    const angle = here.reduce((sum, { slope }) => sum + atan(slope), 0)
    if (angle <= CORNER) return []
    const pieces = new Set(seamLines(pattern, family, side).map((line) => line.piece))
    const piece = here[0]?.line.piece ?? ''
    return [
      ...[...pieces].map((id): Effect => ({ kind: 'corner made', piece: id, seam: family, angle })),
      { kind: 'finding', finding: peaks(piece, family, angle) },
    ]
  })
}

function peaks(piece: string, seam: string, angle: number): Finding {
  return {
    code: 'underarm-peaks',
    severity: 'note',
    where: { piece, seam },
    actual: `the ${seam} peaks by ${((angle * 180) / Math.PI).toFixed(0)}° at the underarm, so that the hollow begins without a bulge`,
    expected: 'an edge that runs smoothly across the seam under the arm, where the hollow is shallow enough for it',
    hint: 'hollow by less, or true the edge across the seam by hand',
  }
}

function noSuchSeam(seam: string): Problem {
  return {
    code: 'no-such-seam',
    where: { seam, field: 'seam' },
    actual: `no ${seam} on this pattern`,
    expected: 'a sleeve for a cap, a bodice for an armscye',
    hint: 'name a seam that the pattern has',
  }
}
