import { sin, tan } from '../base/trig.ts'
/** The forearm before it is turned: a cone unrolled about its middle, from the elbow line down. */
export interface Forearm {
  /** By how much each seam leans in from the middle's direction, radians; negative where the sleeve widens. */
  readonly lean: number
  /** Half the straight distance between the wrist's ends, mm. */
  readonly halfChord: number
  /** How far the wrist's ends lie below its middle, mm. */
  readonly drop: number
}

/** The seams of a forearm lean less than this, radians: beyond it it is a skirt. */
const STEEPEST = Math.PI / 4

/**
 * The cone from an elbow of `elbow` mm to a wrist whose arc, square to both seams, measures `wrist` mm and lies
 * `length` mm below the elbow line at the middle. Exact to rounding, by bisection on the lean, with which the elbow
 * grows; undefined where the seams would have to lean by 45° or more.
 */
export function forearm(elbow: number, wrist: number, length: number): Forearm | undefined {
  const at = (lean: number): Forearm => {
    const halfChord = (wrist / 2) * sinc(lean)
    return { lean, halfChord, drop: halfChord * tan(lean / 2) }
  }
  const missing = (lean: number) => {
    const { halfChord, drop } = at(lean)
    return elbow / 2 - halfChord - (length + drop) * tan(lean)
  }
  let low = -STEEPEST
  let high = STEEPEST
  if (!(missing(low) > 0 && missing(high) < 0)) return undefined
  for (let i = 0; i < 60; i++) {
    const lean = (low + high) / 2
    if (missing(lean) > 0) low = lean
    else high = lean
  }
  return at((low + high) / 2)
}

function sinc(x: number): number {
  return Math.abs(x) < 1e-9 ? 1 : sin(x) / x
}
