import { areaD, EndType, inflatePathsD, JoinType, type PathD } from 'clipper2-ts'
import { area } from '../../src/geometry/area.ts'
import type { Cubic } from '../../src/geometry/cubic.ts'
import { flatten } from '../../src/geometry/flatten.ts'
import { nearestParameter } from '../../src/geometry/nearest.ts'
import { offset } from '../../src/geometry/offset.ts'
import type { Path } from '../../src/geometry/path.ts'
import { pathLength } from '../../src/geometry/path-length.ts'
import type { BenchCase } from './bench-case.ts'
import { largest, roundOutlines, seamCubics, summed, toBezier } from './shapes.ts'

const TOLERANCE = 0.01
const ALLOWANCE = 25.4

const CUBICS = seamCubics(16, 2)
/** Half of them to the other side. */
const SEAMS = CUBICS.map((c, k) => ({ path: [c], bezier: toBezier(c), by: k % 2 === 0 ? ALLOWANCE : -ALLOWANCE }))

const OUTLINES = roundOutlines(8, 3)
/** Made beforehand, to the same tolerance: a caller of clipper2-ts would have to do this as well. */
const POLYGONS: readonly PathD[] = OUTLINES.map((path) => flatten(path, { tolerance: TOLERANCE }).slice(1))

export const offsetCases: readonly BenchCase[] = [
  {
    name: 'offset of a seam, within 0.01 mm',
    count: SEAMS.length,
    ours: summed(SEAMS, ({ path, by }) => offset(path, by, { tolerance: TOLERANCE }).length),
    // Without a tolerance; its normals point to the left.
    theirs: { library: 'bezier-js', work: summed(SEAMS, ({ bezier, by }) => bezier.offset(-by).length) },
    wanted: { ratio: 1 / 8 },
    agree: () => ({
      apart: largest(SEAMS.map((seam) => worstMiss(seam, offset(seam.path, seam.by, { tolerance: TOLERANCE })))),
      within: TOLERANCE,
      what: 'mm from point + distance · normal by bezier-js',
    }),
  },
  {
    name: 'offset of a closed outline, within 0.01 mm',
    count: OUTLINES.length,
    ours: summed(OUTLINES, (path) => offset(path, ALLOWANCE, { tolerance: TOLERANCE }).length),
    theirs: { library: 'clipper2-ts', work: summed(POLYGONS, (polygon) => inflated(polygon).length) },
    wanted: { ratio: 1 },
    agree: () => ({
      apart: largest(
        OUTLINES.map((path, k) => {
          const ours = offset(path, ALLOWANCE, { tolerance: TOLERANCE })
          return Math.abs(area(ours) - areaD(inflated(POLYGONS[k] as PathD))) / pathLength(ours)
        }),
      ),
      // Both may be off by the tolerance, and the polygon cuts corners by as much.
      within: 3 * TOLERANCE,
      what: 'mm, difference of the areas by the length of the line',
    }),
  },
]

function inflated(polygon: PathD): PathD {
  return inflatePathsD([polygon], ALLOWANCE, JoinType.Miter, EndType.Polygon, 2, 5)[0] as PathD
}

/** How far the true offset, by bezier-js's own points and normals, lies from the line made. */
function worstMiss({ bezier, by }: (typeof SEAMS)[number], made: readonly Cubic[]): number {
  let worst = 0
  for (let k = 0; k <= 60; k++) {
    const p = bezier.get(k / 60)
    const n = bezier.normal(k / 60)
    worst = Math.max(worst, nearestParameter(made as Path, { x: p.x - by * n.x, y: p.y - by * n.y }).distance)
  }
  return worst
}
