import type { Problem } from '../base/problem.ts'
import { failure, type Result, success } from '../base/result.ts'
import { line as straight } from '../geometry/cubic.ts'
import { endOf, startOf } from '../geometry/path.ts'
import { pathLength } from '../geometry/path-length.ts'
import { add, distance, type Point, point, rightOf, scale, subtract, unit } from '../geometry/point.ts'
import type { Pattern } from '../pattern/pattern.ts'
import type { Dart, Line, Piece } from '../pattern/piece.ts'
import { pieceOf, pointOnSeam, seamLength } from '../pattern/seam.ts'
import { bendParts, type PartBend } from './bend-parts.ts'
import { type Elbow, elbowOf, mouthMiddle, startsInFront } from './elbow.ts'
import { type OperationResult, runOperations, unchanged } from './operation.ts'
import { IDENTITY } from './position-map.ts'
import { reMark } from './re-mark.ts'
import { type ReplacedSeam, replaceSeams } from './replace-seams.ts'

export interface MoveElbowDartsOptions {
  /** The sleeve. */
  readonly piece: string
  /** How far the darts go up the back seam, mm; negative: down. */
  readonly up: number
}

/** The seam is drawn again over this many mm on both sides of the darts, and over this many for each mm that they move. */
const LEAST_BLEND = 60
const BLEND_PER_MM = 5

/** The fewest mm of seam for each mm of move: less would crowd its marks. */
const LEAST_PER_MM = 2.5

/** What must be left of a part of the seam beyond the stretch that is drawn again, mm. */
const CLEAR = 5

/**
 * Moves the darts of the back underarm seam along it as they are, with the seam between them: intakes, lengths and legs
 * stay exactly what they were, and so, to 1e-6 mm, does the sewn length of the seam, so that it still matches the front
 * one: the darts move along their seam and, by a hair, square to it, and the seam is drawn again smoothly on both sides.
 * Elbow notch and elbow line go with them. Problems: no elbow darts, no room along the seam.
 */
export function moveElbowDarts(pattern: Pattern, { piece: id, up }: MoveElbowDartsOptions): Result<OperationResult> {
  if (up === 0) return success(unchanged(pattern))
  const piece = pieceOf(pattern, id)
  const elbow = elbowOf(piece)
  if (!elbow) return failure(noDarts(piece))
  const { back } = elbow
  const along = back.runsDown ? -up : up
  const reach = Math.max(LEAST_BLEND, BLEND_PER_MM * Math.abs(up))
  const ends = [0, back.seam.parts.length - 1].map(
    (i) => pathLength(back.seam.parts[i] as (typeof back.seam.parts)[number]) - CLEAR,
  )
  const room = Math.min(...ends) / LEAST_PER_MM
  if (Math.abs(up) > room) return failure(noRoom(piece, up, room))
  const [first, last] = [elbow.darts[0] as Dart, elbow.darts[elbow.darts.length - 1] as Dart]
  const way = unit(subtract(last.mouth[1], first.mouth[0]))
  const wanted = seamLength(back.seam)
  const moved = (across: number) => {
    const by = add(scale(way, along), scale(rightOf(way), across))
    return { by, replaced: moveParts(elbow, by, reach) }
  }
  // Square to the seam until its sewn length is what it was: secant, the length is nearly even in it.
  let [a, b] = [0, 0.5]
  let miss = seamLength(moved(a).replaced.seam) - wanted
  for (let i = 0; i < 40 && Math.abs(miss) > 1e-8; i++) {
    const next = seamLength(moved(b).replaced.seam) - wanted
    if (next === miss) break
    const better = b - (next * (b - a)) / (next - miss)
    a = b
    miss = next
    b = better
  }
  const { by, replaced } = moved(a)
  if (Math.abs(miss) > 1e-4 || Math.abs(a) > Math.abs(up)) return failure(noRoom(piece, up, room))
  const darts = piece.darts.map((dart) =>
    elbow.darts.includes(dart)
      ? { ...dart, mouth: [add(dart.mouth[0], by), add(dart.mouth[1], by)] as const, point: add(dart.point, by) }
      : dart,
  )
  const notchAt = elbow.notch.along + (elbow.front.runsDown ? -up : up)
  return runOperations(pattern, IDENTITY, [
    (now) => replaceSeams(now, piece, { seams: new Map([[back.seam.id, replaced]]), darts }),
    (now) => reMark(now, { piece: id, marks: [{ id: elbow.notch.id, along: notchAt }] }),
    (now) => success({ ...unchanged(now), pattern: elbowLineAgain(now, id, elbow, by, notchAt) }),
  ])
}

/** The seam with everything between its first and its last part moved as it is, and those two drawn after it. */
function moveParts({ back }: Elbow, by: Point, reach: number): ReplacedSeam {
  const last = back.seam.parts.length - 1
  return bendParts(back.seam, (index, length): PartBend => {
    if (index > 0 && index < last) return { from: 0, to: length, bend: () => ({ by, change: point(0, 0) }) }
    const span = Math.min(reach, length - CLEAR)
    const from = index === 0 ? length - span : 0
    // u runs to the dart.
    const sign = index === 0 ? 1 : -1
    return {
      from,
      to: from + span,
      bend: (at) => {
        const raw = index === 0 ? (at - from) / span : (span - at) / span
        const u = raw < 1e-9 ? 0 : raw > 1 - 1e-9 ? 1 : raw
        return { by: scale(by, u * u * (3 - 2 * u)), change: scale(by, (sign * 6 * u * (1 - u)) / span) }
      },
    }
  })
}

/** The elbow line from the notch as it now is to where it ended between the darts, which went with them. */
function elbowLineAgain(pattern: Pattern, id: string, elbow: Elbow, by: Point, notchAt: number): Pattern {
  const { line, front, notch } = elbow
  if (!line) return pattern
  const piece = pieceOf(pattern, id)
  const inFront = startsInFront(line, notch.at)
  const [foot, end] = inFront ? [startOf(line.path), endOf(line.path)] : [endOf(line.path), startOf(line.path)]
  // Where the line did not meet the notch it keeps its distance from it.
  const start = add(pointOnSeam(front.seam, notchAt), subtract(foot, notch.at))
  const far = add(end, by)
  const path = [inFront ? straight(start, far) : straight(far, start)]
  const lines = piece.lines.map((l): Line => (l.id === line.id ? { ...l, path } : l))
  return { ...pattern, pieces: pattern.pieces.map((p) => (p === piece ? { ...p, lines } : p)) }
}

/** The fewest and the most mm of an elbow dart from mouth to point: 2 1/2 to 4 in, common practice. */
const SHORTEST = 50
const LONGEST = 110

/**
 * Moves the points of the elbow darts along their own axes, `forward` mm toward the front, negative back: the darts get
 * longer or shorter, their mouths, intakes and places stay. Problems: no elbow darts, a dart too short or too long.
 */
export function moveElbowDartPoints(
  pattern: Pattern,
  { piece: id, forward }: { readonly piece: string; readonly forward: number },
): Result<OperationResult> {
  if (forward === 0) return success(unchanged(pattern))
  const piece = pieceOf(pattern, id)
  const elbow = elbowOf(piece)
  if (!elbow) return failure(noDarts(piece))
  for (const dart of elbow.darts) {
    const length = distance(mouthMiddle(dart), dart.point)
    const now = length + forward
    if (now < SHORTEST || now > LONGEST) return failure(badLength(piece, dart, length, now))
  }
  const darts = piece.darts.map((dart) => {
    if (!elbow.darts.includes(dart)) return dart
    return { ...dart, point: add(dart.point, scale(unit(subtract(dart.point, mouthMiddle(dart))), forward)) }
  })
  return replaceSeams(pattern, piece, { seams: new Map(), darts })
}

export function noDarts(piece: Piece): Problem {
  return {
    code: 'no-elbow-darts',
    where: { piece: piece.id, seam: 'back underarm seam' },
    actual: 'a sleeve without elbow darts, or without an elbow notch',
    expected: 'darts on the back underarm seam',
    hint: 'draft the sleeve with elbow darts, or ease the back seam in at the elbow',
  }
}

function noRoom(piece: Piece, up: number, room: number): Problem {
  return {
    code: 'no-room-for-darts',
    where: { piece: piece.id, seam: 'back underarm seam' },
    actual: `the elbow darts moved ${up > 0 ? 'up' : 'down'} by ${Math.abs(up).toFixed(1)} mm`,
    expected: `at most ${Math.max(0, room).toFixed(1)} mm on this seam`,
    hint: 'move them by less; where the elbow is farther off, lengthen or shorten the sleeve above it',
  }
}

function badLength(piece: Piece, dart: Dart, length: number, now: number): Problem {
  return {
    code: 'dart-length-out-of-range',
    where: { piece: piece.id, seam: dart.seam },
    actual: `the ${dart.id}, ${length.toFixed(1)} mm long, would be ${now.toFixed(1)} mm long`,
    expected: `${SHORTEST} mm to ${LONGEST} mm`,
    hint: 'move the points by less',
  }
}
