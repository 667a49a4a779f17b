import { bounds } from '../geometry/bounds.ts'
import { movePath } from '../geometry/path.ts'
import { angleOf, distance, point, rotateAbout, subtract } from '../geometry/point.ts'
import type { Piece, Seam } from '../pattern/piece.ts'
import { seamEnd, seamStart } from '../pattern/seam.ts'
import { baseName } from '../pattern/side-names.ts'

/** How a sleeve moves, mm and degrees. */
export interface SleeveFigures {
  /** Height of the cap over the line from underarm to underarm. */
  readonly capHeight: number
  /** From underarm to underarm. */
  readonly bicepsWidth: number
  /**
   * Angle below horizontal at which the sleeve hangs without strain, degrees: θ = atan(π·h/B), the sleeve as a
   * cylinder cut by the plane of the armscye (derived). An estimate.
   */
  readonly neutralLift: number
}

/** The halves of a sleeve's cap, on which alone its figures depend; none on any other piece. */
export function capsOf(piece: Piece): Seam[] {
  return piece.seams.filter((seam) => baseName(seam.id) === 'front cap' || baseName(seam.id) === 'back cap')
}

/** The figures of a sleeve piece; undefined for any other piece. */
export function sleeveFigures(piece: Piece): SleeveFigures | undefined {
  const caps = capsOf(piece)
  const [first, last] = caps
  if (!first || !last || caps.length !== 2) return undefined
  const a = seamStart(first)
  const b = seamEnd(last)
  // Turned so that the biceps line is level, the highest point of the box is the crown.
  const tilt = angleOf(subtract(a, b))
  const level = movePath([...first.parts.flat(), ...last.parts.flat()], (p) => rotateAbout(p, b, -tilt))
  const capHeight = bounds(level).top - rotateAbout(b, b, -tilt).y
  const bicepsWidth = distance(a, b)
  return { capHeight, bicepsWidth, neutralLift: neutralLift(capHeight, bicepsWidth) }
}

/** Neutral lift in degrees for a cap height and a biceps width in mm. */
export function neutralLift(capHeight: number, bicepsWidth: number): number {
  return angleOf(point(bicepsWidth, Math.PI * capHeight)) * (180 / Math.PI)
}
