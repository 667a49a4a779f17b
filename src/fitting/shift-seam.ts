import type { Problem } from '../base/problem.ts'
import { failure, type Result, success } from '../base/result.ts'
import type { Cubic } from '../geometry/cubic.ts'
import { CURVE_TOLERANCE } from '../geometry/defaults.ts'
import { endOf, startOf } from '../geometry/path.ts'
import { equalPoints, type Point, rightOf, subtract } from '../geometry/point.ts'
import type { Pattern } from '../pattern/pattern.ts'
import type { Piece, Seam } from '../pattern/piece.ts'
import { pieceOf, seamEnd, seamStart } from '../pattern/seam.ts'
import { cornersMoved } from './corners-moved.ts'
import { followMarks } from './follow-marks.ts'
import { type OperationResult, type SeamMoved, unchanged } from './operation.ts'
import { type AlongMap, seamMap } from './position-map.ts'
import { rebuildSeams } from './rebuild-seams.ts'
import {
  directionAtEnd,
  directionAtStart,
  nextSeam,
  previousSeam,
  type SeamRun,
  type Stretch,
  seamRun,
} from './seam-run.ts'
import { type JointShift, shiftJoints } from './shift-joints.ts'
import { type Anchor, type ShiftProfile, type Station, shiftProfile } from './shift-profile.ts'
import { type CannotSlide, hasSlid, slideEnd } from './slide-end.ts'

/** Which line moves, by how much where, and where it stays. */
export interface ShiftSeamOptions {
  /** Id of the piece. */
  readonly piece: string
  /** Seams that follow each other on the piece, moved as one line. */
  readonly seams: readonly string[]
  /** Where it moves and how far; between them it runs smoothly. */
  readonly stations: readonly Station[]
  /** Where it stays. */
  readonly anchors: readonly Anchor[]
  /** Largest distance of the refitted line from the exactly moved one, mm. */
  readonly tolerance?: number
}

/**
 * Moves a stitching line along its outward normals by a smooth profile: exactly the amount at each station,
 * nothing at the anchors and beyond them, where the line stays the same numbers and the cubics the same objects.
 * Between, the line is within `tolerance` of the exactly moved one and has no corner that was not there before.
 * An end of the line moves only if it is a station; the neighbouring seam is then lengthened along its own
 * direction or cut off. The legs of darts that open on the line are brought to it; notches, landmarks, join
 * parts and balance lines follow. Zero amounts return the same pattern.
 *
 * Problems: two amounts at one place, a taper too short, a curve too tight for the amount, a corner inside the
 * moved line, a neighbour that cannot follow, a mark that would be cut off. Throws on seams that do not follow
 * each other or places off them.
 */
export function shiftSeam(pattern: Pattern, options: ShiftSeamOptions): Result<OperationResult> {
  const piece = pieceOf(pattern, options.piece)
  const run = seamRun(piece, options.seams)
  const shift = shiftProfile(run, options.stations, options.anchors)
  if (!shift.ok) return shift
  if (!shift.value) return success(unchanged(pattern))

  const ends = slideNeighbours(run, shift.value)
  if (!ends.ok) return ends
  const joints = shiftJoints(run, shift.value.profile, ends.value)
  if (!joints.ok) return joints
  const rebuilt = rebuildSeams(run, shift.value, joints.value, options.tolerance ?? CURVE_TOLERANCE)
  if (!rebuilt.ok) return rebuilt

  const maps = new Map<string, AlongMap>([...ends.value.maps, ...rebuilt.value.maps])
  const seams = weld(
    piece.seams.map((seam) => rebuilt.value.seams.get(seam.id) ?? ends.value.seams.get(seam.id) ?? seam),
    piece.seams,
  )
  const followed = followMarks(pattern, piece, {
    seams,
    maps,
    moved: new Set([...rebuilt.value.seams.keys(), ...ends.value.seams.keys()]),
    corners: cornersMoved(piece, seams),
    darts: joints.value.darts,
  })
  if (!followed.ok) return followed
  return success({
    pattern: {
      ...pattern,
      pieces: pattern.pieces.map((p) => (p === piece ? followed.value.piece : p)),
      joins: followed.value.joins,
    },
    map: seamMap(piece.id, maps),
    effects: seamsMoved(run, shift.value, maps),
  })
}

interface Neighbours extends JointShift {
  readonly seams: ReadonlyMap<string, Seam>
  readonly maps: ReadonlyMap<string, AlongMap>
}

/** Lets the neighbours of both ends follow where an end is a station. */
function slideNeighbours(run: SeamRun, { profile }: ShiftProfile): Result<Neighbours> {
  const seams = new Map<string, Seam>()
  const maps = new Map<string, AlongMap>()
  const vectors: { start?: Point; end?: Point } = {}
  for (const which of ['start', 'end'] as const) {
    const amount = profile.amount(which === 'start' ? 0 : run.length)
    if (amount === 0) continue
    const stretch = (which === 'start' ? run.stretches[0] : run.stretches[run.stretches.length - 1]) as Stretch
    const direction = which === 'start' ? directionAtStart(stretch.path) : directionAtEnd(stretch.path)
    const corner = which === 'start' ? startOf(stretch.path) : endOf(stretch.path)
    const id = (which === 'start' ? previousSeam(run.piece, stretch.seam) : nextSeam(run.piece, stretch.seam)).id
    // A seam that already followed at its other end goes on from there.
    const neighbour = seams.get(id) ?? (run.piece.seams.find((s) => s.id === id) as Seam)
    const slid = slideEnd(neighbour, which === 'start' ? 'end' : 'start', rightOf(direction), amount)
    if (!hasSlid(slid)) return failure(cannotFollow(run.piece, id, stretch.seam, amount, slid))
    vectors[which] = subtract(slid.end, corner)
    const before = maps.get(id)
    seams.set(id, slid.seam)
    maps.set(id, before ? (at) => chain(before, slid.map, at) : slid.map)
  }
  return success({ seams, maps, ...vectors })
}

function chain(first: AlongMap, second: AlongMap, at: number): ReturnType<AlongMap> {
  const there = first(at)
  return typeof there === 'number' ? second(there) : there
}

/** Makes changed seams end on the very points where their neighbours begin: they differ by rounding at most. */
function weld(seams: readonly Seam[], before: readonly Seam[]): Seam[] {
  return seams.map((seam, i) => {
    if (seam === before[i]) return seam
    const previous = seams[(i + seams.length - 1) % seams.length] as Seam
    const following = seams[(i + 1) % seams.length] as Seam
    const start = seamEnd(previous)
    // The following seam, if it changed too, takes over this one's end instead.
    const end = following === before[(i + 1) % seams.length] ? seamStart(following) : seamEnd(seam)
    return withEnds(seam, start, end)
  })
}

function withEnds(seam: Seam, start: Point, end: Point): Seam {
  if (equalPoints(seamStart(seam), start) && equalPoints(seamEnd(seam), end)) return seam
  const parts = seam.parts.map((part) => [...part])
  const first = parts[0] as Cubic[]
  first[0] = { ...(first[0] as Cubic), p0: start }
  const last = parts[parts.length - 1] as Cubic[]
  last[last.length - 1] = { ...(last[last.length - 1] as Cubic), p3: end }
  return { ...seam, parts }
}

/** One effect for each seam on which something moved: the largest amount, and from where to where. */
function seamsMoved(run: SeamRun, { profile, active }: ShiftProfile, maps: ReadonlyMap<string, AlongMap>): SeamMoved[] {
  return run.seams.flatMap((seam) => {
    const start = run.seamStarts.get(seam.id) as number
    const end = start + (run.seamLengths.get(seam.id) as number)
    const spans = active
      .map(({ from, to }) => ({ from: Math.max(from, start), to: Math.min(to, end) }))
      .filter(({ from, to }) => to > from)
    const first = spans[0]
    const last = spans[spans.length - 1]
    const move = maps.get(seam.id)
    if (!first || !last || !move) return []
    const ends = [profile.amount(start), profile.amount(end)]
    const inside = profile.nodes.filter((node) => node.at > start && node.at < end).map((node) => node.amount)
    const amount = [...ends, ...inside].reduce((most, a) => (Math.abs(a) > Math.abs(most) ? a : most), 0)
    return [
      {
        kind: 'seam moved',
        piece: run.piece.id,
        seam: seam.id,
        amount,
        from: move(first.from - start) as number,
        to: move(last.to - start) as number,
      },
    ]
  })
}

function cannotFollow(piece: Piece, neighbour: string, seam: string, amount: number, why: CannotSlide): Problem {
  const size = `${Math.abs(amount).toFixed(1)} mm`
  if (why === 'too slanting') {
    return {
      code: 'neighbour-cannot-follow',
      where: { piece: piece.id, seam: neighbour },
      actual: `the ${neighbour} meets the ${seam} at too flat an angle to follow it by ${size}`,
      expected: 'a corner of more than 30° between them',
      hint: `let the ${seam} taper to nothing before the corner`,
    }
  }
  return {
    code: 'neighbour-too-short',
    where: { piece: piece.id, seam: neighbour },
    actual: `the ${seam} would cut ${size} off the ${neighbour}, which has ${why.room.toFixed(1)} mm there`,
    expected: 'less than the seam up to its end or its next dart',
    hint: 'take a smaller amount, or taper to nothing before the corner',
  }
}
