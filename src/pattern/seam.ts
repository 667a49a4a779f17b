import { keptWith } from '../base/kept-with.ts'
import { pointAt } from '../geometry/cubic.ts'
import { SAME_POINT } from '../geometry/defaults.ts'
import { endOf, type Path, reversePath, startOf } from '../geometry/path.ts'
import { directionAlong, locate, pathLength, pointAlong, subPath, tangentAt } from '../geometry/path-length.ts'
import { distance, type Point } from '../geometry/point.ts'
import type { Pattern } from './pattern.ts'
import type { Landmark, Notch, Piece, Seam } from './piece.ts'

/** The piece with this id; throws when there is none: ids in code are not guesses. */
export function pieceOf(pattern: Pattern, id: string): Piece {
  const piece = pattern.pieces.find((p) => p.id === id)
  if (!piece) throw new RangeError(`no piece "${id}"; there are ${pattern.pieces.map((p) => p.id).join(', ')}`)
  return piece
}

/** The seam with this id on the piece; throws when there is none. */
export function seamOf(piece: Piece, id: string): Seam {
  const seam = piece.seams.find((s) => s.id === id)
  if (!seam)
    throw new RangeError(`no seam "${id}" on ${piece.id}; there are ${piece.seams.map((s) => s.id).join(', ')}`)
  return seam
}

export function seamStart(seam: Seam): Point {
  return startOf(seam.parts[0] as Path)
}

export function seamEnd(seam: Seam): Point {
  return endOf(seam.parts[seam.parts.length - 1] as Path)
}

/** The sewn length of a seam in mm, darts closed; each cubic within 1e-7 mm. */
export function seamLength(seam: Seam): number {
  return sewnLength(seam)
}

/** Where a part of the seam starts, mm of sewn length; with the number of its parts, where it ends. */
export function partStart({ parts }: Seam, part: number): number {
  let sum = 0
  for (const path of parts.slice(0, part)) sum += pathLength(path)
  return sum
}

/** Walks, places, marks and slips ask for the same lengths over and over. */
const sewnLength = keptWith(({ parts }: Seam): number => {
  let sum = 0
  for (const part of parts) sum += pathLength(part)
  return sum
})

/** The part of the seam that holds the position, and the position within that part; a place off the seam keeps its excess. */
function partAt(seam: Seam, along: number): { readonly index: number; readonly within: number } {
  let within = along
  for (let index = 0; index < seam.parts.length - 1; index++) {
    const length = pathLength(seam.parts[index] as Path)
    if (within <= length + SAME_POINT) return { index, within: Math.min(within, length) }
    within -= length
  }
  return { index: seam.parts.length - 1, within }
}

/** The point `along` mm of sewn length from the seam's start; throws off the seam. */
export function pointOnSeam(seam: Seam, along: number): Point {
  const { index, within } = partAt(seam, along)
  return pointAlong(seam.parts[index] as Path, within)
}

/** The unit direction of the seam (anticlockwise round the piece) `along` mm from its start. */
export function directionOnSeam(seam: Seam, along: number): Point {
  const { index, within } = partAt(seam, along)
  return directionAlong(seam.parts[index] as Path, within)
}

/** Both: the point and the unit direction `along` mm from the seam's start; throws off the seam. */
export function frameOnSeam(seam: Seam, along: number): { readonly at: Point; readonly direction: Point } {
  const { index, within } = partAt(seam, along)
  const path = seam.parts[index] as Path
  const place = locate(path, within)
  const c = path[place.index] as Path[number]
  return { at: pointAt(c, place.t), direction: tangentAt(c, place.t) }
}

/**
 * The paths of a seam between two positions, from < to, in the seam's direction: one for each part it runs over. A cut
 * within 1e-5 mm of a joint is made at the joint.
 */
export function seamSpan(seam: Seam, from: number, to: number): Path[] {
  const paths: Path[] = []
  let start = 0
  for (const part of seam.parts) {
    const length = pathLength(part)
    const a = Math.max(0, from - start)
    const b = Math.min(length, to - start)
    if (b - a > SAME_POINT)
      paths.push(a <= SAME_POINT && b >= length - SAME_POINT ? part : withoutSlivers(subPath(part, a, b)))
    start += length
  }
  return paths
}

/** A cut this near to a joint is as good as at the joint, mm; what is left over there has no direction to rely on. */
const SLIVER = 1e-5

function withoutSlivers(path: Path): Path {
  const isSliver = (c: Path[number] | undefined) => c !== undefined && distance(c.p0, c.p3) < SLIVER
  const first = path.length > 1 && isSliver(path[0]) ? 1 : 0
  const end = path.length - first > 1 && isSliver(path[path.length - 1]) ? path.length - 1 : path.length
  return first === 0 && end === path.length ? path : path.slice(first, end)
}

/** The seam run through the other way. */
export function reverseSeam(seam: Seam): Seam {
  return { ...seam, parts: seam.parts.map(reversePath).reverse() }
}

/** The points of a notch's marks, mm, the notch's own place first. Throws where its seam is not on the piece, or too short. */
export function notchPoints(piece: Piece, notch: Notch): Point[] {
  const seam = seamOf(piece, notch.seam)
  return Array.from({ length: notch.marks }, (_, k) => pointOnSeam(seam, notch.along + k * (notch.step ?? 0)))
}

/** Where a landmark lies, mm, in the frame of its piece. Throws where its seam is not on the piece. */
export function landmarkPoint(piece: Piece, landmark: Landmark): Point {
  return 'at' in landmark ? landmark.at : pointOnSeam(seamOf(piece, landmark.seam), landmark.along)
}
