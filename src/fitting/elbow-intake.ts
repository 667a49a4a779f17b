import type { Problem } from '../base/problem.ts'
import { failure, type Result, success } from '../base/result.ts'
import { acos } from '../base/trig.ts'
import { endOf, type Path, startOf } from '../geometry/path.ts'
import {
  add,
  cross,
  distance,
  leftOf,
  magnitude,
  type Point,
  point,
  rotateAbout,
  scale,
  subtract,
  turnBetween,
  unit,
} from '../geometry/point.ts'
import type { Pattern } from '../pattern/pattern.ts'
import type { Dart, Piece } from '../pattern/piece.ts'
import { pieceOf } from '../pattern/seam.ts'
import { baseName } from '../pattern/side-names.ts'
import { bendParts, type PartBend } from './bend-parts.ts'
import type { Bend } from './bend-path.ts'
import { type Elbow, elbowOf, mouthMiddle } from './elbow.ts'
import { noDarts } from './move-elbow-darts.ts'
import { type OperationResult, unchanged } from './operation.ts'
import { replaceSeams } from './replace-seams.ts'

export interface ElbowIntakeOptions {
  /** The sleeve. */
  readonly piece: string
  /** Intake of all elbow darts together, mm; they share it as they do now. */
  readonly intake: number
}

/** All elbow darts together: 1/4 to 2 1/2 in; less is eased in, more is a bent arm's. Our own. */
const LEAST = 6
const MOST = 64

/** The front seam bends to the turned forearm over this much on both sides of the elbow, mm, as it is drafted. */
const BEND = 70

/** Seams are trued to the mouths over at most this much, mm. */
const TRUE_OVER = 70

const ORIGIN = point(0, 0)

/**
 * Gives the elbow darts another intake. The forearm turns about the elbow notch of the front seam, forward for more and
 * back for less, until the mouths have their widths, to 1e-6 mm; everything beyond moves as it is, so both underarm
 * seams keep their sewn lengths (within 0.1 mm). The darts keep their lengths and get equal legs; the seam is trued to
 * the folded mouths; the front seam bends smoothly. The same pattern where nothing changes. Problems: no elbow darts, an
 * intake that is no elbow's.
 */
export function setElbowIntake(pattern: Pattern, { piece: id, intake }: ElbowIntakeOptions): Result<OperationResult> {
  const piece = pieceOf(pattern, id)
  const elbow = elbowOf(piece)
  if (!elbow) return failure(noDarts(piece))
  const widths = elbow.darts.map(({ mouth }) => distance(mouth[0], mouth[1]))
  const total = widths.reduce((sum, width) => sum + width, 0)
  if (Math.abs(intake - total) < 1e-6) return success(unchanged(pattern))
  if (intake < LEAST || intake > MOST) return failure(outOfRange(piece, intake))
  const turns = turnsFor(
    elbow,
    widths.map((width) => (width * intake) / total),
  )
  const whole = turns.reduce((sum, turn) => sum + turn, 0)
  const darts = elbow.darts.map((dart, i) => turnedDart(dart, elbow, before(elbow, turns, i), turns[i] as number))
  const wrist = piece.seams.find((seam) => baseName(seam.id) === 'wrist')
  const front = bendParts(elbow.front.seam, (_, length) => frontBend(elbow, length, whole))
  const back = bendParts(elbow.back.seam, (index, length) => backBend(elbow, turns, darts, index, length))
  const below = wrist && bendParts(wrist, (_, length) => ({ from: 0, to: length, bend: rigid(elbow.notch.at, whole) }))
  return replaceSeams(pattern, piece, {
    seams: new Map([
      [elbow.front.seam.id, front],
      [elbow.back.seam.id, back],
      ...(wrist && below ? [[wrist.id, below] as const] : []),
    ]),
    darts: piece.darts.map((dart) => darts[elbow.darts.indexOf(dart)] ?? dart),
    inside: (at) => rotateAbout(at, elbow.notch.at, turnInside(elbow, turns, at)),
  })
}

/** The wrist's side of each dart's mouth turns by this about the elbow notch, seen from the underarm; radians. */
function turnsFor({ darts, notch, back }: Elbow, widths: readonly number[]): number[] {
  return darts.map((dart, i) => {
    const [still, moving] = back.runsDown ? dart.mouth : [dart.mouth[1], dart.mouth[0]]
    // The two legs of the wedge seen from the notch: the mouth is the third side of a triangle.
    const one = subtract(still, notch.at)
    const other = subtract(moving, notch.at)
    const [r, s, w] = [magnitude(one), magnitude(other), widths[i] as number]
    const angle = acos((r * r + s * s - w * w) / (2 * r * s))
    const present = turnBetween(one, other)
    return Math.sign(present) * angle - present
  })
}

/** The turn of what lies between the underarm and a dart, in the seam's order. */
function before({ back }: Elbow, turns: readonly number[], index: number): number {
  const part = back.runsDown ? turns.slice(0, index) : turns.slice(index + 1)
  return part.reduce((sum, turn) => sum + turn, 0)
}

/** A dart whose mouth opened by a turn: its point as far from the mouth as before, on the mouth's own middle line. */
function turnedDart(dart: Dart, { notch, back }: Elbow, base: number, turn: number): Dart {
  const [a, b] = back.runsDown ? [base, base + turn] : [base + turn, base]
  const mouth = [rotateAbout(dart.mouth[0], notch.at, a), rotateAbout(dart.mouth[1], notch.at, b)] as const
  const depth = distance(mouthMiddle(dart), dart.point)
  const inward = leftOf(unit(subtract(mouth[1], mouth[0])))
  return { ...dart, mouth, point: add(mouthMiddle({ ...dart, mouth }), scale(inward, depth)) }
}

/** Everything turned about a center as it is. */
function rigid(center: Point, turn: number): Bend {
  return (_, at, direction) => ({
    by: subtract(rotateAbout(at, center, turn), at),
    change: subtract(rotateAbout(direction, ORIGIN, turn), direction),
  })
}

/** The front seam: from the elbow down turned, above it as it was, bent smoothly between. */
function frontBend({ front, notch }: Elbow, length: number, turn: number): PartBend {
  const reach = Math.min(BEND, notch.along - 1, length - notch.along - 1)
  const way = front.runsDown ? 1 : -1
  const share = (at: number) => Math.min(1, Math.max(0, ((at - notch.along) * way + reach) / (2 * reach)))
  const bend: Bend = (at, p, direction) => {
    const u = share(at)
    const angle = turn * u * u * (3 - 2 * u)
    const rate = (way * turn * 6 * u * (1 - u)) / (2 * reach)
    const moved = rotateAbout(p, notch.at, angle)
    const spin = scale(leftOf(subtract(moved, notch.at)), rate)
    return { by: subtract(moved, p), change: add(subtract(rotateAbout(direction, ORIGIN, angle), direction), spin) }
  }
  return front.runsDown ? { from: notch.along - reach, to: length, bend } : { from: 0, to: notch.along + reach, bend }
}

/** A part of the back seam: turned as a whole, and trued at its ends to the darts that open there. */
function backBend(
  elbow: Elbow,
  turns: readonly number[],
  darts: readonly Dart[],
  index: number,
  length: number,
): PartBend | undefined {
  const { back, notch } = elbow
  const base = before(elbow, turns, back.runsDown ? index : index - 1)
  const starts = -kink(elbow, turns, darts, index - 1)
  const ends = kink(elbow, turns, darts, index)
  const span = Math.min(TRUE_OVER, length / (index > 0 && index < back.seam.parts.length - 1 ? 2 : 1))
  const whole = rigid(notch.at, base)
  const bend: Bend = (at, p, direction) => {
    const moved = whole(at, p, direction)
    const square = leftOf(rotateAbout(direction, ORIGIN, base))
    // A direction changes at the mouth, its place does not: u³ − u² over the span.
    const atStart = truing(1 - at / span)
    const atEnd = truing(1 - (length - at) / span)
    const off = -starts * span * atStart.value + ends * span * atEnd.value
    const slope = starts * atStart.slope + ends * atEnd.slope
    return { by: add(moved.by, scale(square, off)), change: add(moved.change, scale(square, slope)) }
  }
  if (base !== 0) return { from: 0, to: length, bend }
  return index === 0 ? { from: length - span, to: length, bend } : { from: 0, to: span, bend }
}

function truing(u: number): { value: number; slope: number } {
  if (u <= 0) return { value: 0, slope: 0 }
  return { value: u * u * (u - 1), slope: u * (3 * u - 2) }
}

/**
 * By how much the seam must turn more where it arrives at a dart, and as much less where it leaves it, radians, to run
 * across the folded dart as it did: half of what the forearm turned more than the fold takes.
 */
function kink({ darts, back }: Elbow, turns: readonly number[], now: readonly Dart[], index: number): number {
  const [old, next] = [darts[index], now[index]]
  if (!old || !next) return 0
  const fold = (dart: Dart) => turnBetween(subtract(dart.mouth[0], dart.point), subtract(dart.mouth[1], dart.point))
  const turn = back.runsDown ? (turns[index] as number) : -(turns[index] as number)
  return (turn - (fold(next) - fold(old))) / 2
}

/** How far a point inside turns: all of it below the elbow line, none above, as the seam does on the line itself. */
function turnInside({ line, notch, darts, back }: Elbow, turns: readonly number[], at: Point): number {
  const whole = turns.reduce((sum, turn) => sum + turn, 0)
  const first = (back.runsDown ? turns[0] : turns[turns.length - 1]) as number
  const far = line
    ? distance(startOf(line.path), notch.at) > distance(endOf(line.path), notch.at)
      ? startOf(line.path)
      : endOf(line.path)
    : mouthMiddle(darts[0] as Dart)
  const across = unit(subtract(far, notch.at))
  const off = subtract(at, notch.at)
  const side = cross(across, off)
  if (Math.abs(side) < 0.05) return darts.length > 1 ? first : whole / 2
  // Below is where the wrist is: the back seam's far end.
  const wrist = startOrEnd(back.seam.parts, back.runsDown)
  return Math.sign(side) === Math.sign(cross(across, subtract(wrist, notch.at))) ? whole : 0
}

function startOrEnd(parts: readonly Path[], runsDown: boolean): Point {
  return runsDown ? endOf(parts[parts.length - 1] as Path) : startOf(parts[0] as Path)
}

function outOfRange(piece: Piece, intake: number): Problem {
  return {
    code: 'elbow-intake-out-of-range',
    where: { piece: piece.id, seam: 'back underarm seam' },
    actual: `${intake.toFixed(1)} mm for all elbow darts together`,
    expected: `${LEAST} mm to ${MOST} mm; 25 mm to 38 mm is usual`,
    hint: 'a straighter arm takes less, a bent one more; write the intake of both darts together',
  }
}
