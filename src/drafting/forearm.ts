/** The forearm before it is turned: a cone unrolled about its middle, from the elbow line down. */
export interface Forearm {
  /** By how much each seam leans in from the middle's direction, radians; negative where the sleeve widens. */
  readonly lean: number
  /** Half the straight distance between the wrist's ends, mm. */
  readonly halfChord: number
  /** How far the wrist's ends lie below its middle, mm. */
  readonly drop: number
}

/**
 * The cone from an elbow of `elbow` mm to a wrist whose arc, square to both seams, measures `wrist` mm and lies
 * `length` mm below the elbow line at the middle. Exact to rounding, by bisection on the lean.
 */
export function forearm(elbow: number, wrist: number, length: number): Forearm {
  const at = (lean: number): Forearm => {
    const halfChord = (wrist / 2) * sinc(lean)
    return { lean, halfChord, drop: halfChord * Math.tan(lean / 2) }
  }
  let low = -Math.PI / 4
  let high = Math.PI / 4
  for (let i = 0; i < 60; i++) {
    const lean = (low + high) / 2
    const { halfChord, drop } = at(lean)
    if (halfChord + (length + drop) * Math.tan(lean) < elbow / 2) low = lean
    else high = lean
  }
  return at((low + high) / 2)
}

function sinc(x: number): number {
  return Math.abs(x) < 1e-9 ? 1 : Math.sin(x) / x
}
