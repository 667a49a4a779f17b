import type { Problem } from '../base/problem.ts'
import { failure, type Result, success } from '../base/result.ts'
import { type BodyHalf, measureOf } from '../body/body.ts'
import { startOf } from '../geometry/path.ts'
import { add, type Point, point } from '../geometry/point.ts'
import { type BustBalance, bustBalance } from './bust-balance.ts'
import type { Choices } from './choices.ts'
import { ARMSCYE, SHOULDER } from './defaults.ts'
import { easeFor } from './ease.ts'
import { type Neckline, neckline, type ShoulderSlopes } from './neckline.ts'
import { dartedShoulder, plainShoulder, type Shoulder } from './shoulder.ts'

/** The points and widths of one half of the bodice; mm, waist level y = 0, center line x = 0, side towards +x. */
export interface Frame {
  readonly neckline: Neckline
  readonly back: HalfFrame
  readonly front: HalfFrame
  /** Distance between the width lines: where the arm passes. */
  readonly armscyeWidth: number
  readonly bust: BustBalance
}

export interface HalfFrame {
  /** Shoulder slope, radians below horizontal. */
  readonly slope: number
  /** Side neck point. */
  readonly neck: Point
  readonly shoulder: Shoulder
  /** Half the width across, center to width line. */
  readonly width: number
  readonly underarm: Point
}

/**
 * The frame of one half of the bodice on a neck of `neckWidth` (the same left and right). `waistDrop` is how far the closed front waist dart lies below the waist at
 * the center: the front waist length runs down to there. Problems: no room for the armscye between the widths,
 * or measures over the bust that contradict each other.
 */
export function frame(half: BodyHalf, choices: Choices, neckWidth: number, waistDrop = 0): Result<Frame> {
  const slopes = shoulderSlopes(half)
  const neck = neckline(neckWidth, slopes)
  const nape = point(0, measureOf(half, 'back waist length'))
  const backNeck = add(nape, startOf(neck.back))
  const bust = bustBalance(half, choices, backNeck.y, startOf(neck.front).x, waistDrop)
  if (!bust.ok) return bust
  const frontNeck = point(startOf(neck.front).x, backNeck.y + bust.value.balance)

  const backWidth = (measureOf(half, 'back width') + easeFor(choices, 'back width')) / 2
  const frontWidth = (measureOf(half, 'front width') + easeFor(choices, 'front width')) / 2
  const armscyeWidth = (measureOf(half, 'bust girth') + easeFor(choices, 'bust')) / 2 - backWidth - frontWidth
  if (armscyeWidth < ARMSCYE.narrowest) return failure(noRoomForArmscye(half, armscyeWidth))

  const shoulder = measureOf(half, 'shoulder length')
  const underarm = nape.y - measureOf(half, 'scye depth') - easeFor(choices, 'armscye depth')
  return success({
    neckline: neck,
    armscyeWidth,
    bust: bust.value,
    back: {
      slope: slopes.back,
      neck: backNeck,
      shoulder: choices.shoulderDart
        ? dartedShoulder(backNeck, slopes.back, shoulder, choices.shoulderDart)
        : plainShoulder(backNeck, slopes.back, shoulder + SHOULDER.backEase),
      width: backWidth,
      underarm: point(backWidth + armscyeWidth / 2, underarm),
    },
    front: {
      slope: slopes.front,
      neck: frontNeck,
      shoulder: plainShoulder(frontNeck, slopes.front, shoulder),
      width: frontWidth,
      // Both armscyes get the same depth: the front underarm rises with its neck point.
      underarm: point(frontWidth + armscyeWidth / 2, underarm + bust.value.intake),
    },
  })
}

/** The back slopes less than the measure, the front more; their mean is the measure. */
export function shoulderSlopes(half: BodyHalf): ShoulderSlopes {
  const slope = measureOf(half, 'shoulder slope')
  return { back: slope - SHOULDER.slopeShift, front: slope + SHOULDER.slopeShift }
}

function noRoomForArmscye(half: BodyHalf, room: number): Problem {
  const mm = (name: 'back width' | 'front width' | 'bust girth') => `${measureOf(half, name).toFixed(0)} mm`
  return {
    code: 'no-room-for-armscye',
    where: { field: 'body.back width' },
    actual: `back width ${mm('back width')} and front width ${mm('front width')} on a bust girth of ${mm('bust girth')} leave ${room.toFixed(0)} mm for the armscye between back and front`,
    expected: `at least ${ARMSCYE.narrowest} mm`,
    hint: 'measure across the back and across the front from armscye to armscye, at the middle of the armscye, arms down',
  }
}
