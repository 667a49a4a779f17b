import type { Finding } from '../base/problem.ts'
import { atan2 } from '../base/trig.ts'
import type { BodyHalf } from '../body/body.ts'
import type { MeasureName } from '../body/measure.ts'
import { SHOULDER } from './defaults.ts'
import type { HalfFrame } from './frame.ts'

/** Less than this is not seen, degrees. */
const LEAST_TURN = 0.5

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
 * beyond it where the shoulder point lies farther inside. Where the measures of `half` behind it were taken that is a
 * warning; where one of them is an estimate, only a note that asks for it.
 */
export function shoulderTurn(back: HalfFrame, front: HalfFrame, half: BodyHalf): ShoulderTurn {
  const backTurn = turnOf(back)
  const frontTurn = turnOf(front)
  // Each half gives way by half: what one gains in uprightness the other loses.
  const turn = (backTurn - frontTurn) / 2
  const findings = [
    ...(backTurn > 0 ? [shortShoulder('back', back, half, turn)] : []),
    ...(frontTurn > 0 ? [shortShoulder('front', front, half, -turn)] : []),
  ]
  return { back: turn, front: -turn, findings }
}

function turnOf({ shoulder, width, underarm }: HalfFrame): number {
  const missing = SHOULDER.outsideWidth - (shoulder.tip.x - width)
  const upright = shoulder.tipSlope * Math.min(Math.max(missing / (2 * SHOULDER.outsideWidth), 0), 1)
  // A shoulder point well inside is reached leaning inwards, or the armscye would bend back twice to it.
  const lean = atan2(width - shoulder.tip.x, (shoulder.tip.y - underarm.y) / 2)
  return upright + Math.max(SHOULDER.leanShare * lean, 0)
}

function shortShoulder(part: 'back' | 'front', frame: HalfFrame, half: BodyHalf, turned: number): Finding {
  const width = `${part} width` as const
  const outside = frame.shoulder.tip.x - frame.width
  const behind: readonly MeasureName[] = [width, 'shoulder length', 'shoulder slope', 'neck base girth']
  const estimated = behind.filter((name) => half[name]?.estimated)
  const measure =
    estimated.length > 0 ? `measure ${listed(estimated)}, now estimated` : `measure ${listed(behind)} again`
  return {
    code: 'shoulder-point-inside-width',
    severity: estimated.length > 0 ? 'note' : 'warning',
    where: { piece: `bodice ${part}`, seam: 'armscye' },
    actual: `the shoulder point lies ${Math.abs(outside).toFixed(0)} mm ${outside < 0 ? 'inside' : 'outside'} the ${width} line`,
    expected: `at least ${SHOULDER.outsideWidth} mm outside`,
    hint: `${measure}, arms down; ${turnWords(part, turned)}`,
  }
}

/** What was done about it: turned as far as the other half, which must lose what this one gains, let it. */
function turnWords(part: 'back' | 'front', turned: number): string {
  const degrees = (turned * 180) / Math.PI
  if (degrees >= LEAST_TURN)
    return `the ${part} armscye was turned ${degrees.toFixed(0)} deg towards the vertical so that it does not hook`
  const other = part === 'back' ? 'front' : 'back'
  return `the ${part} armscye could not be turned, because the ${other} one needs it as much: look whether it hooks`
}

function listed(names: readonly string[]): string {
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`
}
