import { hobbySpline } from '../geometry/hobby.ts'
import { curvatureChanges } from '../geometry/inflections.ts'
import { endOf, lastCubic, movePath, type Path, reversePath, startOf } from '../geometry/path.ts'
import { pathLength, subPath, tangentAt } from '../geometry/path-length.ts'
import { add, type Point, point, rotateAbout, subtract, turnBetween } from '../geometry/point.ts'
import { bracketed } from './bracketed.ts'
import { CAP } from './defaults.ts'
import { newton, type Pair } from './newton.ts'

/** The armscye that one half of the cap is sewn to, as it lies on the bodice with the side towards +x. */
export interface ArmscyeSide {
  /** From the underarm to the shoulder point. */
  readonly path: Path
  /** Unit direction of the bodice's side seam, upwards at the underarm. */
  readonly sideUp: Point
  /** Its length, mm. */
  readonly length: number
}

/** Biceps width, cap height and cap ease: two of them decide the third. All mm. */
export type CapGiven =
  | { readonly width: number; readonly ease: number }
  | { readonly width: number; readonly height: number }
  | { readonly height: number; readonly ease: number }

export interface CapRequest {
  readonly front: ArmscyeSide
  readonly back: ArmscyeSide
  readonly given: CapGiven
  /** Unit direction of the front underarm seam, upwards at the underarm; the back one mirrors it. */
  readonly underarmSeamUp: (height: number, width: number) => Point
}

export interface Cap {
  readonly height: number
  /** Width of the sleeve at the biceps line. */
  readonly width: number
  /** Cap less armscye, both halves together. */
  readonly ease: number
  /** By how much the grain through the crown lies in front of the middle of the biceps line, mm. */
  readonly shift: number
  /** From the front underarm to the crown. */
  readonly front: Path
  /** From the crown to the back underarm. */
  readonly back: Path
}

/** Residual of both cap equations, mm: a tenth of what is promised. */
const CAP_ACCURACY = 1e-7

/** The armscye is copied to this accuracy of length, mm. */
const SLIVER = 0.05

/** Where the searches start: what bodies of the survey come to, as shares of the armscye. */
const USUAL = { height: 0.29, width: 0.82, ease: 0.06 } as const

/**
 * Solves the cap: what is not given of height, biceps width and ease, and the grain's shift, so that each half has
 * the length of its armscye with its share of the ease, to 1e-6 mm. The first 38 mm from the underarm are the
 * armscye's own curve, laid as a rigid whole in the frame of the underarm seam, so that the angles at the underarm
 * total 180° on the sleeve as on the bodice; from there a fair curve runs on, level at the crown. Damped Newton, with
 * nested bisection to fall back on. Undefined where there is no such cap.
 */
export function solveCap(request: CapRequest): Cap | undefined {
  const armscye = request.front.length + request.back.length
  const unknown = 'ease' in request.given ? ('width' in request.given ? 'height' : 'width') : 'ease'
  const free = solveWith(request, unknown, [USUAL[unknown] * armscye, 0], false)
  if (free && isFair(free)) return free
  // Where a low cap would bend back below the crown, handles held within their triangle keep it fair.
  const held = free && solveWith(request, unknown, [free[unknown], free.shift], true)
  return held && isFair(held) ? held : free
}

/** One inflection on each side, none over the crown. */
function isFair(cap: Cap): boolean {
  return curvatureChanges(cap.front) === 1 && curvatureChanges(cap.back) === 1
}

type Unknown = 'height' | 'width' | 'ease'

function solveWith(request: CapRequest, unknown: Unknown, start: Pair, bounded: boolean): Cap | undefined {
  const front = lowerCurve(request.front)
  const back = mirrored(lowerCurve(request.back))
  const armscye = request.front.length + request.back.length
  const lowest = lowestCrown(front, back)
  const draw = (value: number, shift: number) => {
    const figures: CapFigures = { height: 0, width: 0, ease: 0, ...request.given, [unknown]: value }
    return drawCap(request, front, back, figures, shift, bounded)
  }
  const residuals = (value: number, shift: number): Pair | undefined => {
    if (unknown === 'height' && value <= lowest) return undefined
    if (unknown === 'width' && value < CAP.copied * 2) return undefined
    if (Math.abs(shift) > armscye / 5) return undefined
    const cap = draw(value, shift)
    const accuracy = { accuracy: CAP_ACCURACY / 20 }
    return [
      pathLength(cap.front, accuracy) - request.front.length - (1 - CAP.backShare) * cap.ease,
      pathLength(cap.back, accuracy) - request.back.length - CAP.backShare * cap.ease,
    ]
  }
  const low = unknown === 'height' ? lowest + 1e-3 : unknown === 'width' ? CAP.copied * 2 + 1 : -armscye / 3
  const high = unknown === 'height' ? armscye : unknown === 'width' ? 2 * armscye : armscye / 2
  // Height and width lengthen the cap; ease lengthens what it must reach.
  const rising = unknown === 'ease' ? -1 : 1
  const solution =
    newton(residuals, start, { accuracy: CAP_ACCURACY }) ??
    bracketed(residuals, { low, high, rising, most: armscye / 5, accuracy: CAP_ACCURACY * 10 })
  return solution && draw(...solution)
}

interface CapFigures {
  readonly height: number
  readonly width: number
  readonly ease: number
}

interface Copy {
  readonly path: Path
  /** Unit direction of the seam the copy stands on. */
  readonly up: Point
}

function lowerCurve(side: ArmscyeSide): Copy {
  // A knot just before the end is the end: a sliver of a cubic has no curvature of its own.
  const last = subPath(side.path, 0, CAP.copied)
  const path = pathLength(last.slice(-1)) < SLIVER ? last.slice(0, -1) : last
  return { path, up: side.sideUp }
}

function mirrored(copy: Copy): Copy {
  const mirror = (p: Point) => point(-p.x, p.y)
  return { path: movePath(copy.path, mirror), up: mirror(copy.up) }
}

/** A crown below the ends of the copied curves would turn the cap inside out. */
function lowestCrown(front: Copy, back: Copy): number {
  return Math.max(...[front, back].map(({ path }) => endOf(path).y - startOf(path).y), 10)
}

function drawCap(
  request: CapRequest,
  front: Copy,
  back: Copy,
  { height, width, ease }: CapFigures,
  shift: number,
  bounded: boolean,
): Cap {
  const up = request.underarmSeamUp(height, width)
  const frontSide = drawSide(front, point(width / 2 - shift, 0), up, height, point(-1, 0), bounded)
  const backSide = drawSide(back, point(-width / 2 - shift, 0), point(-up.x, up.y), height, point(1, 0), bounded)
  return { height, width, ease, shift, front: frontSide, back: reversePath(backSide) }
}

/** From the underarm to the crown, which is at x = 0. */
function drawSide(copy: Copy, underarm: Point, up: Point, height: number, level: Point, bounded: boolean): Path {
  const turn = turnBetween(copy.up, up)
  const from = startOf(copy.path)
  const laid = movePath(copy.path, (p) => add(underarm, rotateAbout(subtract(p, from), point(0, 0), turn)))
  const direction = tangentAt(lastCubic(laid), 1)
  const upper = [
    { at: endOf(laid), direction },
    { at: point(0, height), direction: level },
  ]
  return [...laid, ...hobbySpline(upper, { bounded })]
}
