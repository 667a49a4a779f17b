import { rounded } from '../base/rounded.ts'
import { isLine } from '../geometry/cubic.ts'
import { type Path, startOf } from '../geometry/path.ts'
import type { Point } from '../geometry/point.ts'

export interface PathTextOptions {
  readonly decimals: number
  /** Ends with Z; a last straight line back to the start is left to it. */
  readonly closed?: boolean
  /** Where each point goes before it is written; mm as they are when absent. */
  readonly place?: (p: Point) => Point
}

/** A path as text: absolute M, L, C, Z only; straight cubics run at even speed become L. */
export function pathText(path: Path, options: PathTextOptions): string {
  const place = options.place ?? ((p: Point) => p)
  const pair = (p: Point) => {
    const q = place(p)
    return `${rounded(q.x, options.decimals)} ${rounded(q.y, options.decimals)}`
  }
  const words = [`M ${pair(startOf(path))}`]
  path.forEach((c, k) => {
    if (!isLine(c)) words.push(`C ${pair(c.p1)} ${pair(c.p2)} ${pair(c.p3)}`)
    else if (!(options.closed && k === path.length - 1)) words.push(`L ${pair(c.p3)}`)
  })
  if (options.closed) words.push('Z')
  return words.join(' ')
}
