import { arcLength } from '../geometry/arc-length.ts'
import { type Cubic, subCubic } from '../geometry/cubic.ts'
import type { Path } from '../geometry/path.ts'
import { locate, type PathParameter } from '../geometry/path-length.ts'

/** A cut this near to a joint is made at the joint, mm: an earlier correction tapered to the same place. */
const AT_JOINT = 1e-5

/**
 * The part of a path between two positions, mm from its start, from < to. Whole cubics are the same objects; cuts next
 * to a joint are made at the joint, so that no sliver of a cubic is left over.
 */
export function cutPath(path: Path, from: number, to: number): Path {
  const a = place(path, from)
  const b = place(path, to)
  const parts: Cubic[] = []
  for (let index = a.index; index <= b.index; index++) {
    const t0 = index === a.index ? a.t : 0
    const t1 = index === b.index ? b.t : 1
    if (t1 > t0) parts.push(subCubic(path[index] as Cubic, t0, t1))
  }
  return parts
}

function place(path: Path, along: number): PathParameter {
  let start = 0
  for (let index = 0; index < path.length; index++) {
    if (Math.abs(along - start) <= AT_JOINT) return { index, t: 0 }
    start += arcLength(path[index] as Cubic)
  }
  if (Math.abs(along - start) <= AT_JOINT) return { index: path.length - 1, t: 1 }
  return locate(path, along)
}
