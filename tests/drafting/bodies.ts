import type { Body, BodyHalf } from '../../src/body/body.ts'
import type { MeasureName } from '../../src/body/measure.ts'

const IN = 25.4

/** A body with the same measures left and right; mm, the shoulder slope in degrees. */
function body(measures: Readonly<Partial<Record<MeasureName, number>>>): Body {
  const half: BodyHalf = Object.fromEntries(
    Object.entries(measures).map(([name, value]) => [
      name,
      { value: name === 'shoulder slope' ? (value * Math.PI) / 180 : value, estimated: false },
    ]),
  )
  return { left: half, right: half }
}

/**
 * ASTM D5585-95 bodies, inches (from memory: plausible bodies, REFERENCES.md section 2); the front waist length is
 * common practice, back waist length plus 1 1/2 in.
 */
const D5585_95 = [
  size(34, 26, 15, 10.5, 9.625, 5.875, 14.375, 13.375, 5.0625, 16, 7.375, 7.5, 9.75, 13.5),
  size(35, 27, 15.375, 10.75, 9.75, 6, 14.625, 13.625, 5.125, 16.25, 7.5, 7.75, 10, 13.625),
  size(36, 28, 15.75, 11, 9.875, 6.125, 14.875, 13.875, 5.1875, 16.5, 7.625, 8, 10.25, 13.75),
  size(37.5, 29.5, 16.375, 11.375, 10.125, 6.25, 15.25, 14.25, 5.3125, 16.75, 7.75, 8.25, 10.625, 13.875),
  size(39, 31, 17, 11.75, 10.375, 6.375, 15.625, 14.625, 5.4375, 17, 7.875, 8.5, 11, 14),
]

function size(
  bust: number,
  waist: number,
  armscye: number,
  upperArm: number,
  elbow: number,
  wrist: number,
  crossBack: number,
  crossChest: number,
  shoulder: number,
  backWaist: number,
  scye: number,
  span: number,
  toBust: number,
  toElbow: number,
): Readonly<Partial<Record<MeasureName, number>>> {
  return {
    'neck base girth': (13.75 + (bust - 34) * 0.25) * IN,
    'shoulder length': shoulder * IN,
    'shoulder slope': 23,
    'bust girth': bust * IN,
    'waist girth': waist * IN,
    'back waist length': backWaist * IN,
    'scye depth': scye * IN,
    'back width': crossBack * IN,
    'front width': crossChest * IN,
    'front waist length': (backWaist + 1.5) * IN,
    'neck to bust point': toBust * IN,
    'bust point width': span * IN,
    'armscye girth': armscye * IN,
    'upper arm girth': upperArm * IN,
    'elbow girth': elbow * IN,
    'wrist girth': wrist * IN,
    'outer arm length': (toElbow + 9.25) * IN,
    'shoulder to elbow': toElbow * IN,
  }
}

export const SIZES: readonly Body[] = D5585_95.map(body)

/** Size 12 of the table above. */
export const SIZE_12 = SIZES[3] as Body
