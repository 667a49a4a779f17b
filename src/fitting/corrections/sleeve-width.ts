import * as z from 'zod'
import type { Problem } from '../../base/problem.ts'
import type { Readers } from '../../base/readers.ts'
import { failure, type Result, success } from '../../base/result.ts'
import { type Cubic, pointAt, line as straight } from '../../geometry/cubic.ts'
import { lineCrossings } from '../../geometry/line-crossings.ts'
import { endOf, startOf } from '../../geometry/path.ts'
import { directionAlong, pathLength, pointAlong } from '../../geometry/path-length.ts'
import { add, distance, dot, type Point, rightOf, scale, subtract, unit } from '../../geometry/point.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import type { Line, Piece, Seam } from '../../pattern/piece.ts'
import { directionOnSeam, pieceOf, pointOnSeam, seamOf } from '../../pattern/seam.ts'
import type { CorrectionContext, SettingDefault, SlipWords } from '../correction.ts'
import { evenUnderarmSeams } from '../even-underarm-seams.ts'
import { type OperationResult, type PatternOperation, runOperations } from '../operation.ts'
import { nextSeam, previousSeam } from '../seam-run.ts'
import type { Anchor, Station } from '../shift-profile.ts'
import { shiftSeam } from '../shift-seam.ts'
import { downFromUnderarm, elbowBelowUnderarm, type UnderarmHalf, underarmHalves } from '../underarm-half.ts'
import { widenUpperArm } from '../widen-upper-arm.ts'
import { onSleeves } from './on-sleeves.ts'

const PLACES = ['upper arm', 'elbow', 'wrist'] as const
const KEPT = ['cap length', 'cap height'] as const

/** The settings of `widen` and `narrow`. */
export function sleeveWidthSettings(read: Readers) {
  return z.strictObject({
    at: read.name('place', PLACES),
    by: read.positiveLength(),
    keep: read.name('thing to keep', KEPT).optional(),
  })
}

export type SleeveWidthSettings = z.output<ReturnType<typeof sleeveWidthSettings>>

export const SLEEVE_WIDTH_DEFAULTS = [
  { setting: 'keep', value: 'cap length, for the upper arm', source: 'common practice: the cap sews as it did' },
] as const satisfies readonly SettingDefault[]

/** Widens the sleeve by `by` times `sign`, half of it at each underarm seam. */
export function changeWidth(
  context: CorrectionContext,
  given: SleeveWidthSettings,
  sign: 1 | -1,
): Result<readonly PatternOperation[]> {
  if (given.keep !== undefined && given.at !== 'upper arm') return failure(nothingToKeep(given.at))
  const by = sign * given.by
  const change = (id: string): PatternOperation => {
    if (given.at === 'upper arm') {
      return (pattern) => widenUpperArm(pattern, { piece: id, by, keep: given.keep ?? 'cap length' })
    }
    const at = given.at
    return (pattern, since) => {
      const piece = pieceOf(pattern, id)
      const [front, back] = underarmHalves(piece)
      const elbow = elbowBelowUnderarm(piece)
      if (elbow === undefined) return failure(noElbow(piece))
      return runOperations(pattern, since, [
        (now) => widenOneSeam(now, id, { name: 'front', at, by: by / 2, elbow }),
        (now) => widenOneSeam(now, id, { name: 'back', at, by: by / 2, elbow }),
        (now) => evenUnderarmSeams(now, id, back.length - front.length),
      ])
    }
  }
  return onSleeves(context, change)
}

interface OneSeam {
  readonly name: 'front' | 'back'
  readonly at: 'elbow' | 'wrist'
  readonly by: number
  /** How far below the underarm the elbow is on both seams, mm. */
  readonly elbow: number
}

/** Moves one underarm seam out at the elbow or the wrist, so that the width there grows by `by` mm on this side. */
function widenOneSeam(pattern: Pattern, id: string, { name, at, by, elbow }: OneSeam): Result<OperationResult> {
  const piece = pieceOf(pattern, id)
  const half = underarmHalves(piece)[name === 'front' ? 0 : 1]
  const place = (down: number): Anchor => ({ seam: half.seam.id, along: downFromUnderarm(half, down) })
  const station = place(at === 'elbow' ? elbow : half.length)
  const amount = at === 'elbow' ? elbowAmount(piece, half, station.along, by) : wristAmount(piece, half, by)
  const stations: Station[] = [{ ...station, amount }]
  const anchors = at === 'elbow' ? [place(0), place(half.length)] : [place(elbow)]
  const shifted = shiftSeam(pattern, { piece: id, seams: [half.seam.id], stations, anchors })
  if (!shifted.ok || at !== 'elbow') return shifted
  return success({ ...shifted.value, pattern: elbowLineTo(shifted.value.pattern, piece, half, station.along, by) })
}

/** A drafted elbow line may end a hair beside the seam between two darts: its end goes to the moved seam all the same. */
function elbowLineTo(pattern: Pattern, before: Piece, half: UnderarmHalf, along: number, by: number): Pattern {
  const old = before.lines.find((line) => line.id === 'elbow line')
  if (!old) return pattern
  const piece = pieceOf(pattern, before.id)
  const at = pointOnSeam(half.seam, along)
  const ends = [startOf(old.path), endOf(old.path)] as const
  const [near, far] = distance(ends[0], at) < distance(ends[1], at) ? ends : [ends[1], ends[0]]
  const guess = add(near, scale(unit(subtract(near, far)), by))
  const seam = seamOf(piece, half.seam.id).parts.flat()
  const [target] = lineCrossings(seam, far, near)
    .map(({ index, t }) => pointAt(seam[index] as Cubic, t))
    .sort((a, b) => distance(a, guess) - distance(b, guess))
  const end = target && distance(target, guess) < Math.abs(by) ? target : guess
  const present = piece.lines.find((line) => line.id === 'elbow line') ?? old
  const path = near === ends[0] ? [straight(end, endOf(present.path))] : [straight(startOf(present.path), end)]
  const lines = piece.lines.map((line): Line => (line.id === 'elbow line' ? { ...line, path } : line))
  return { ...pattern, pieces: pattern.pieces.map((p) => (p === piece ? { ...p, lines } : p)) }
}

/** Square to the seam, what is `by` along the elbow line. */
function elbowAmount(piece: Piece, half: UnderarmHalf, along: number, by: number): number {
  const line = piece.lines.find((l) => l.id === 'elbow line')
  if (!line) return by
  const across = unit(subtract(endOf(line.path), startOf(line.path)))
  return by * Math.abs(dot(across, rightOf(directionOnSeam(half.seam, along))))
}

/** Square to the seam, what lengthens the wrist by `by` at this end of it; negative shortens it along its own curve. */
function wristAmount(piece: Piece, half: UnderarmHalf, by: number): number {
  const wrist = half.runsDown ? nextSeam(piece, half.seam.id) : previousSeam(piece, half.seam.id)
  const outward = rightOf(directionOnSeam(half.seam, half.runsDown ? half.length : 0))
  return dot(wristStep(wrist, half.runsDown ? 'start' : 'end', by), outward)
}

/** From the end of the wrist to where it ends when it is `by` mm longer, straight on, or shorter. */
function wristStep(wrist: Seam, end: 'start' | 'end', by: number): Point {
  const path = wrist.parts.flat()
  const length = pathLength(path)
  const [at, out] = end === 'start' ? [0, -1] : [length, 1]
  const direction = directionAlong(path, at)
  if (by >= 0) return { x: direction.x * by * out, y: direction.y * by * out }
  return subtract(pointAlong(path, at + out * by), pointAlong(path, at))
}

export function wordSleeveWidth(order: string, given: SleeveWidthSettings, say: (mm: number) => string): SlipWords {
  const where = {
    'upper arm': `to nothing above the elbow darts; the ${given.keep ?? 'cap length'} stays`,
    elbow: 'to nothing at the underarm and the wrist',
    wrist: 'to nothing at the elbow',
  }[given.at]
  return {
    what: `${order} the ${given.at} by ${say(given.by)}`,
    where: `half at the front and half at the back underarm seam, ${where}`,
  }
}

function nothingToKeep(at: string): Problem {
  return {
    code: 'nothing-to-keep',
    where: { field: 'keep' },
    actual: `keep: for the ${at}`,
    expected: 'keep: only for the upper arm, where the cap changes',
    hint: 'leave keep out',
  }
}

function noElbow(piece: Piece): Problem {
  return {
    code: 'no-elbow-notch',
    where: { piece: piece.id, seam: 'front underarm seam', field: 'at' },
    actual: 'no elbow notch on the front underarm seam',
    expected: 'the notch that says where the elbow is',
    hint: 'let out or take in the underarm seam at a place that you name instead',
  }
}
