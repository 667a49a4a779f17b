import { SAME_POINT } from '../geometry/defaults.ts'
import { pathLength } from '../geometry/path-length.ts'
import type { Piece } from '../pattern/piece.ts'

/** A place on the stitching line of a piece, mm of sewn length from the seam's start. */
export interface SeamPoint {
  /** Id of the seam. */
  readonly seam: string
  /** mm of sewn length from the seam's start. */
  readonly along: number
}

/** A place on one part of one seam of a piece. */
export interface PartPlace {
  readonly seam: number
  readonly part: number
  readonly within: number
}

/** The lengths of all parts of all seams of a piece. */
export type PartLengths = readonly (readonly number[])[]

export function partLengths(piece: Piece): PartLengths {
  return piece.seams.map((seam) => seam.parts.map((part) => pathLength(part)))
}

/**
 * Where an arc of the outline begins or ends. A place in a corner or at the mouth of a dart is the beginning of what
 * follows for an arc that begins there, and the end of what comes before for one that ends there. Throws off the seam.
 */
export function partPlace(piece: Piece, lengths: PartLengths, at: SeamPoint, which: 'from' | 'to'): PartPlace {
  const seam = piece.seams.findIndex((s) => s.id === at.seam)
  const parts = lengths[seam]
  if (!parts) throw new RangeError(`no seam "${at.seam}" on ${piece.id}`)
  let rest = at.along
  for (let part = 0; part < parts.length; part++) {
    const length = parts[part] as number
    const last = part === parts.length - 1
    if (
      rest < length - SAME_POINT ||
      (which === 'to' && rest <= length + SAME_POINT) ||
      (last && rest <= length + 1e-4)
    ) {
      return normalised(lengths, { seam, part, within: Math.min(Math.max(rest, 0), length) }, which)
    }
    rest -= length
  }
  throw new RangeError(`${at.along} mm lies beyond the ${at.seam} of ${piece.id}`)
}

function normalised(lengths: PartLengths, place: PartPlace, which: 'from' | 'to'): PartPlace {
  const length = lengths[place.seam]?.[place.part] as number
  if (which === 'from' && place.within >= length - SAME_POINT) return next(lengths, place)
  if (which === 'to' && place.within <= SAME_POINT) return previous(lengths, place)
  return place.within <= SAME_POINT
    ? { ...place, within: 0 }
    : place.within >= length - SAME_POINT
      ? { ...place, within: length }
      : place
}

function next(lengths: PartLengths, { seam, part }: PartPlace): PartPlace {
  if (part + 1 < (lengths[seam]?.length ?? 0)) return { seam, part: part + 1, within: 0 }
  return { seam: (seam + 1) % lengths.length, part: 0, within: 0 }
}

function previous(lengths: PartLengths, { seam, part }: PartPlace): PartPlace {
  if (part > 0) return { seam, part: part - 1, within: lengths[seam]?.[part - 1] as number }
  const before = (seam + lengths.length - 1) % lengths.length
  const last = (lengths[before]?.length ?? 1) - 1
  return { seam: before, part: last, within: lengths[before]?.[last] as number }
}
