import type { JoinPart, Pattern } from '../pattern/pattern.ts'
import { pieceOf, seamLength, seamOf } from '../pattern/seam.ts'
import { baseName } from '../pattern/side-names.ts'
import type { SeamPosition } from './position-map.ts'

/** A part of a join with its ends, mm along its seam from < to. */
export interface JoinSpan extends JoinPart {
  readonly from: number
  readonly to: number
}

/** The parts of a sewn line with their ends filled in; throws where a part names a piece or seam that is not there. */
export function joinSpans(pattern: Pattern, parts: readonly JoinPart[]): JoinSpan[] {
  return parts.map((part) => ({
    ...part,
    from: part.from ?? 0,
    to: part.to ?? seamLength(seamOf(pieceOf(pattern, part.piece), part.seam)),
  }))
}

/** Sewn length of a line, mm. */
export function lineLength(spans: readonly JoinSpan[]): number {
  return spans.reduce((sum, { from, to }) => sum + to - from, 0)
}

/** How far along a sewn line a place lies, mm; undefined where it is not on it. */
function placeOnSpans(spans: readonly JoinSpan[], { piece, seam, along }: SeamPosition): number | undefined {
  let start = 0
  for (const span of spans) {
    if (span.piece === piece && span.seam === seam && along >= span.from - 1e-6 && along <= span.to + 1e-6) {
      return start + (span.reversed ? span.to - along : along - span.from)
    }
    start += span.to - span.from
  }
  return undefined
}

/** The place `at` mm along a sewn line; undefined beyond its ends. */
export function positionOnSpans(spans: readonly JoinSpan[], at: number): SeamPosition | undefined {
  let start = 0
  for (const span of spans) {
    const length = span.to - span.from
    const within = at - start
    if (within >= -1e-6 && within <= length + 1e-6) {
      return { piece: span.piece, seam: span.seam, along: span.reversed ? span.to - within : span.from + within }
    }
    start += length
  }
  return undefined
}

/** The place of a notch on a sewn line by its name without a side, mm from the line's start; undefined where there is none. */
export function notchOnSpans(pattern: Pattern, spans: readonly JoinSpan[], name: string): number | undefined {
  for (const span of spans) {
    for (const notch of pieceOf(pattern, span.piece).notches) {
      if (baseName(notch.id) !== name || notch.seam !== span.seam) continue
      const place = placeOnSpans(spans, { piece: span.piece, seam: notch.seam, along: notch.along })
      if (place !== undefined) return place
    }
  }
  return undefined
}
