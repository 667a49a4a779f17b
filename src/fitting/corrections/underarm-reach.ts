import * as z from 'zod'
import type { Finding, Problem } from '../../base/problem.ts'
import type { Readers } from '../../base/readers.ts'
import { failure, type Result, success } from '../../base/result.ts'
import type { Path } from '../../geometry/path.ts'
import { pieceOf, seamOf } from '../../pattern/seam.ts'
import { type CorrectionContext, defineCorrection } from '../correction.ts'
import { inSetting } from '../in-setting.ts'
import { turnedLine } from '../line-turns.ts'
import { type Effect, type OperationResult, type PatternOperation, runOperations } from '../operation.ts'
import { placeReader } from '../position.ts'
import type { SeamPosition } from '../position-map.ts'
import { placeOnRun, resolvePlace } from '../resolve-place.ts'
import { sayPlaces } from '../say-places.ts'
import { type SeamLine, seamLines } from '../seam-names.ts'
import { type SeamRun, seamPosition, seamRun } from '../seam-run.ts'
import { carried, type ShiftStation, shiftLine, splitsFor } from '../shift-line.ts'
import type { Station } from '../shift-profile.ts'
import { shiftSeam } from '../shift-seam.ts'
import { asFrontHalf, MOST_CHANGE, type ReachOutcome, reachOutcome, reachShape } from './reach-profile.ts'

/** 1 1/2 in: the part of the cap that is pinned flat under the arm (common practice). */
const ALONG_CAP = 38.1

/** A corner at the underarm of more than this is worth saying, radians (5°). */
const CORNER = (5 * Math.PI) / 180

function settings(read: Readers) {
  return z.strictObject({
    by: read.positiveLength(),
    'along cap': read.positiveLength().default(ALONG_CAP),
    at: placeReader(read).optional(),
  })
}

type ReachSettings = z.output<ReturnType<typeof settings>>

/**
 * Gives the arm reach: the underarm of the sleeve rises, so that the cap is lower over the same armscye. The cap's
 * stitching line moves out by the amount at the underarm (or at a place near it) and runs to nothing on both sides;
 * both underarm seams lengthen alike; the biceps width stays and each half of the cap keeps its length within 1 mm
 * where the taper allows it.
 */
export const underarmReach = defineCorrection({
  name: 'underarm reach',
  does: 'raises the underarm of the sleeve, so that the arm can reach without lifting the bodice',
  answers: ['cannot reach forward', 'the bodice rises with the arm', 'comfortable at rest, binds reaching'],
  settings,
  defaults: [
    { setting: 'along cap', value: '1 1/2 in', source: 'the part pinned flat under the arm, common practice' },
    { setting: 'at', value: 'underarm', source: 'common practice' },
  ],
  leaves: 'the cap is lower and its lower notch spans change by up to 1 mm; rematch cap restores the ease',
  compile: (context, given) => (given.at === undefined ? atUnderarm(context, given) : nearUnderarm(context, given)),
  word: (given, say) => ({
    what: `raise the underarm of the sleeve by ${say(given.by)} for reach`,
    where:
      `${given.at === undefined ? 'at the underarm' : `at ${sayPlaces([given.at], say)}`}, to nothing ` +
      `${say(given['along cap'])} along the cap on both sides; both underarm seams lengthen alike`,
  }),
})

/** The caps of the mock-up as worn, each a run from underarm to underarm. */
function caps({ worn, side }: CorrectionContext, given: ReachSettings): Result<SeamRun[]> {
  const runs = seamLines(worn, 'cap', side).map((line) => seamRun(pieceOf(worn, line.piece), line.seams))
  if (runs.length === 0) return failure(noCap())
  const short = runs.find((run) =>
    run.seams.some((seam) => (run.seamLengths.get(seam.id) as number) <= given['along cap']),
  )
  return short ? failure(tooFarAlong(short, given['along cap'])) : success(runs)
}

function atUnderarm(context: CorrectionContext, given: ReachSettings): Result<readonly PatternOperation[]> {
  const runs = caps(context, given)
  if (!runs.ok) return runs
  const taper = given['along cap']
  const anchors = runs.value.flatMap((run) => [seamPosition(run, taper), seamPosition(run, run.length - taper)])
  const pieces = runs.value.map((run) => run.piece.id)
  return success([
    ...splitsFor(context.side, pieces),
    (pattern, since) =>
      runOperations(
        pattern,
        since,
        seamLines(pattern, 'cap', context.side).map(
          (line): PatternOperation =>
            (now, sinceWorn) => {
              const places = carried(anchors, sinceWorn, line, (_, at) => at)
              if (!places.ok) return places
              const run = seamRun(pieceOf(now, line.piece), line.seams)
              return raise(now, line, run, places.value, given.by)
            },
        ),
      ),
  ])
}

/** Raises both ends of one cap, with the slope at the underarm that suits its two halves. */
function raise(
  pattern: Parameters<PatternOperation>[0],
  line: SeamLine,
  run: SeamRun,
  anchors: readonly { readonly seam: string; readonly along: number }[],
  by: number,
): Result<OperationResult> {
  const [first, last] = [line.seams[0] as string, line.seams[line.seams.length - 1] as string]
  const lower = anchors.find((anchor) => anchor.seam === first)
  const upper = anchors.find((anchor) => anchor.seam === last)
  const lastLength = run.seamLengths.get(last) as number
  if (!lower || !upper) return failure(noCap())
  const tapers = [lower.along, lastLength - upper.along]
  const halves = [halfPath(run, first, true), halfPath(run, last, false)]
  // The two tapers differ only where an earlier correction moved their places; the shorter decides.
  const taper = Math.min(...tapers)
  const lines = halves.map((half) => turnedLine(half, taper))
  const shape = reachShape(lines, by, taper)
  const knee = shape.nodes.length > 2 ? shape.nodes[1] : undefined
  const stations: Station[] = [
    { seam: first, along: 0, amount: by, slope: shape.slope },
    { seam: last, along: lastLength, amount: by, slope: -shape.slope },
  ]
  if (knee) {
    stations.push({ seam: first, along: knee.at, amount: knee.amount, slope: shape.slope })
    stations.push({ seam: last, along: lastLength - knee.at, amount: knee.amount, slope: -shape.slope })
  }
  const shifted = shiftSeam(pattern, { piece: line.piece, seams: line.seams, stations, anchors: [lower, upper] })
  if (!shifted.ok) return shifted
  const outcomes = lines.map((line) => reachOutcome(line, shape))
  const findings = noticed(line.piece, outcomes)
  return success({
    ...shifted.value,
    effects: [
      ...shifted.value.effects,
      ...cornerMade(line.piece, outcomes),
      ...findings.map((finding): Effect => ({ kind: 'finding', finding })),
    ],
  })
}

/** One half of the cap from the underarm up, both halves as if they were the front one. */
function halfPath(run: SeamRun, seam: string, runsUp: boolean): Path {
  return asFrontHalf(seamOf(run.piece, seam).parts.flat(), runsUp)
}

/**
 * A place near the underarm: a line of the cap that runs on across the underarm seam, front and back together. On
 * one half the taper runs over the underarm into the other half; on both halves it is even between the two places.
 */
function nearUnderarm(context: CorrectionContext, given: ReachSettings): Result<readonly PatternOperation[]> {
  const runs = caps(context, given)
  const place = given.at
  if (!runs.ok) return runs
  if (place === undefined) return atUnderarm(context, given)
  const known = inSetting('at', resolvePlace(place, runs.value, 'cap'))
  if (!known.ok) return known
  const taper = given['along cap']
  const stations: ShiftStation[] = []
  const anchors: SeamPosition[] = []
  for (const run of runs.value) {
    const found = placeOnRun(place, run)
    // How far from the underarm, counted along the front half positive and along the back half negative.
    const away = found.map((at) => (at <= run.length / 2 ? at : at - run.length)).sort((a, b) => a - b)
    const far = away.find((distance) => Math.abs(distance) >= taper)
    if (far !== undefined) return failure(tooFarFromUnderarm(run, Math.abs(far), taper))
    const at = (distance: number) => seamPosition(run, distance >= 0 ? distance : run.length + distance)
    const low = Math.min(...away)
    const high = Math.max(...away)
    const { amount, slope } = acrossUnderarm(low, high, given.by, taper)
    for (const distance of away) if (distance !== 0) stations.push({ ...at(distance), amount: given.by })
    stations.push(
      { ...seamPosition(run, 0), amount, inward: slope },
      { ...seamPosition(run, run.length), amount, inward: -slope },
    )
    anchors.push(at(high + taper), at(low - taper))
  }
  return success(shiftLine({ seam: 'cap', side: context.side, stations, anchors }))
}

/** Amount and slope at the underarm of the taper that runs across it. */
function acrossUnderarm(low: number, high: number, by: number, taper: number): { amount: number; slope: number } {
  const outside = Math.max(low, Math.min(0, high))
  if (outside === 0) return { amount: by, slope: 0 }
  const u = Math.abs(outside) / taper
  const amount = by * (1 - u * u * (3 - 2 * u))
  return { amount, slope: (Math.sign(outside) * 6 * by * u * (1 - u)) / taper }
}

/** By how much the cap peaks across the underarm seam, radians. */
function cornerOf(outcomes: readonly ReachOutcome[]): number {
  return outcomes.reduce((sum, { turn }) => sum + turn, 0)
}

/** The corner that `noticed` explains. */
function cornerMade(piece: string, outcomes: readonly ReachOutcome[]): Effect[] {
  const angle = cornerOf(outcomes)
  return angle > CORNER ? [{ kind: 'corner made', piece, seam: 'cap', angle }] : []
}

/** What the draper should know: a corner at the underarm, or a half whose length changed by more than 1 mm. */
function noticed(piece: string, outcomes: readonly ReachOutcome[]): Finding[] {
  const findings: Finding[] = []
  const corner = cornerOf(outcomes)
  const most = outcomes.reduce((a, { change }) => (Math.abs(change) > Math.abs(a) ? change : a), 0)
  if (corner > CORNER) {
    findings.push({
      code: 'underarm-peaks',
      severity: 'note',
      where: { piece, seam: 'cap' },
      actual: `the cap peaks by ${((corner * 180) / Math.PI).toFixed(0)}° at the underarm, so that each half stays hollow`,
      expected: 'a cap that runs smoothly across the underarm seam, where the taper is long enough for it',
      hint: 'a longer taper along the cap makes it less; or leave it: it lies under the arm',
    })
  }
  if (Math.abs(most) > MOST_CHANGE) {
    findings.push({
      code: 'reach-changes-cap',
      severity: 'note',
      where: { piece, seam: 'cap' },
      actual: `a half of the cap is ${Math.abs(most).toFixed(1)} mm ${most > 0 ? 'longer' : 'shorter'} below its notch`,
      expected: `a change of at most ${MOST_CHANGE} mm`,
      hint: 'try another taper along the cap, or ease it in below the notch',
    })
  }
  return findings
}

function noCap(): Problem {
  return {
    code: 'no-such-seam',
    where: { seam: 'cap' },
    actual: 'no sleeve cap on this pattern',
    expected: 'a sleeve',
    hint: 'record the reach on a pattern with a sleeve',
  }
}

function tooFarAlong(run: SeamRun, taper: number): Problem {
  const shortest = Math.min(...run.seams.map((seam) => run.seamLengths.get(seam.id) as number))
  return {
    code: 'taper-off-seam',
    where: { piece: run.piece.id, seam: 'cap', field: 'along cap' },
    actual: `a taper of ${taper.toFixed(1)} mm along a cap whose shorter half is ${shortest.toFixed(1)} mm`,
    expected: 'a taper that ends below the crown',
    hint: 'along cap: 1 1/2 in is usual',
  }
}

function tooFarFromUnderarm(run: SeamRun, distance: number, taper: number): Problem {
  return {
    code: 'place-too-far',
    where: { piece: run.piece.id, seam: 'cap', field: 'at' },
    actual: `a place ${distance.toFixed(1)} mm from the underarm, with a taper of ${taper.toFixed(1)} mm`,
    expected: 'a place near the underarm, nearer than the taper is long',
    hint: 'name a place nearer to the underarm, or let out the cap there instead',
  }
}
