import type { Box } from '../geometry/bounds.ts'
import { type Path, polyline } from '../geometry/path.ts'

/** The four sides of a box as a closed path, anticlockwise from its lower left corner. */
export function boxOutline({ left, bottom, right, top }: Box): Path {
  return polyline([
    { x: left, y: bottom },
    { x: right, y: bottom },
    { x: right, y: top },
    { x: left, y: top },
    { x: left, y: bottom },
  ])
}
