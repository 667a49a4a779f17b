import { describe, expect, test } from 'vitest'
import { formatAngle, parseAngle } from '../../src/base/angles.ts'
import { formatShare, parseShare } from '../../src/base/shares.ts'

describe('angles', () => {
  test.each([
    ['22 deg', 22],
    ['22°', 22],
    ['22 1/2 degrees', 22.5],
    ['22,5 DEG', 22.5],
    ['0 deg', 0],
  ])('%s', (text, degrees) => {
    const result = parseAngle(text)
    expect(result.ok && (result.value * 180) / Math.PI).toBeCloseTo(degrees, 12)
    expect(result.ok && formatAngle(result.value)).toBe(`${degrees} deg`)
  })

  test.each(['22', '22 in', 'steep', '22 deg 3', ''])('%s is refused', (text) => {
    const result = parseAngle(text)
    expect(!result.ok && result.problems[0]?.code).toBe('not-an-angle')
  })
})

describe('shares', () => {
  test.each([
    ['6 %', 0.06],
    ['6%', 0.06],
    ['6 1/2 percent', 0.065],
    ['6,5 %', 0.065],
  ])('%s', (text, share) => {
    const result = parseShare(text)
    expect(result.ok && result.value).toBeCloseTo(share, 15)
    expect(formatShare(share)).toMatch(/^6(\.5)? %$/)
  })

  test.each(['6', '0.06', 'some %', '%'])('%s is refused', (text) => {
    const result = parseShare(text)
    expect(!result.ok && result.problems[0]?.code).toBe('not-a-share')
  })
})
