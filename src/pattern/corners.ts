import { firstCubic, lastCubic, type Path } from '../geometry/path.ts'
import { tangentAt } from '../geometry/path-length.ts'
import { scale, turnBetween } from '../geometry/point.ts'
import type { Piece, Seam } from './piece.ts'
import { seamLength } from './seam.ts'
import { lineEnd, type SewnLine } from './sewn-line.ts'

/** A line that ends this near to the end of its seam ends at a corner of the piece, mm. */
const SEAM_END = 0.001

/** The angle inside the piece, radians, between two paths that meet end to end: `before` ends where `after` starts. */
export function insideAngle(before: Path, after: Path): number {
  const arriving = tangentAt(lastCubic(before), 1)
  const leaving = tangentAt(firstCubic(after), 0)
  const angle = turnBetween(leaving, scale(arriving, -1))
  return angle < 0 ? angle + 2 * Math.PI : angle
}

/** The seam that follows round the piece. */
export function seamAfter(piece: Piece, seam: Seam): Seam {
  return piece.seams[(piece.seams.indexOf(seam) + 1) % piece.seams.length] as Seam
}

/** The seam that comes before round the piece. */
function seamBefore(piece: Piece, seam: Seam): Seam {
  return piece.seams[(piece.seams.indexOf(seam) + piece.seams.length - 1) % piece.seams.length] as Seam
}

/** The corner at the end of a seam: the inside angle in radians, and the seam that goes on there with one of its ends. */
export interface SeamCorner {
  readonly angle: number
  readonly neighbor: Seam
  readonly neighborEnd: 'start' | 'end'
}

/** The corner at the start or the end of a seam. */
export function cornerOf(piece: Piece, seam: Seam, which: 'start' | 'end'): SeamCorner {
  const first = seam.parts[0] as Path
  const last = seam.parts[seam.parts.length - 1] as Path
  if (which === 'end') {
    const neighbor = seamAfter(piece, seam)
    return { angle: insideAngle(last, neighbor.parts[0] as Path), neighbor, neighborEnd: 'start' }
  }
  const neighbor = seamBefore(piece, seam)
  const angle = insideAngle(neighbor.parts[neighbor.parts.length - 1] as Path, first)
  return { angle, neighbor, neighborEnd: 'end' }
}

/** A corner of a piece where a sewn line begins or ends. */
export interface LineCorner extends SeamCorner {
  readonly piece: Piece
}

/** The corner of the piece where the line begins or ends; undefined where that is not the end of a seam. */
export function cornerOfLine(line: SewnLine, which: 'start' | 'end'): LineCorner | undefined {
  const { stretch, along } = lineEnd(line, which)
  const atStart = along < SEAM_END
  if (!atStart && along < seamLength(stretch.seam) - SEAM_END) return undefined
  return { ...cornerOf(stretch.piece, stretch.seam, atStart ? 'start' : 'end'), piece: stretch.piece }
}
