import type { Join, JoinPart, Pattern } from './pattern.ts'
import type { Piece, Seam } from './piece.ts'
import { seamLength } from './seam.ts'
import { baseName } from './side-names.ts'

/** A stretch of one seam as part of a line that is sewn as one. */
export interface Stretch {
  readonly piece: Piece
  readonly seam: Seam
  /** mm along the seam, from < to, whichever way it is sewn. */
  readonly from: number
  readonly to: number
  readonly reversed: boolean
  /** Where the stretch begins, mm of sewn length from the start of the line. */
  readonly start: number
}

/** Seam parts sewn as one line, in sewing order. */
export interface SewnLine {
  readonly stretches: readonly Stretch[]
  readonly length: number
}

/** Paper is true to a tenth of this; positions that differ by less are the same place on a seam, mm. */
const SAME_PLACE = 0.001

/** The line that the parts make, or undefined where a part names a seam, or a place on it, that is not there. */
export function sewnLine(pattern: Pattern, parts: readonly JoinPart[]): SewnLine | undefined {
  const stretches: Stretch[] = []
  let start = 0
  for (const part of parts) {
    const piece = pattern.pieces.find((p) => p.id === part.piece)
    const seam = piece?.seams.find((s) => s.id === part.seam)
    if (!piece || !seam) return undefined
    const length = seamLength(seam)
    const from = part.from ?? 0
    const to = part.to ?? length
    if (!(from > -SAME_PLACE && from <= to && to < length + SAME_PLACE)) return undefined
    stretches.push({ piece, seam, from, to, reversed: part.reversed, start })
    start += to - from
  }
  return stretches.length > 0 ? { stretches, length: start } : undefined
}

/** The same; throws where a part names a seam, or a place on it, that is not there: for patterns that cannot be broken. */
export function lineOf(pattern: Pattern, parts: readonly JoinPart[]): SewnLine {
  const line = sewnLine(pattern, parts)
  if (!line) throw new RangeError(`no line ${parts.map((part) => `${part.piece}: ${part.seam}`).join(', ')}`)
  return line
}

/** Both sides of a join as lines; undefined where a seam that it names is not there. */
export function joinLines(pattern: Pattern, join: Join): { readonly a: SewnLine; readonly b: SewnLine } | undefined {
  const a = sewnLine(pattern, join.a)
  const b = sewnLine(pattern, join.b)
  return a && b ? { a, b } : undefined
}

/** Both sides of a join, mm. */
export interface JoinLengths {
  /** Sewn length of the first side. */
  readonly a: number
  /** Sewn length of the second side. */
  readonly b: number
  /** a − b. */
  readonly ease: number
}

/** The lengths of a join's sides on a pattern, darts closed; 0 for a line that is not there. */
export function joinLengths(pattern: Pattern, join: Join): JoinLengths {
  const a = sewnLine(pattern, join.a)?.length ?? 0
  const b = sewnLine(pattern, join.b)?.length ?? 0
  return { a, b, ease: a - b }
}

/** Whether a join sets a sleeve: front or back cap to armscye, before or after the sides have been split. */
export function isCapJoin(join: Pick<Join, 'id'>): boolean {
  return /^(front|back) cap\b/.test(join.id)
}

/** How far a place on a seam lies from the start of the line, mm of sewn length; undefined where it is not on the line. */
export function placeOnLine(line: SewnLine, piece: string, seam: string, along: number): number | undefined {
  for (const s of line.stretches) {
    if (s.piece.id !== piece || s.seam.id !== seam) continue
    if (along < s.from - SAME_PLACE || along > s.to + SAME_PLACE) continue
    return s.start + (s.reversed ? s.to - along : along - s.from)
  }
  return undefined
}

/** The place `at` mm from the start of a line; undefined beyond its ends. */
export function placeAlongLine(
  line: SewnLine,
  at: number,
): { readonly piece: string; readonly seam: string; readonly along: number } | undefined {
  for (const s of line.stretches) {
    const within = at - s.start
    if (within < -SAME_PLACE || within > s.to - s.from + SAME_PLACE) continue
    return { piece: s.piece.id, seam: s.seam.id, along: s.reversed ? s.to - within : s.from + within }
  }
  return undefined
}

/** Every notch on a line, by its name without a side, with its distance from the line's start, mm. */
export function notchesOn(line: SewnLine): [name: string, place: number][] {
  return piecesOf(line).flatMap((piece) =>
    piece.notches.flatMap((notch): [string, number][] => {
      const place = placeOnLine(line, piece.id, notch.seam, notch.along)
      return place === undefined ? [] : [[baseName(notch.id), place]]
    }),
  )
}

/** Where a line begins or ends: the stretch, and the place on its seam. */
export function lineEnd(line: SewnLine, which: 'start' | 'end'): { readonly stretch: Stretch; readonly along: number } {
  const stretch = line.stretches[which === 'start' ? 0 : line.stretches.length - 1] as Stretch
  const atTo = stretch.reversed === (which === 'start')
  return { stretch, along: atTo ? stretch.to : stretch.from }
}

/** The pieces that the line runs over, each once. */
export function piecesOf(line: SewnLine): Piece[] {
  return [...new Set(line.stretches.map((s) => s.piece))]
}
