import { type Cubic, isLine, line } from '../geometry/cubic.ts'
import { firstCubic, lastCubic, type Path } from '../geometry/path.ts'
import { distance, equalPoints, type Point } from '../geometry/point.ts'
import type { Piece, Seam } from '../pattern/piece.ts'
import { seamEnd, seamStart } from '../pattern/seam.ts'
import type { ReplacedSeam } from './replace-seams.ts'

/** Seams that end this near to each other meet, mm: rounding, far below a pencil line. */
const MEET = 1e-6

/** Two neighbouring seams that no longer meet after some were replaced; undefined where all do. */
export function openCorner(piece: Piece, seams: ReadonlyMap<string, ReplacedSeam>): [string, string] | undefined {
  for (const [i, before] of piece.seams.entries()) {
    const after = piece.seams[(i + 1) % piece.seams.length] as Seam
    const one = seams.get(before.id)?.seam ?? before
    const other = seams.get(after.id)?.seam ?? after
    if (distance(seamEnd(one), seamStart(other)) > MEET) return [before.id, after.id]
  }
  return undefined
}

/** The replaced seams with their ends on the very points where their neighbours begin: they differ by rounding at most. */
export function weldSeams(piece: Piece, seams: ReadonlyMap<string, ReplacedSeam>): Map<string, ReplacedSeam> {
  const welded = new Map(seams)
  for (const [i, before] of piece.seams.entries()) {
    const after = piece.seams[(i + 1) % piece.seams.length] as Seam
    const one = welded.get(before.id)
    const other = welded.get(after.id)
    const end = seamEnd(one?.seam ?? before)
    const start = seamStart(other?.seam ?? after)
    if (equalPoints(end, start)) continue
    if (other) {
      const [first, ...rest] = other.seam.parts
      welded.set(after.id, { ...other, seam: { ...other.seam, parts: [withStart(first as Path, end), ...rest] } })
    } else if (one) {
      const parts = [...one.seam.parts]
      parts[parts.length - 1] = withEnd(parts[parts.length - 1] as Path, start)
      welded.set(before.id, { ...one, seam: { ...one.seam, parts } })
    }
  }
  return welded
}

/** The path starting at a point next to its start; a straight line stays one. */
export function withStart(path: Path, p: Point): Path {
  const first = firstCubic(path)
  if (equalPoints(first.p0, p)) return path
  return [ended(first, p, first.p3), ...path.slice(1)]
}

function withEnd(path: Path, p: Point): Path {
  const last = lastCubic(path)
  return [...path.slice(0, -1), ended(last, last.p0, p)]
}

function ended(c: Cubic, p0: Point, p3: Point): Cubic {
  return isLine(c) ? line(p0, p3) : { ...c, p0, p3 }
}
