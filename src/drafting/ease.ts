import type { BodyHalf } from '../body/body.ts'
import { measureOf } from '../body/body.ts'
import type { Choices, EaseName, Fit } from './choices.ts'
import { CAP, CLOTH_EASE } from './defaults.ts'

/**
 * Wearing ease by fit, mm, total round the body or limb. `close` from common practice (upper arm at least 2 in:
 * Threads, 27 Sep 2021; bust 1 1/2–2 in, waist 3/4–1 in: Central Washington University costume text, ch. 16;
 * armscye 1/2–1 in below the armpit, from memory: 20 mm, with which the armscyes of D5585-95 bodies come to 1.02–1.04 of
 * the body's and 97 % of the survey's bodies get a fitted cap; with 15 mm it is 96 %); `standing` and `easy` from common
 * practice.
 */
const FIT_EASE: Readonly<Record<Fit, Readonly<Record<EaseName, number>>>> = {
  close: easeOf(50, 25, 12, 6, 20, 50, 25, 32, 20, 3),
  standing: easeOf(64, 32, 16, 8, 20, 50, 25, 32, 20, 3),
  easy: easeOf(90, 50, 24, 14, 22, 64, 38, 48, 36, 6),
}

function easeOf(
  bust: number,
  waist: number,
  backWidth: number,
  frontWidth: number,
  armscyeDepth: number,
  upperArm: number,
  flexed: number,
  elbow: number,
  wrist: number,
  neckline: number,
): Readonly<Record<EaseName, number>> {
  return {
    bust,
    waist,
    'back width': backWidth,
    'front width': frontWidth,
    'armscye depth': armscyeDepth,
    'upper arm': upperArm,
    'upper arm flexed': flexed,
    elbow,
    wrist,
    neckline,
  }
}

/** The ease in mm for a place: the performer file's own, else the fit's. */
export function easeFor(choices: Choices, name: EaseName): number {
  return choices.ease[name] ?? FIT_EASE[choices.fit][name]
}

export interface UpperArm {
  /** Width of the sleeve at the biceps line, mm. */
  readonly width: number
  readonly body: number
  readonly ease: number
  readonly from: 'relaxed' | 'flexed'
  /** The girth flexed, where it was measured. */
  readonly flexed?: number
}

/** The upper arm that decides: relaxed or flexed, each with its own ease, whichever is wider (CASES: he flexed, it burst). */
export function upperArm(half: BodyHalf, choices: Choices): UpperArm {
  const relaxed = measureOf(half, 'upper arm girth')
  const relaxedEase = easeFor(choices, 'upper arm')
  const flexed = half['upper arm girth flexed']?.value
  const flexedEase = easeFor(choices, 'upper arm flexed')
  if (flexed !== undefined && flexed + flexedEase > relaxed + relaxedEase) {
    return { width: flexed + flexedEase, body: flexed, ease: flexedEase, from: 'flexed', flexed }
  }
  const measured = flexed === undefined ? {} : { flexed }
  return { width: relaxed + relaxedEase, body: relaxed, ease: relaxedEase, from: 'relaxed', ...measured }
}

export interface CapEaseAsked {
  readonly front: number
  readonly back: number
  /** The most that the cloth takes over both halves, mm. */
  readonly most: number
}

/** The cap ease in mm that is asked for on an armscye of this length: the choice, or what the cloth takes well. */
export function capEaseAsked(choices: Choices, armscye: number): number {
  const asked = choices.capEase
  if (asked === undefined) return CLOTH_EASE[choices.cloth].asked * armscye
  return 'mm' in asked ? asked.mm : asked.share * armscye
}

/** A cap ease in mm split 45 % front, 55 % back, with the most that the cloth takes. */
export function capEaseOf(choices: Choices, armscye: number, total: number): CapEaseAsked {
  const most = CLOTH_EASE[choices.cloth].most * armscye
  return { front: total * (1 - CAP.backShare), back: total * CAP.backShare, most }
}
