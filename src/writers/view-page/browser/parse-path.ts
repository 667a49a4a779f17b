import { type Cubic, cubic, line } from '../../../geometry/cubic.ts'
import type { Path } from '../../../geometry/path.ts'
import { point } from '../../../geometry/point.ts'

/** The paths that a text of `pathText` stands for, one for each M; absolute M, L and C alone. */
export function parsePaths(text: string): Path[] {
  const paths: Cubic[][] = []
  let at = point(0, 0)
  for (const [, command, numbers = ''] of text.matchAll(/([MLC])([^MLC]*)/g)) {
    const n = numbers.trim().split(/\s+/).map(Number)
    const end = point(n.at(-2) as number, n.at(-1) as number)
    if (command === 'M') paths.push([])
    else if (command === 'L') paths.at(-1)?.push(line(at, end))
    else
      paths.at(-1)?.push(cubic(at, point(n[0] as number, n[1] as number), point(n[2] as number, n[3] as number), end))
    at = end
  }
  return paths.filter((path) => path.length > 0)
}
