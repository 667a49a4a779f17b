import { WAIST } from './defaults.ts'

/** How the difference of bust and waist is taken in on one half of the body, mm. */
export interface Suppression {
  /** What each half of the side seam takes; negative where it flares. */
  readonly side: number
  /** Total intake of the front waist darts, and how many share it. */
  readonly front: DartShare
  readonly back: DartShare
}

export interface DartShare {
  readonly intake: number
  readonly count: number
}

/**
 * Shares a suppression (half bust − half waist, both with ease, mm) between side seam, front dart and back dart.
 * A side half takes at most 25 mm; no dart is smaller than 8 mm; a dart over 45 mm becomes two, which then
 * take all. A negative
 * suppression flares the side seam.
 */
export function suppression(total: number): Suppression {
  const none: DartShare = { intake: 0, count: 0 }
  if (total <= 0) return { side: total / 2, front: none, back: none }
  const side = Math.min(WAIST.sideMost, (WAIST.sideShare * total) / 2)
  const dart = (total - 2 * side) / 2
  // Two darts too small to sew: the side seam takes all (at most 11.5 mm a half, within its own limit).
  if (dart < WAIST.dartLeast) return { side: total / 2, front: none, back: none }
  const share = { intake: dart, count: dart > WAIST.dartMost ? 2 : 1 }
  return { side, front: share, back: share }
}
