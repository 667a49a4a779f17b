import { type Box, boxesMeet } from '../geometry/bounds.ts'
import type { Segment } from './ink.ts'
import type { InkRun } from './ink-runs.ts'
import { segmentTouches } from './room.ts'

/** What of the ink touches an upright box, in its order. */
export function inkIn(runs: readonly InkRun[], window: Box): Segment[] {
  const halfWidth = (window.right - window.left) / 2
  const halfHeight = (window.top - window.bottom) / 2
  const center = { x: window.left + halfWidth, y: window.bottom + halfHeight }
  const turned = { center, along: { x: 1, y: 0 }, halfWidth, halfHeight }
  const found: Segment[] = []
  for (const { box, segments } of runs) {
    if (!boxesMeet(box, window)) continue
    for (const segment of segments) if (segmentTouches(segment, turned, 0)) found.push(segment)
  }
  return found
}
