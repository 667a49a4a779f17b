import { endOf, type Path, startOf } from '../geometry/path.ts'
import { pathLength } from '../geometry/path-length.ts'
import { distance } from '../geometry/point.ts'
import type { Dart, Piece } from '../pattern/piece.ts'
import { seamOf } from '../pattern/seam.ts'
import type { SeamPoint } from './outline-places.ts'

/** A mouth is the gap of its seam when its points are this near to the gap's ends, mm. */
const SAME_MOUTH = 0.01

/** Where a dart opens: its place on the seam, darts closed, and the part of the seam before its mouth. Throws when its mouth is no gap of the seam. */
export function dartPlace(piece: Piece, dart: Dart): SeamPoint & { readonly part: number } {
  const seam = seamOf(piece, dart.seam)
  let along = 0
  for (let part = 0; part + 1 < seam.parts.length; part++) {
    const before = seam.parts[part] as Path
    const after = seam.parts[part + 1] as Path
    along += pathLength(before)
    if (distance(endOf(before), dart.mouth[0]) < SAME_MOUTH && distance(startOf(after), dart.mouth[1]) < SAME_MOUTH)
      return { seam: dart.seam, along, part }
  }
  throw new RangeError(`${dart.id} does not open on the ${dart.seam} of ${piece.id}`)
}
