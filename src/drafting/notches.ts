import { NOTCH } from './defaults.ts'

/** Distance of the front notch from the underarm, mm of an armscye of this length. */
export function frontNotchAt(armscye: number): number {
  return held(NOTCH.front * armscye)
}

/** Distance of the nearer back notch from the underarm. */
export function backNotchAt(armscye: number): number {
  return held(NOTCH.back * armscye)
}

function held(at: number): number {
  return Math.min(Math.max(at, NOTCH.least), NOTCH.most)
}
