import { asin, cos, sin, tan } from '../base/trig.ts'
import { hobbySpline, type Knot } from '../geometry/hobby.ts'
import { levelCrossings } from '../geometry/level-crossings.ts'
import { movePath, type Path } from '../geometry/path.ts'
import { pathLength } from '../geometry/path-length.ts'
import { distance, heading, type Point, point, rightOf } from '../geometry/point.ts'
import type { Dart } from '../pattern/piece.ts'

export interface WaistPlan {
  /** Where the waist meets the side seam. */
  readonly side: Point
  /** Unit direction of the side seam upwards from there; the waist meets it squarely. */
  readonly sideUp: Point
  /** Darts from the center outwards: where each axis stands and how high its point lies. */
  readonly darts: readonly { readonly x: number; readonly pointHeight: number }[]
}

export interface WaistSeam {
  readonly parts: readonly Path[]
  readonly darts: readonly Dart[]
  /** How far the closed darts lie below the waist level at the center line, mm. */
  readonly drop: number
  /** Sewn length, darts closed, mm. */
  readonly length: number
}

/**
 * The waist from the center line (at the origin) to the side seam, each dart taking `intake` mm between its
 * mouth points. Square into the center line and the side seam; at every dart square to the leg on both sides,
 * so that the folded dart leaves a smooth waist. Legs are equal in length and vertical darts stand upright.
 */
export function waistSeam(plan: WaistPlan, intake: number): WaistSeam {
  const drop = naturalDrop(plan, intake)
  const parts: Path[] = []
  const darts: Dart[] = []
  let start: Knot = { at: point(0, 0), direction: point(1, 0) }
  plan.darts.forEach(({ x, pointHeight }, index) => {
    const leg = pointHeight + drop
    const half = asin(intake / 2 / leg)
    const reach = leg * sin(half)
    const level = pointHeight - leg * cos(half)
    const mouth: [Point, Point] = [point(x - reach, level), point(x + reach, level)]
    parts.push(hobbySpline([start, { at: mouth[0], direction: heading(-half) }]))
    start = { at: mouth[1], direction: heading(half) }
    darts.push({
      id: plan.darts.length === 1 ? 'waist dart' : `waist dart ${index + 1}`,
      seam: 'waist',
      mouth,
      point: point(x, pointHeight),
    })
  })
  parts.push(hobbySpline([start, { at: plan.side, direction: rightOf(plan.sideUp) }]))
  return { parts, darts, drop, length: parts.reduce((sum, part) => sum + pathLength(part), 0) }
}

/** Secants get there in five or six. */
const STEPS = 30

/**
 * The intake of each dart for which the waist measures `length` mm (to 1e-8 mm), by secant: the waist shortens by nearly
 * the intake. Undefined where it does not get there.
 */
export function intakeForLength(plan: WaistPlan, length: number, guess: number): number | undefined {
  let a = guess
  let fa = waistSeam(plan, a).length - length
  let b = a + fa / plan.darts.length
  for (let i = 0; i < STEPS; i++) {
    const fb = waistSeam(plan, b).length - length
    if (Math.abs(fb) < 1e-8) return b
    const next = b - (fb * (b - a)) / (fb - fa)
    a = b
    fa = fb
    b = next
  }
  return undefined
}

/** Height of the waist under x with the dart there folded down; of the seam itself where there is no dart. */
export function closedWaistHeight(waist: { parts: readonly Path[]; darts: readonly Dart[] }, x: number): number {
  const dart = waist.darts.find(({ mouth }) => mouth[0].x <= x && mouth[1].x >= x)
  if (dart) return dart.point.y - distance(dart.point, dart.mouth[0])
  const [at] = levelCrossings(
    waist.parts.flatMap((part) => movePath(part, swap)),
    x,
  )
  return at ? at.x : Number.NaN
}

function swap(p: Point): Point {
  return { x: p.y, y: p.x }
}

/** A waist that leaves the center squarely and reaches the first dart square to its leg falls by about this. */
function naturalDrop(plan: WaistPlan, intake: number): number {
  const first = plan.darts[0]
  if (!first) return 0
  return ((first.x - intake / 2) * tan(asin(intake / 2 / first.pointHeight))) / 2
}
