import type { Xy } from './student.ts'

/** The distance of a point from a line of many points. */
export function away([x, y]: Xy, line: readonly Xy[]): number {
  let best = Number.POSITIVE_INFINITY
  for (let k = 1; k < line.length; k++) {
    const [[ax, ay], [bx, by]] = [line[k - 1] as Xy, line[k] as Xy]
    const [dx, dy] = [bx - ax, by - ay]
    const length = dx * dx + dy * dy
    const t = length === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / length))
    best = Math.min(best, Math.hypot(ax + dx * t - x, ay + dy * t - y))
  }
  return best
}
