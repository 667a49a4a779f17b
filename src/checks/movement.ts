import type { PatternVersion } from '../fitting/replay.ts'
import { neutralLift, sleeveFigures } from '../fitting/sleeve-figures.ts'
import type { Pattern } from '../pattern/pattern.ts'
import type { Piece } from '../pattern/piece.ts'
import { isCapJoin, sewnLine } from '../pattern/sewn-line.ts'

/** How a sleeve moves; mm and degrees. An estimate from the cylinder model, not a promise. */
export interface MovementRow {
  readonly side: 'left' | 'right' | 'both'
  readonly version: string
  readonly capHeight: number
  /** The armscye that the sleeve is set into, front and back together. */
  readonly armscye: number
  readonly bicepsWidth: number
  /** Angle of the hanging arm below horizontal at which the sleeve lies without strain, degrees. */
  readonly neutralLift: number
  /** What a cap 10 mm higher would add to it, degrees. */
  readonly liftPer10mm: number
}

/** The movement of every sleeve in every version of the pattern, in the order of the versions. */
export function movement(versions: readonly PatternVersion[]): MovementRow[] {
  return versions.flatMap(({ label, pattern }) =>
    pattern.pieces.flatMap((piece) => {
      const cap = capFigures(pattern, piece)
      return cap ? [{ side: sideOf(piece), version: label, ...cap }] : []
    }),
  )
}

/** Cap height, armscye, biceps width (mm) and neutral lift (degrees) of one sleeve; undefined for other pieces. */
export function capFigures(pattern: Pattern, sleeve: Piece): Omit<MovementRow, 'side' | 'version'> | undefined {
  const figures = sleeveFigures(sleeve)
  const armscye = armscyeOf(pattern, sleeve)
  if (!figures || armscye === undefined) return undefined
  const { capHeight, bicepsWidth } = figures
  return { ...figures, armscye, liftPer10mm: neutralLift(capHeight + 10, bicepsWidth) - figures.neutralLift }
}

function armscyeOf(pattern: Pattern, sleeve: Piece): number | undefined {
  const joins = pattern.joins.filter((join) => isCapJoin(join) && join.a.some((part) => part.piece === sleeve.id))
  const lines = joins.map((join) => sewnLine(pattern, join.b))
  if (lines.length === 0) return undefined
  return lines.reduce((sum, line) => sum + (line?.length ?? 0), 0)
}

function sideOf(piece: Piece): 'left' | 'right' | 'both' {
  return piece.side === 'left' || piece.side === 'right' ? piece.side : 'both'
}
