import { distance } from '../geometry/point.ts'
import { cornerOf } from '../pattern/corners.ts'
import type { EaseRange, Join, Pattern } from '../pattern/pattern.ts'
import type { Landmark, Piece } from '../pattern/piece.ts'
import { landmarkPoint, pointOnSeam, seamLength } from '../pattern/seam.ts'
import { isCapJoin, joinLines, lineEnd, notchesOn, type SewnLine } from '../pattern/sewn-line.ts'
import { baseName } from '../pattern/side-names.ts'

/** One stretch of a join from mark to mark; mm of sewn length, ease = a − b. */
export interface WalkedSpan {
  /** The mark that it begins at. */
  readonly from: string
  /** The mark that it ends at. */
  readonly to: string
  /** Length on the first side. */
  readonly a: number
  /** Length on the second side. */
  readonly b: number
  /** By how much the first is longer. */
  readonly ease: number
}

/** A join walked on its stitching lines, darts closed; mm. */
export interface WalkedJoin {
  /** Id of the join. */
  readonly id: string
  /** Length of the first side. */
  readonly a: number
  /** Length of the second side. */
  readonly b: number
  /** By how much the first is longer. */
  readonly ease: number
  /** The ease that it may have. */
  readonly declared: EaseRange
  /** The same from mark to mark, in sewing order. */
  readonly spans: readonly WalkedSpan[]
}

/** A landmark this near to an end of a line names the end, mm. */
const AT_END = 0.5

/**
 * Walks one join from its first end to its last, in all and from notch to notch, on the stitching lines with
 * darts closed. Undefined where a seam that it names is not there (`walk` reports that).
 */
export function walkJoin(pattern: Pattern, join: Join): WalkedJoin | undefined {
  const lines = joinLines(pattern, join)
  if (!lines) return undefined
  const { a, b } = lines
  const marks = [
    { name: endName(join, a, b, 'start'), a: 0, b: 0 },
    ...sharedNotches(a, b),
    { name: endName(join, a, b, 'end'), a: a.length, b: b.length },
  ]
  const spans = marks.slice(1).map((to, i) => {
    const from = marks[i] as (typeof marks)[number]
    const spanA = to.a - from.a
    const spanB = to.b - from.b
    return { from: from.name, to: to.name, a: spanA, b: spanB, ease: spanA - spanB }
  })
  return { id: join.id, a: a.length, b: b.length, ease: a.length - b.length, declared: join.ease, spans }
}

/** Notches with one name on both lines, in sewing order; mm from the start of each line. */
function sharedNotches(a: SewnLine, b: SewnLine): { name: string; a: number; b: number }[] {
  const onB = new Map(notchesOn(b))
  return notchesOn(a)
    .flatMap(([name, place]) => {
      const partner = onB.get(name)
      return partner === undefined || place < AT_END || a.length - place < AT_END
        ? []
        : [{ name, a: place, b: partner }]
    })
    .sort((one, other) => one.a - other.a)
}

function endName(join: Join, a: SewnLine, b: SewnLine, which: 'start' | 'end'): string {
  if (isCapJoin(join)) return which === 'start' ? 'underarm' : 'shoulder notch'
  for (const line of [a, b]) {
    const { stretch, along } = lineEnd(line, which)
    const at = pointOnSeam(stretch.seam, along)
    const landmark = stretch.piece.landmarks.find(
      (l) => isOnPiece(stretch.piece, l) && distance(landmarkPoint(stretch.piece, l), at) < AT_END,
    )
    if (landmark) return baseName(landmark.id)
  }
  // No name of its own: the edge that the seam ends at.
  const { stretch, along } = lineEnd(a, which)
  return baseName(cornerOf(stretch.piece, stretch.seam, along < AT_END ? 'start' : 'end').neighbor.id)
}

/** A landmark of a broken piece may lie beyond the end of its seam, where there is no point. */
function isOnPiece(piece: Piece, landmark: Landmark): boolean {
  if ('at' in landmark) return true
  const seam = piece.seams.find((s) => s.id === landmark.seam)
  return seam !== undefined && landmark.along <= seamLength(seam)
}
