import type { CorrectionReaders } from '../base/readers.ts'
import type { Correction } from './correction.ts'
import { backWidth } from './corrections/back-width.ts'
import { dartIntake } from './corrections/dart-intake.ts'
import { dropNeckline } from './corrections/drop-neckline.ts'
import { elbowDartIntake } from './corrections/elbow-dart-intake.ts'
import { forwardShoulder } from './corrections/forward-shoulder.ts'
import { frontWidth } from './corrections/front-width.ts'
import { hollow } from './corrections/hollow.ts'
import { joinSides } from './corrections/join-sides.ts'
import { lengthen } from './corrections/lengthen.ts'
import { letOut } from './corrections/let-out.ts'
import { lowerCap } from './corrections/lower-cap.ts'
import { lowerUnderarm } from './corrections/lower-underarm.ts'
import { moveBustPoint } from './corrections/move-bust-point.ts'
import { moveDart } from './corrections/move-dart.ts'
import { moveElbowDarts } from './corrections/move-elbow-darts.ts'
import { narrow } from './corrections/narrow.ts'
import { raiseCap } from './corrections/raise-cap.ts'
import { raiseNeckline } from './corrections/raise-neckline.ts'
import { raiseUnderarm } from './corrections/raise-underarm.ts'
import { rematchCap } from './corrections/rematch-cap.ts'
import { roundBack } from './corrections/round-back.ts'
import { shorten } from './corrections/shorten.ts'
import { shoulderLength } from './corrections/shoulder-length.ts'
import { shoulderSlope } from './corrections/shoulder-slope.ts'
import { swayBack } from './corrections/sway-back.ts'
import { takeIn } from './corrections/take-in.ts'
import { turnSleeve } from './corrections/turn-sleeve.ts'
import { underarmReach } from './corrections/underarm-reach.ts'
import { widen } from './corrections/widen.ts'

/** Every trade correction, in the order in which they are listed for a draper. */
export const CORRECTIONS: readonly Correction[] = [
  letOut,
  takeIn,
  hollow,
  raiseCap,
  lowerCap,
  turnSleeve,
  lengthen,
  shorten,
  widen,
  narrow,
  moveElbowDarts,
  elbowDartIntake,
  underarmReach,
  rematchCap,
  shoulderSlope,
  forwardShoulder,
  shoulderLength,
  raiseUnderarm,
  lowerUnderarm,
  backWidth,
  frontWidth,
  roundBack,
  swayBack,
  moveBustPoint,
  dartIntake,
  moveDart,
  dropNeckline,
  raiseNeckline,
  joinSides,
]

/** The correction of this name; undefined when there is none. */
export function correctionNamed(name: string, table: readonly Correction[] = CORRECTIONS): Correction | undefined {
  return table.find((correction) => correction.name === name)
}

/** What `readPerformer` needs to know of the corrections: their names and the schemas of their settings. */
/* @__NO_SIDE_EFFECTS__ */
export function readersOf(corrections: readonly Correction[]): CorrectionReaders {
  return {
    names: corrections.map((correction) => correction.name),
    settingsOf: (name) => correctionNamed(name, corrections)?.settings,
  }
}

/** `readersOf` the trade corrections. */
export const correctionReaders = readersOf(CORRECTIONS)
