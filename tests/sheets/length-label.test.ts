import { expect, test } from 'vitest'
import { lengthLabel } from '../../src/sheets/length-label.ts'

test.each([
  [25.4, 'in', '1″'],
  [12.7, 'in', '½″'],
  [9.525, 'in', '⅜″'],
  [41.275, 'in', '1⅝″'],
  [4.7625, 'in', '3⁄16″'],
  [30.1625, 'in', '1 3⁄16″'],
  [-3.175, 'in', '−⅛″'],
  [0, 'in', '0″'],
  [25, 'cm', '2.5 cm'],
  [-9.525, 'mm', '−9.5 mm'],
] as const)('%f mm in %s reads %s', (mm, units, text) => {
  expect(lengthLabel(mm, units)).toBe(text)
})
