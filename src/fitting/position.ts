import * as z from 'zod'
import { normaliseName } from '../base/names.ts'
import { type Readers, raise } from '../base/readers.ts'

/** Which half of a cap, or of the bodice, a place is meant on. */
export type Half = 'front' | 'back'

/** A place as a draper says it. Names are those of notches, landmarks, corners and balance lines; lengths in mm. */
export type SeamPlace = (
  | {
      /** Name of a notch, a landmark or a corner. */
      readonly landmark: string
    }
  /** Where a balance line meets the seam. */
  | {
      /** Name of a balance line. */
      readonly line: string
    }
  /** Along the seam from one named place toward another. */
  | {
      /** The place to measure from. */
      readonly from: string
      /** The place to measure toward. */
      readonly toward: string
      /** Sewn length from the one toward the other, mm. */
      readonly distance: number
    }
  /** Between two named places: share 0 is the first, 1 the second. */
  | {
      /** The two places. */
      readonly between: readonly [string, string]
      /** How far from the first to the second, 0 to 1. */
      readonly share: number
    }
) & {
  /** Which half of the piece, where the name is on both. */
  readonly half?: Half
}

const EXPECTED =
  'a place such as shoulder notch, { line: cap line, side of cap: front } or { from: underarm, toward: shoulder notch, distance: 1 1/2 }'

/**
 * Reads one place: a name alone, or a section with `landmark`, with `line`, with `from`, `toward` and `distance`, or
 * with `between` and `share`; each may say `side of cap: front` or `back`. Whether there is such a place is told
 * only when it is looked up on the mock-up as worn.
 */
export function placeReader(read: Readers) {
  const name = read.text().transform(normaliseName)
  const section = z
    .strictObject(
      {
        landmark: name.optional(),
        line: name.optional(),
        from: name.optional(),
        toward: name.optional(),
        distance: read.lengthFromZero().optional(),
        between: z.tuple([name, name], { error: 'a list of two places' }).optional(),
        share: read.share().optional(),
        'side of cap': read.name('side of the cap', ['front', 'back']).optional(),
      },
      { error: EXPECTED },
    )
    .transform((written, context): SeamPlace => {
      const place = placeOf(written)
      if (place) return written['side of cap'] === undefined ? place : { ...place, half: written['side of cap'] }
      raise(context, {
        code: 'place-incomplete',
        actual: `a place with ${Object.keys(written).join(', ') || 'nothing in it'}`,
        expected: EXPECTED,
        hint: 'name a landmark; or a line; or from, toward and distance; or between and share',
      })
      return z.NEVER
    })
  return z.union([name.transform((landmark): SeamPlace => ({ landmark })), section], { error: EXPECTED })
}

interface Written {
  readonly landmark?: string | undefined
  readonly line?: string | undefined
  readonly from?: string | undefined
  readonly toward?: string | undefined
  readonly distance?: number | undefined
  readonly between?: readonly [string, string] | undefined
  readonly share?: number | undefined
  readonly 'side of cap'?: Half | undefined
}

/** The one way of saying a place that was used, completely and alone. */
function placeOf(written: Written): SeamPlace | undefined {
  const keys = Object.keys(written).filter(
    (key) => key !== 'side of cap' && written[key as keyof Written] !== undefined,
  )
  const { landmark, line, from, toward, distance, between, share } = written
  const only = (...names: string[]) => keys.length === names.length && names.every((n) => keys.includes(n))
  if (landmark !== undefined && only('landmark')) return { landmark }
  if (line !== undefined && only('line')) return { line }
  if (from !== undefined && toward !== undefined && distance !== undefined && only('from', 'toward', 'distance')) {
    return { from, toward, distance }
  }
  if (between !== undefined && only('between')) return { between, share: 0.5 }
  if (between !== undefined && share !== undefined && only('between', 'share')) return { between, share }
  return undefined
}
