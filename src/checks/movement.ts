import type { MeasureRow } from '../drafting/draft.ts'
import type { PatternVersion } from '../fitting/replay.ts'
import { neutralLift, type SleeveFigures, sleeveFigures } from '../fitting/sleeve-figures.ts'
import type { Join, Pattern } from '../pattern/pattern.ts'
import type { Piece } from '../pattern/piece.ts'
import { isCapJoin, sewnLine } from '../pattern/sewn-line.ts'
import { baseName, namedSide } from '../pattern/side-names.ts'
import { presentMeasures } from './present-measures.ts'
import { type ReachForward, reachForward } from './reach-forward.ts'

/** A sleeve in its armscye; mm and degrees. Lengths are the pattern's; lifts are estimates from the cylinder model. */
export interface CapFigures extends SleeveFigures {
  /** The wearer's side, or both where they are alike. */
  readonly side: 'left' | 'right' | 'both'
  /** The armscye that the sleeve is set into, front and back together. */
  readonly armscye: number
  /** What a cap 10 mm higher would add to the neutral lift, degrees: the arm hangs lower. */
  readonly liftPer10mm: number
  /** What 10 mm of underarm reach (a cap 10 mm lower) would add to it, degrees: negative, the arm rises. */
  readonly liftPer10mmReach: number
}

/** How a sleeve moves in one version of the pattern. Estimates, not a promise. */
export interface MovementRow extends CapFigures {
  /** Label of the version. */
  readonly version: string
  /** The sleeve's underarm seam, underarm to wrist, mm. */
  readonly underarmSeam?: number
  /** All there is under the arm, waist to wrist: side seam and underarm seam, mm. */
  readonly underarmLength?: number
  /** Both arms forward: what the back grows by and what the pattern has there; absent where the back is not measured. */
  readonly reachForward?: ReachForward
}

/**
 * The movement of every sleeve in every version of the pattern, in the order of the versions. `measures` are the
 * report's: their back width is measured again on each version.
 */
export function movement(versions: readonly PatternVersion[], measures: readonly MeasureRow[] = []): MovementRow[] {
  const back = measures.filter((row) => row.name === 'back width')
  return versions.flatMap(({ label, pattern }) => {
    const reach = reachForward(back.length === 0 ? [] : presentMeasures(back, pattern))
    return pattern.pieces.flatMap((piece) =>
      capsOf(pattern, piece).map(({ side, ...cap }): MovementRow => {
        const underarmSeam = shorterOf(pattern, 'underarm seam', side)
        const sideSeam = shorterOf(pattern, 'side seam', side)
        return {
          side,
          version: label,
          ...cap,
          ...(underarmSeam === undefined ? {} : { underarmSeam }),
          ...(underarmSeam === undefined || sideSeam === undefined ? {} : { underarmLength: underarmSeam + sideSeam }),
          ...(reach === undefined ? {} : { reachForward: reach }),
        }
      }),
    )
  })
}

/** The figures of a sleeve in the larger of the armscyes it is set into; undefined for other pieces. */
export function capFigures(pattern: Pattern, sleeve: Piece): CapFigures | undefined {
  return capsOf(pattern, sleeve).sort((a, b) => b.armscye - a.armscye)[0]
}

/** One for each side where the sleeve, or what it is set into, is apart left and right. */
function capsOf(pattern: Pattern, sleeve: Piece): CapFigures[] {
  const figures = sleeveFigures(sleeve)
  if (!figures) return []
  const joins = pattern.joins.filter((join) => isCapJoin(join) && join.a.some((part) => part.piece === sleeve.id))
  const sides = [...new Set(joins.map((join) => namedSide(join.id) ?? sideOf(sleeve)))]
  return sides.map((side): CapFigures => {
    const mine = joins.filter((join) => (namedSide(join.id) ?? side) === side)
    const { capHeight, bicepsWidth } = figures
    const liftAt = (height: number) => neutralLift(height, bicepsWidth) - figures.neutralLift
    return {
      side,
      ...figures,
      armscye: mine.reduce((sum, join) => sum + (sewnLine(pattern, join.b)?.length ?? 0), 0),
      liftPer10mm: liftAt(capHeight + 10),
      liftPer10mmReach: liftAt(capHeight - 10),
    }
  })
}

/** Sewn length of a join on one side, of its two lines the shorter, mm; undefined where the pattern has no such join. */
function shorterOf(pattern: Pattern, name: string, side: CapFigures['side']): number | undefined {
  const onSide = (join: Join) => side === 'both' || (namedSide(join.id) ?? side) === side
  const join = pattern.joins.find((j) => baseName(j.id) === name && onSide(j))
  const lengths = join ? [sewnLine(pattern, join.a), sewnLine(pattern, join.b)] : []
  return lengths.length > 0 && lengths.every((line) => line !== undefined)
    ? Math.min(...lengths.map((line) => line.length))
    : undefined
}

function sideOf(piece: Piece): CapFigures['side'] {
  return piece.side === 'left' || piece.side === 'right' ? piece.side : 'both'
}
