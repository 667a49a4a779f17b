import { asin } from '../base/trig.ts'
import { type Path, polyline } from '../geometry/path.ts'
import { along, heading, type Point, rotateAbout } from '../geometry/point.ts'
import type { Dart } from '../pattern/piece.ts'
import { SHOULDER_DART } from './defaults.ts'

export interface Shoulder {
  /** The shoulder point, on the flat pattern. */
  readonly tip: Point
  /** Slope of the shoulder at its tip, radians below horizontal: what the armscye is square to. */
  readonly tipSlope: number
  /** From the shoulder point to the side neck point; two parts where a dart opens on it. */
  readonly parts: readonly Path[]
  readonly dart?: Dart
}

/** A straight shoulder of `length` mm that falls from the side neck point by `slope`. */
export function plainShoulder(neck: Point, slope: number, length: number): Shoulder {
  const tip = along(neck, heading(-slope), length)
  return { tip, tipSlope: slope, parts: [polyline([tip, neck])] }
}

/**
 * A shoulder that is straight, of that slope and length, once its dart is folded. The dart stands square to the shoulder; opening
 * it turns everything outside it about the dart's point, so the legs are equal and the folded seam is true.
 */
export function dartedShoulder(neck: Point, slope: number, length: number, intake: number): Shoulder {
  const inner = along(neck, heading(-slope), SHOULDER_DART.along * length)
  const point = along(inner, heading(-slope - Math.PI / 2), SHOULDER_DART.length)
  const turn = 2 * asin(intake / 2 / SHOULDER_DART.length)
  const open = (p: Point) => rotateAbout(p, point, -turn)
  const tip = open(along(neck, heading(-slope), length))
  const outer = open(inner)
  return {
    tip,
    tipSlope: slope + turn,
    parts: [polyline([tip, outer]), polyline([inner, neck])],
    dart: { id: 'shoulder dart', seam: 'shoulder', mouth: [outer, inner], point },
  }
}
