import type { Finding } from '../base/problem.ts'
import type { Result } from '../base/result.ts'
import type { Pattern } from '../pattern/pattern.ts'
import { composeMaps, IDENTITY, type PositionMap } from './position-map.ts'

/** What an operation did, beyond the new pattern; lengths in mm. */
export type Effect = SeamMoved | CornerMade | Noticed

/** A stitching line moved along its normals. */
export interface SeamMoved {
  readonly kind: 'seam moved'
  readonly piece: string
  readonly seam: string
  /** Signed amount where it is largest, outwards positive. */
  readonly amount: number
  /** Where it begins and ends on the seam as it now is. */
  readonly from: number
  readonly to: number
}

/** A corner that a correction meant to make at the end of a line, and has told the draper of. */
export interface CornerMade {
  readonly kind: 'corner made'
  readonly piece: string
  readonly seam: string
  /** By how much the edge peaks where the seam that it ends at is sewn, radians. */
  readonly angle: number
}

/** Something that the draper should know about what was done. */
export interface Noticed {
  readonly kind: 'finding'
  readonly finding: Finding
}

/** What a pattern operation returns. Pieces that it did not touch are the same objects as before. */
export interface OperationResult {
  readonly pattern: Pattern
  readonly map: PositionMap
  readonly effects: readonly Effect[]
}

/**
 * A step of a correction: it gets the pattern as it is now and the map from the mock-up as worn to now, and
 * resolves what it was told in terms of the worn one. Fails with problems; never changes what it was given.
 */
export type PatternOperation = (pattern: Pattern, since: PositionMap) => Result<OperationResult>

/** The result of an operation that had nothing to do: the very same pattern. */
export function unchanged(pattern: Pattern): OperationResult {
  return { pattern, map: IDENTITY, effects: [] }
}

/** Runs operations one after the other, each told where the places of the worn mock-up have gone meanwhile. */
export function runOperations(
  pattern: Pattern,
  since: PositionMap,
  operations: readonly PatternOperation[],
): Result<OperationResult> {
  let done = unchanged(pattern)
  for (const operation of operations) {
    const next = operation(done.pattern, composeMaps(since, done.map))
    if (!next.ok) return next
    done = {
      pattern: next.value.pattern,
      map: composeMaps(done.map, next.value.map),
      effects: [...done.effects, ...next.value.effects],
    }
  }
  return { ok: true, value: done }
}
