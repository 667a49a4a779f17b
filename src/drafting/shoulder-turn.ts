import type { Finding } from '../base/problem.ts'
import { SHOULDER } from './defaults.ts'
import type { HalfFrame } from './frame.ts'

export interface ShoulderTurn {
  /** Turn of the armscye's direction at the shoulder point, radians anticlockwise; front and back cancel. */
  readonly back: number
  readonly front: number
  readonly findings: readonly Finding[]
}

/**
 * Where a shoulder point lies less than 5 mm outside the width line, an armscye that is square to the shoulder
 * would hook outwards. The directions of front and back turn together, so that they still make 180° when sewn:
 * the half that is short turns towards the vertical, in full when its shoulder point lies 5 mm inside the line, and
 * beyond it where the shoulder point lies farther inside.
 */
export function shoulderTurn(back: HalfFrame, front: HalfFrame): ShoulderTurn {
  const backTurn = turnOf(back)
  const frontTurn = turnOf(front)
  // Each half gives way by half: what one gains in uprightness the other loses.
  const turn = (backTurn - frontTurn) / 2
  const findings = [
    ...(backTurn > 0 ? [shortShoulder('bodice back', 'back width', back)] : []),
    ...(frontTurn > 0 ? [shortShoulder('bodice front', 'front width', front)] : []),
  ]
  return { back: turn, front: -turn, findings }
}

function turnOf({ shoulder, width, underarm }: HalfFrame): number {
  const missing = SHOULDER.outsideWidth - (shoulder.tip.x - width)
  const upright = shoulder.tipSlope * Math.min(Math.max(missing / (2 * SHOULDER.outsideWidth), 0), 1)
  // A shoulder point well inside is reached leaning inwards, or the armscye would bend back twice to it.
  const lean = Math.atan2(width - shoulder.tip.x, (shoulder.tip.y - underarm.y) / 2)
  return upright + Math.max(1.5 * lean, 0)
}

function shortShoulder(piece: string, width: string, frame: HalfFrame): Finding {
  const outside = frame.shoulder.tip.x - frame.width
  return {
    code: 'shoulder-point-inside-width',
    severity: 'warning',
    where: { piece, seam: 'armscye' },
    actual: `the shoulder point lies ${Math.abs(outside).toFixed(0)} mm ${outside < 0 ? 'inside' : 'outside'} the ${width} line`,
    expected: `at least ${SHOULDER.outsideWidth} mm outside`,
    hint: `measure ${width}, shoulder length and shoulder slope again, arms down; the armscye was turned so that it does not hook`,
  }
}
