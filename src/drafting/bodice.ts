import { percent } from '../base/percent.ts'
import type { Finding, Problem } from '../base/problem.ts'
import { failure, type Result, success } from '../base/result.ts'
import { type BodyHalf, measureOf } from '../body/body.ts'
import { movePath, type Path, startOf } from '../geometry/path.ts'
import { pathLength } from '../geometry/path-length.ts'
import { add, type Point, point, subtract } from '../geometry/point.ts'
import { bodiceFindings } from './bodice-findings.ts'
import { type BodiceHalf, bodiceHalf } from './bodice-half.ts'
import type { Choices } from './choices.ts'
import { ARMSCYE, BUST_DART, WAIST } from './defaults.ts'
import { doesNotSettle } from './does-not-settle.ts'
import { easeFor } from './ease.ts'
import { type Frame, frame } from './frame.ts'
import { shoulderTurn } from './shoulder-turn.ts'
import { plainSideSeam, sideSeamWithDart } from './side-seam.ts'
import { suppression } from './suppression.ts'
import { closedWaistHeight } from './waist-seam.ts'

export type { BodiceHalf } from './bodice-half.ts'

export interface Bodice {
  readonly frame: Frame
  readonly back: BodiceHalf
  readonly front: BodiceHalf
  readonly findings: readonly Finding[]
}

/** The front waist length is met to this, mm. */
const SETTLED = 1e-7

/** A round leaves a tenth of the error or less. */
const ROUNDS = 20

/**
 * Drafts the bodice of one half of the body, front and back. Problems: those of `frame`, of the lower edges and of the
 * bust dart, and a front waist length that cannot be met.
 */
export function bodice(half: BodyHalf, choices: Choices, neckWidth: number): Result<Bodice> {
  // The front waist length ends at the closed waist under the bust point, which depends on where that lies.
  let drop = 0
  for (let round = 0; round < ROUNDS; round++) {
    const settled = frame(half, choices, neckWidth, drop)
    if (!settled.ok) return settled
    const drafted = drawBodice(half, choices, settled.value)
    if (!drafted.ok) return drafted
    const { bust } = settled.value
    const next = -closedWaistHeight(drafted.value.front.waist, bust.point.x)
    if (Number.isNaN(next)) return failure(bustPointBeyondSide(bust.point.x, drafted.value.front))
    if (bust.from !== 'measured') return drafted
    if (Math.abs(next - drop) < SETTLED) return drafted
    drop = next
  }
  return failure(doesNotSettle('bodice front', 'waist', 'body.front waist length', 'the front waist length'))
}

function drawBodice(half: BodyHalf, choices: Choices, settled: Frame): Result<Bodice> {
  const { back, front, bust, armscyeWidth } = settled
  const waist = (measureOf(half, 'waist girth') + easeFor(choices, 'waist')) / 2
  const shares = suppression(back.underarm.x + front.underarm.x - waist)
  const turn = shoulderTurn(back, front, half)

  const backHalf = bodiceHalf({
    part: 'back',
    frame: back,
    sideFor: (at) => success(plainSideSeam(at, back.underarm)),
    darts: shares.back,
    dartX: back.width / 2,
    dartHeight: back.underarm.y - WAIST.shortOf,
    sideShare: shares.side,
    hollow: hollowFor('back', armscyeWidth),
    turn: turn.back,
    neckline: from(back.neck, settled.neckline.back),
  })
  if (!backHalf.ok) return backHalf
  const sideLength = backHalf.value.side.parts.reduce((sum, part) => sum + pathLength(part), 0)
  const dartPoint = point(bust.point.x + BUST_DART.shortOf, bust.point.y)
  const drawn = bust.intake >= BUST_DART.least && choices.bustDart !== 'eased'
  const frontHalf = bodiceHalf({
    part: 'front',
    frame: front,
    sideFor: (at) =>
      drawn ? sideSeamWithDart(at, front.underarm, dartPoint, sideLength) : success(plainSideSeam(at, front.underarm)),
    darts: shares.front,
    dartX: bust.point.x,
    dartHeight: bust.point.y - WAIST.shortOf,
    sideShare: shares.side,
    hollow: hollowFor('front', armscyeWidth),
    turn: turn.front,
    neckline: from(front.neck, settled.neckline.front),
  })
  if (!frontHalf.ok) return frontHalf
  const halves = { back: backHalf.value, front: frontHalf.value }
  if (!drawn && bust.intake > BUST_DART.eased.most * (sideLength + bust.intake))
    return failure(tooMuchToEase(bust.intake, sideLength))
  return success({ frame: settled, ...halves, findings: [...turn.findings, ...bodiceFindings(halves)] })
}

function tooMuchToEase(intake: number, back: number): Problem {
  return {
    code: 'too-much-to-ease',
    where: { field: 'draft.bust dart', piece: 'bodice front', seam: 'side seam' },
    actual: `a front side seam of ${(back + intake).toFixed(0)} mm to ease to a back one of ${back.toFixed(0)} mm`,
    expected: `at most ${percent(BUST_DART.eased.most)} of it eased in without a dart`,
    hint: 'draw the bust dart, or measure front waist length and back waist length again',
  }
}

function bustPointBeyondSide(x: number, { frame }: BodiceHalf): Problem {
  return {
    code: 'bust-point-beyond-side',
    where: { field: 'body.bust point width', piece: 'bodice front' },
    actual: `a bust point ${x.toFixed(0)} mm from the center of a front ${frame.underarm.x.toFixed(0)} mm wide`,
    expected: 'a bust point well inside the side seam',
    hint: 'measure from bust point to bust point, and bust girth and waist girth again',
  }
}

/** The neckline moved to its side neck point. */
function from(neck: Point, neckline: Path): Path {
  return movePath(neckline, (p) => add(p, subtract(neck, startOf(neckline))))
}

function hollowFor(side: 'back' | 'front', armscyeWidth: number): number {
  const { share, plus, most } = ARMSCYE.hollow[side]
  return Math.min(share * armscyeWidth + plus, most)
}
