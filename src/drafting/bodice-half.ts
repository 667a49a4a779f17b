import type { Problem } from '../base/problem.ts'
import { failure, type Result, success } from '../base/result.ts'
import { endOf, type Path, polyline } from '../geometry/path.ts'
import { heading, leftOf, point, rotateAbout, subtract } from '../geometry/point.ts'
import type { Dart } from '../pattern/piece.ts'
import { armscye, widthPoint } from './armscye.ts'
import { ARMSCYE } from './defaults.ts'
import type { HalfFrame } from './frame.ts'
import { type LowerPlan, lowerEdge } from './lower-edge.ts'
import type { SideSeam } from './side-seam.ts'
import type { WaistSeam } from './waist-seam.ts'

/** The stitching lines of half a bodice front or back, center line x = 0, side towards +x. */
export interface BodiceHalf {
  readonly frame: HalfFrame
  readonly waist: WaistSeam
  readonly side: SideSeam
  /** From the underarm to the shoulder point. */
  readonly armscye: Path
  /** Depth of the armscye's hollow on the 45° line, mm. */
  readonly hollow: number
  /** Whether the armscye turns one way from the underarm to the width point. */
  readonly fair: boolean
  /** From the shoulder point to the side neck point. */
  readonly shoulder: readonly Path[]
  /** From the side neck point to the center. */
  readonly neckline: Path
  readonly center: Path
  readonly darts: readonly Dart[]
}

export interface HalfPlan extends LowerPlan {
  readonly frame: HalfFrame
  /** Wanted depth of the armscye's hollow, mm. */
  readonly hollow: number
  /** Turn of the armscye's direction at the shoulder point, radians anticlockwise. */
  readonly turn: number
  readonly neckline: Path
}

/** Draws one half, back or front. Problems: an armscye without height, and those of its lower edge. */
export function bodiceHalf(plan: HalfPlan): Result<BodiceHalf> {
  const { frame, neckline } = plan
  const { x: across, y: height } = subtract(frame.shoulder.tip, frame.underarm)
  const least = Math.max(ARMSCYE.lowest.height, -ARMSCYE.lowest.share * across)
  if (height < least) return failure(armscyeTooLow(plan.part, height, least))
  const lower = lowerEdge(plan)
  if (!lower.ok) return failure(...lower.problems)
  const { waist, side } = lower.value
  const curve = armscye({
    underarm: frame.underarm,
    leaving: leftOf(side.upAtUnderarm),
    width: widthPoint(frame.width, frame.underarm, frame.shoulder.tip, ARMSCYE.widthPoint),
    shoulder: frame.shoulder.tip,
    arriving: rotateAbout(heading(Math.PI / 2 - frame.shoulder.tipSlope), point(0, 0), plan.turn),
    hollow: plan.hollow,
  })
  return success({
    frame,
    waist,
    side,
    armscye: curve.path,
    hollow: curve.hollow,
    fair: curve.fair,
    shoulder: frame.shoulder.parts,
    neckline,
    center: polyline([endOf(neckline), point(0, 0)]),
    darts: [waist.darts, side.dart ?? [], frame.shoulder.dart ?? []].flat(),
  })
}

function armscyeTooLow(part: 'back' | 'front', height: number, least: number): Problem {
  const front = part === 'front'
  return {
    code: 'armscye-too-low',
    where: {
      field: front ? 'body.front waist length' : 'body.scye depth',
      piece: `bodice ${part}`,
      seam: 'armscye',
    },
    actual: `the ${part} shoulder point lies ${height.toFixed(0)} mm above the underarm`,
    expected: `at least ${least.toFixed(0)} mm`,
    hint: front
      ? 'measure front waist length, over the bust point, and back waist length and scye depth again'
      : 'measure scye depth and shoulder slope again',
  }
}
