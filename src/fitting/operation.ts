import type { Finding } from '../base/problem.ts'
import type { Result } from '../base/result.ts'
import type { Pattern } from '../pattern/pattern.ts'
import { composeMaps, IDENTITY, type PositionMap } from './position-map.ts'

/** What an operation did, beyond the new pattern; lengths in mm. */
export type Effect = SeamMoved | CornerMade | Noticed

/** A stitching line moved along its normals. */
export interface SeamMoved {
  /** Tells the effects apart. */
  readonly kind: 'seam moved'
  /** Id of the piece. */
  readonly piece: string
  /** Id of the seam. */
  readonly seam: string
  /** Signed amount where it is largest, outwards positive. */
  readonly amount: number
  /** Where it begins and ends on the seam as it now is. */
  readonly from: number
  /** mm of sewn length from the seam's start. */
  readonly to: number
}

/** A corner that a correction meant to make at the end of a line, and has told the draper of. */
export interface CornerMade {
  /** Tells the effects apart. */
  readonly kind: 'corner made'
  /** Id of the piece. */
  readonly piece: string
  /** Id of the seam whose end has the corner. */
  readonly seam: string
  /** By how much the edge peaks where the seam that it ends at is sewn, radians. */
  readonly angle: number
}

/** Something that the draper should know about what was done. */
export interface Noticed {
  /** Tells the effects apart. */
  readonly kind: 'finding'
  /** What is to be told. */
  readonly finding: Finding
}

/** What a pattern operation returns. Pieces that it did not touch are the same objects as before. */
export interface OperationResult {
  /** The pattern after it. */
  readonly pattern: Pattern
  /** Where the places of the pattern before it are now. */
  readonly map: PositionMap
  /** What is to be said on the slip and in the report. */
  readonly effects: readonly Effect[]
}

/**
 * A step of a correction: it gets the pattern as it is now and the map from the mock-up as worn to now, and
 * resolves what it was told in terms of the worn one. Fails with problems; never changes what it was given.
 */
export type PatternOperation = (pattern: Pattern, since: PositionMap) => Result<OperationResult>

/** The result of an operation that had nothing to do: the very same pattern, `IDENTITY` and no effects. */
export function unchanged(pattern: Pattern): OperationResult {
  return { pattern, map: IDENTITY, effects: [] }
}

/**
 * Runs operations one after the other, each told where the places of the worn mock-up have gone meanwhile. `since` is
 * how far the pattern has come from the worn one: `IDENTITY` where it is the worn one. The first that fails is the result.
 */
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
