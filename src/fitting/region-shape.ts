import { contains } from '../geometry/contains.ts'
import { line } from '../geometry/cubic.ts'
import { nearest } from '../geometry/nearest.ts'
import { endOf, type Path, startOf } from '../geometry/path.ts'
import { distance, type Point } from '../geometry/point.ts'
import type { Move } from '../geometry/transform.ts'

/** A part of a piece: an arc of its outline and the cut that closes it. */
export interface RegionShape {
  /** Paths in the order of the outline; dart mouths lie between. */
  readonly arc: readonly Path[]
  /** Corners of the cut inside the piece, from the arc's end back to its start. */
  readonly inside: readonly Point[]
  readonly move: Move
}

/** A point this near to the arc lies on the stitching line, mm; this near to the cut it lies on the cut. */
const ON_ARC = 0.05
const ON_CUT = 1e-6

/** Where points of the piece go: those inside a region or on its stretch of the outline move, those on a cut stay. */
export function insideRegions(regions: readonly RegionShape[]): (at: Point) => Point {
  const closed = regions.map((region) => ({ ...region, cut: cutOf(region), loop: loopOf(region) }))
  return (at) => {
    for (const { arc, cut, loop, move } of closed) {
      if (nearest(cut, at).distance <= ON_CUT) continue
      if (arc.some((path) => nearest(path, at).distance <= ON_ARC) || contains(loop, at)) return move(at)
    }
    return at
  }
}

function cutOf({ arc, inside }: RegionShape): Path {
  const corners = [endOf(arc[arc.length - 1] as Path), ...inside, startOf(arc[0] as Path)]
  return corners.slice(1).flatMap((to, i) => segment(corners[i] as Point, to))
}

function loopOf(region: RegionShape): Path {
  const loop: Path[number][] = []
  for (const path of region.arc) {
    const before = loop[loop.length - 1]
    if (before) loop.push(...segment(before.p3, startOf(path)))
    loop.push(...path)
  }
  return [...loop, ...cutOf(region)]
}

function segment(a: Point, b: Point): Path {
  return distance(a, b) > 0 ? [line(a, b)] : []
}
