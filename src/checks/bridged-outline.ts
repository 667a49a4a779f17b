import { keptWith } from '../base/kept-with.ts'
import { line } from '../geometry/cubic.ts'
import { SAME_POINT } from '../geometry/defaults.ts'
import { endOf, type Path, startOf } from '../geometry/path.ts'
import { distance } from '../geometry/point.ts'
import type { Piece } from '../pattern/piece.ts'

/**
 * The outline of a piece as one closed path, every gap bridged by a straight chord: the mouths of darts, and the
 * gaps of a broken piece too, so that the other checks can still look at it (`outline` reports the gap).
 */
export function bridgedOutline(piece: Piece): Path {
  return bridged(piece)
}

/** Five checks ask for it. */
const bridged = keptWith((piece: Piece): Path => {
  const path: Path[number][] = []
  for (const c of piece.seams.flatMap((seam) => seam.parts.flat())) {
    const before = path[path.length - 1]
    if (before && distance(before.p3, c.p0) > SAME_POINT) path.push(line(before.p3, c.p0))
    path.push(c)
  }
  if (distance(endOf(path), startOf(path)) > SAME_POINT) path.push(line(endOf(path), startOf(path)))
  return path
})
