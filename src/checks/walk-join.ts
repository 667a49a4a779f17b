import { distance } from '../geometry/point.ts'
import type { EaseRange, Join, Pattern } from '../pattern/pattern.ts'
import type { Landmark, Piece } from '../pattern/piece.ts'
import { landmarkPoint, pointOnSeam, seamLength } from '../pattern/seam.ts'
import { baseName } from '../pattern/side-names.ts'
import { cornerOf } from './corners.ts'
import { lineEnd, piecesOf, placeOnLine, type SewnLine, sewnLine } from './sewn-line.ts'

/** One stretch of a join from mark to mark; mm of sewn length, ease = a − b. */
export interface WalkedSpan {
  readonly from: string
  readonly to: string
  readonly a: number
  readonly b: number
  readonly ease: number
}

/** A join walked on its stitching lines, darts closed; mm. */
export interface WalkedJoin {
  readonly id: string
  readonly a: number
  readonly b: number
  readonly ease: number
  readonly declared: EaseRange
  readonly spans: readonly WalkedSpan[]
}

/** A landmark this near to an end of a line names the end, mm. */
const AT_END = 0.5

/** Both sides of a join as lines; undefined where a seam that it names is not there. */
export function joinLines(pattern: Pattern, join: Join): { readonly a: SewnLine; readonly b: SewnLine } | undefined {
  const a = sewnLine(pattern, join.a)
  const b = sewnLine(pattern, join.b)
  return a && b ? { a, b } : undefined
}

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

/** Whether a join sets a sleeve: front or back cap to armscye, before or after the sides have been split. */
export function isCapJoin(join: Pick<Join, 'id'>): boolean {
  return /^(front|back) cap\b/.test(join.id)
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

/** Every notch on a line, by its name without a side, with its distance from the line's start. */
export function notchesOn(line: SewnLine): [name: string, place: number][] {
  return piecesOf(line).flatMap((piece) =>
    piece.notches.flatMap((notch): [string, number][] => {
      const place = placeOnLine(line, piece.id, notch.seam, notch.along)
      return place === undefined ? [] : [[baseName(notch.id), place]]
    }),
  )
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
