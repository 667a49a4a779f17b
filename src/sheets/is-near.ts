import type { Box } from '../geometry/bounds.ts'

/** More than rounding, mm. */
const SLACK = 1e-6

/** Whether two boxes touch, or nearly: what is in boxes that do not has nothing to do with each other. */
export function isNear(a: Box, b: Box): boolean {
  return (
    a.left <= b.right + SLACK && a.right >= b.left - SLACK && a.bottom <= b.top + SLACK && a.top >= b.bottom - SLACK
  )
}
