import { SAME_POINT } from '../geometry/defaults.ts'
import { endOf, type Path, startOf } from '../geometry/path.ts'
import { pathLength, tangentAt } from '../geometry/path-length.ts'
import { distance, type Point, turnBetween } from '../geometry/point.ts'
import type { Piece, Seam } from '../pattern/piece.ts'
import { seamOf } from '../pattern/seam.ts'
import type { SeamPosition } from './position-map.ts'

/** Below this turn between two cubics a stitching line counts as smooth there, radians: 0.001 mm at a shift of 10 mm. */
const SMOOTH = 1e-4

/** A smooth stretch of a run: some cubics of one part of one seam. */
export interface Stretch {
  readonly seam: string
  readonly part: number
  readonly path: Path
  /** Run position of its start, and its length, mm. */
  readonly start: number
  readonly length: number
}

/**
 * Seams of one piece that follow each other, taken as one line, darts closed. Run positions are mm from the start
 * of the first seam; the front cap and the back cap are one run from underarm to underarm.
 */
export interface SeamRun {
  readonly piece: Piece
  readonly seams: readonly Seam[]
  readonly stretches: readonly Stretch[]
  readonly length: number
  readonly seamStarts: ReadonlyMap<string, number>
  readonly seamLengths: ReadonlyMap<string, number>
}

/** The run of these seams of a piece, in the piece's own order. Throws when they do not follow each other. */
export function seamRun(piece: Piece, ids: readonly string[]): SeamRun {
  const seams = ids.map((id) => seamOf(piece, id))
  const stretches: Stretch[] = []
  const seamStarts = new Map<string, number>()
  const seamLengths = new Map<string, number>()
  let start = 0
  seams.forEach((seam, index) => {
    const before = seams[index - 1]
    if (before && nextSeam(piece, before.id).id !== seam.id) {
      throw new RangeError(`${seam.id} does not follow ${before.id} on ${piece.id}`)
    }
    seamStarts.set(seam.id, start)
    const from = start
    seam.parts.forEach((part, partIndex) => {
      for (const path of smoothPaths(part)) {
        const length = pathLength(path)
        stretches.push({ seam: seam.id, part: partIndex, path, start, length })
        start += length
      }
    })
    seamLengths.set(seam.id, start - from)
  })
  return { piece, seams, stretches, length: start, seamStarts, seamLengths }
}

/** The seam after this one, anticlockwise round the piece. */
export function nextSeam(piece: Piece, id: string): Seam {
  const index = piece.seams.findIndex((seam) => seam.id === id)
  return piece.seams[(index + 1) % piece.seams.length] as Seam
}

/** The seam before this one. */
export function previousSeam(piece: Piece, id: string): Seam {
  const index = piece.seams.findIndex((seam) => seam.id === id)
  return piece.seams[(index + piece.seams.length - 1) % piece.seams.length] as Seam
}

/** A place on one of the run's seams as a run position; undefined on other seams. */
export function runPosition(run: SeamRun, position: SeamPosition): number | undefined {
  const start = position.piece === run.piece.id ? run.seamStarts.get(position.seam) : undefined
  return start === undefined ? undefined : start + position.along
}

/** The place on a seam at a run position; where two seams meet, the end of the first. */
export function seamPosition(run: SeamRun, at: number): SeamPosition {
  let found = run.seams[0] as Seam
  for (const seam of run.seams) {
    if ((run.seamStarts.get(seam.id) as number) < at - SAME_POINT) found = seam
  }
  const start = run.seamStarts.get(found.id) as number
  const length = run.seamLengths.get(found.id) as number
  const along = at - start
  return {
    piece: run.piece.id,
    seam: found.id,
    along: Math.abs(along - length) <= SAME_POINT ? length : Math.max(0, along),
  }
}

/** Whether the run goes straight on from one stretch to the next, without a dart mouth between. */
export function touches(before: Stretch, after: Stretch): boolean {
  return distance(endOf(before.path), startOf(after.path)) <= SAME_POINT
}

export function directionAtStart(path: Path): Point {
  return tangentAt(path[0] as Path[number], 0)
}

export function directionAtEnd(path: Path): Point {
  return tangentAt(path[path.length - 1] as Path[number], 1)
}

/** A path cut where its direction breaks. */
export function smoothPaths(path: Path): Path[] {
  const paths: Path[] = []
  let from = 0
  for (let i = 1; i < path.length; i++) {
    const before = tangentAt(path[i - 1] as Path[number], 1)
    const after = tangentAt(path[i] as Path[number], 0)
    if (Math.abs(turnBetween(before, after)) <= SMOOTH) continue
    paths.push(path.slice(from, i))
    from = i
  }
  paths.push(from === 0 ? path : path.slice(from))
  return paths
}
