import { type Cubic, line } from '../geometry/cubic.ts'
import { SAME_POINT } from '../geometry/defaults.ts'
import type { Path } from '../geometry/path.ts'
import { distance, equalPoints, type Point } from '../geometry/point.ts'
import type { Piece } from './piece.ts'

/**
 * The stitching outline of a piece: one closed anticlockwise path, each dart mouth bridged by a straight chord,
 * neighbouring cubics sharing their end points exactly. Throws on a piece whose seams do not touch within
 * SAME_POINT: that is a broken piece, not an input.
 */
export function outlineOf(piece: Piece): Path {
  const outline: Cubic[] = []
  for (const seam of piece.seams) {
    seam.parts.forEach((part, index) => {
      part.forEach((c, k) => {
        const before = outline[outline.length - 1]
        if (!before) {
          outline.push(c)
          return
        }
        // Only between the parts of one seam may there be a gap: a dart's mouth.
        if (distance(before.p3, c.p0) <= SAME_POINT) outline.push(startingAt(c, before.p3))
        else if (index > 0 && k === 0) outline.push(line(before.p3, c.p0), c)
        else throw gapError(piece, seam.id, before.p3, c.p0)
      })
    })
  }
  const first = outline[0]
  const last = outline[outline.length - 1]
  if (!first || !last) throw new RangeError(`${piece.id} has no seams`)
  if (distance(last.p3, first.p0) > SAME_POINT) throw gapError(piece, piece.seams[0]?.id ?? '', last.p3, first.p0)
  outline[outline.length - 1] = last.p3 === first.p0 ? last : { ...last, p3: first.p0 }
  return outline
}

function startingAt(c: Cubic, p: Point): Cubic {
  return equalPoints(c.p0, p) ? c : { ...c, p0: p }
}

function gapError(piece: Piece, seam: string, a: Point, b: Point): RangeError {
  return new RangeError(
    `${piece.id}: ${seam} starts at (${b.x}, ${b.y}), ${distance(a, b)} mm from the end of the seam before it`,
  )
}
