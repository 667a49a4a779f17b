import type { Finding, Problem } from '../base/problem.ts'
import { failure, type Result, success } from '../base/result.ts'
import { type BodyHalf, valueOf } from '../body/body.ts'
import { endOf, movePath, type Path, polyline, startOf } from '../geometry/path.ts'
import { pathLength } from '../geometry/path-length.ts'
import { add, heading, leftOf, type Point, point, rotateAbout, subtract } from '../geometry/point.ts'
import type { Dart } from '../pattern/piece.ts'
import { armscye, widthPoint } from './armscye.ts'
import type { Choices } from './choices.ts'
import { ARMSCYE, BUST_DART, WAIST } from './defaults.ts'
import { easeFor } from './ease.ts'
import { type Frame, frame, type HalfFrame } from './frame.ts'
import { shoulderTurn } from './shoulder-turn.ts'
import { plainSideSeam, type SideSeam, sideSeamWithDart } from './side-seam.ts'
import { type DartShare, suppression } from './suppression.ts'
import { closedWaistHeight, intakeForLength, type WaistPlan, type WaistSeam, waistSeam } from './waist-seam.ts'

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

export interface Bodice {
  readonly frame: Frame
  readonly back: BodiceHalf
  readonly front: BodiceHalf
  readonly findings: readonly Finding[]
}

/** Drafts the bodice of one half of the body, front and back. Problems as `frame` returns them, or a bust dart without room. */
export function bodice(half: BodyHalf, choices: Choices, neckWidth: number): Result<Bodice> {
  // The front waist length ends at the closed waist under the bust point, which depends on where that lies: it settles fast.
  let drop = 0
  for (let round = 0; ; round++) {
    const settled = frame(half, choices, neckWidth, drop)
    if (!settled.ok) return settled
    const drafted = drawBodice(half, choices, settled.value)
    if (!drafted.ok) return drafted
    const next = -closedWaistHeight(drafted.value.front.waist, settled.value.bust.point.x)
    if (Math.abs(next - drop) < 1e-7 || settled.value.bust.from !== 'measured' || round >= 20) return drafted
    drop = next
  }
}

function drawBodice(half: BodyHalf, choices: Choices, settled: Frame): Result<Bodice> {
  const { back, front, bust, armscyeWidth } = settled
  const waist = (valueOf(half, 'waist girth') + easeFor(choices, 'waist')) / 2
  const shares = suppression(back.underarm.x + front.underarm.x - waist)
  const turn = shoulderTurn(back, front)

  const backHalf = drawHalf({
    frame: back,
    sideFor: (at) => plainSideSeam(at, back.underarm),
    darts: shares.back,
    front: false,
    dartX: back.width / 2,
    dartHeight: back.underarm.y - WAIST.shortOf,
    sideShare: shares.side,
    hollow: hollowFor('back', armscyeWidth),
    turn: turn.back,
    neckline: movePath(settled.neckline.back, (p) => add(p, subtract(back.neck, startOf(settled.neckline.back)))),
  })
  if (!backHalf.ok) return backHalf
  const sideLength = backHalf.value.side.parts.reduce((sum, part) => sum + pathLength(part), 0)
  const dartPoint = point(bust.point.x + BUST_DART.shortOf, bust.point.y)
  const frontHalf = drawHalf({
    frame: front,
    sideFor: (at) =>
      bust.intake < BUST_DART.least || choices.bustDart === 'eased'
        ? plainSideSeam(at, front.underarm)
        : sideSeamWithDart(at, front.underarm, dartPoint, sideLength),
    darts: shares.front,
    front: true,
    dartX: bust.point.x,
    dartHeight: bust.point.y - WAIST.shortOf,
    sideShare: shares.side,
    hollow: hollowFor('front', armscyeWidth),
    turn: turn.front,
    neckline: movePath(settled.neckline.front, (p) => add(p, subtract(front.neck, startOf(settled.neckline.front)))),
  })
  if (!frontHalf.ok) return frontHalf
  return success({ frame: settled, back: backHalf.value, front: frontHalf.value, findings: [...turn.findings, ...bentBack('back', backHalf.value), ...bentBack('front', frontHalf.value)] })
}

function bentBack(side: 'back' | 'front', half: BodiceHalf): Finding[] {
  if (half.fair) return []
  return [
    {
      code: 'armscye-bends-back',
      severity: 'warning',
      where: { piece: `bodice ${side}`, seam: 'armscye' },
      actual: `the armscye bends back at the ${side} width line`,
      expected: 'a curve that turns one way from the underarm to the width line',
      hint: `the shoulder point lies far inside the width line: measure ${side} width, shoulder length and shoulder slope again`,
    },
  ]
}

function hollowFor(side: 'back' | 'front', armscyeWidth: number): number {
  const { share, plus, most } = ARMSCYE.hollow[side]
  return Math.min(share * armscyeWidth + plus, most)
}

interface HalfPlan {
  readonly frame: HalfFrame
  readonly sideFor: (waist: Point) => SideSeam | undefined
  readonly darts: DartShare
  /** Whether this is the front. */
  readonly front: boolean
  readonly dartX: number
  readonly dartHeight: number
  readonly sideShare: number
  readonly hollow: number
  /** Turn of the armscye's direction at the shoulder point, radians anticlockwise. */
  readonly turn: number
  readonly neckline: Path
}

function drawHalf(plan: HalfPlan): Result<BodiceHalf> {
  const { frame, darts } = plan
  const waistLength = frame.underarm.x - plan.sideShare - darts.intake
  if (!roomForDarts(plan)) return failure(noRoomForWaistDarts(plan))
  const lower = lowerEdge(plan, waistLength)
  if (!lower) {
    return failure({
      code: 'no-room-for-bust-dart',
      where: { field: 'body.neck to bust point', piece: 'bodice front', seam: 'side seam' },
      actual: 'no bust dart on the side seam makes front and back side seams equal',
      expected: 'a bust point well inside the side seam and below the armscye',
      hint: 'check front waist length, neck to bust point and bust point width',
    })
  }
  const { waist, side } = lower
  const curve = armscye({
    underarm: frame.underarm,
    leaving: leftOf(side.upAtUnderarm),
    width: widthPoint(frame.width, frame.underarm, frame.shoulder.tip, ARMSCYE.widthPoint),
    shoulder: frame.shoulder.tip,
    arriving: rotateAbout(heading(Math.PI / 2 - frame.shoulder.tipSlope), point(0, 0), plan.turn),
    hollow: plan.hollow,
  })
  const neckline = plan.neckline
  const bottom = point(0, 0)
  return success({
    frame,
    waist,
    side,
    armscye: curve.path,
    hollow: curve.hollow,
    fair: curve.fair,
    shoulder: frame.shoulder.parts,
    neckline,
    center: polyline([endOf(neckline), bottom]),
    darts: [waist.darts, side.dart ?? [], frame.shoulder.dart ?? []].flat(),
  })
}

/** Whether the waist darts stand clear of center and side seam, and reach high enough to be sewn. */
function roomForDarts(plan: HalfPlan): boolean {
  const { darts, frame, sideShare } = plan
  if (darts.count === 0) return true
  const places = dartPlaces(plan)
  const half = darts.intake / darts.count / 2
  const first = (places[0] as { x: number }).x - half
  const last = (places[places.length - 1] as { x: number }).x + half
  const side = frame.underarm.x - sideShare
  return first >= WAIST.clear && last <= side - WAIST.clear && plan.dartHeight >= WAIST.shortest
}

function noRoomForWaistDarts({ dartHeight, darts, front }: HalfPlan): Problem {
  const low = dartHeight < WAIST.shortest
  return {
    code: low ? (front ? 'bust-point-too-low' : 'back-too-short') : 'no-room-for-waist-darts',
    where: { field: low ? (front ? 'body.neck to bust point' : 'body.back waist length') : 'body.waist girth' },
    actual: low
      ? `a ${front ? 'front' : 'back'} waist dart of ${dartHeight.toFixed(0)} mm`
      : `${darts.intake.toFixed(0)} mm to take in between bust and waist on each ${front ? 'front' : 'back'} half`,
    expected: low ? `at least ${WAIST.shortest} mm from the waist to the dart's point` : 'a bust and a waist of one body',
    hint: low
      ? front
        ? 'measure neck to bust point and front waist length again, from the side of the neck base'
        : 'measure back waist length and scye depth again, from the nape bone'
      : 'measure bust girth and waist girth again, and look at the unit they were written in',
  }
}

/** Waist and side seam with a waist of exactly `length` mm: the darts take what is needed, without darts the side seam moves. */
function lowerEdge(plan: HalfPlan, length: number): { waist: WaistSeam; side: SideSeam } | undefined {
  const { darts, frame } = plan
  let x = frame.underarm.x - plan.sideShare
  for (let round = 0; round < 40; round++) {
    const at = point(x, 0)
    const side = plan.sideFor(at)
    if (!side) return undefined
    const seam: WaistPlan = { side: at, sideUp: side.upAtWaist, darts: dartPlaces(plan) }
    if (darts.count > 0) return { waist: waistSeam(seam, intakeForLength(seam, length, darts.intake / darts.count)), side }
    const waist = waistSeam(seam, 0)
    if (Math.abs(waist.length - length) < 1e-8) return { waist, side }
    x += length - waist.length
  }
  return undefined
}

function dartPlaces({ darts, dartX, dartHeight }: HalfPlan): WaistPlan['darts'] {
  const step = darts.intake / darts.count + WAIST.betweenDarts
  return Array.from({ length: darts.count }, (_, k) => ({
    x: dartX + (k - (darts.count - 1) / 2) * step,
    pointHeight: dartHeight,
  }))
}
