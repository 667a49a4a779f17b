import { type Result, success } from '../base/result.ts'
import { type Body, type BodyHalf, measureOf } from '../body/body.ts'
import { type Bodice, bodice } from './bodice.ts'
import type { Choices } from './choices.ts'
import { easeFor } from './ease.ts'
import { shoulderSlopes } from './frame.ts'
import { neckWidth } from './neckline.ts'
import { type Sleeve, sleeve } from './sleeve.ts'

/** The stitching lines of one half of the body, before they become pieces. */
export interface DrawnHalf {
  readonly bodice: Bodice
  readonly sleeve: Sleeve
}

/** Draws bodice and sleeve for one half of the body, as if the other half were its mirror image. */
export function drawHalf(half: BodyHalf, choices: Choices, width: number): Result<DrawnHalf> {
  const drawn = bodice(half, choices, width)
  if (!drawn.ok) return drawn
  const arm = sleeve(half, choices, drawn.value)
  return arm.ok ? success({ bodice: drawn.value, sleeve: arm.value }) : arm
}

/** The back neck width that both halves of the body share, mm. */
export function neckWidthFor(body: Body, choices: Choices): number {
  const girth = measureOf(body.right, 'neck base girth') + easeFor(choices, 'neckline')
  return neckWidth(girth, shoulderSlopes(body.left), shoulderSlopes(body.right))
}
