import fc from 'fast-check'
import { expect, test } from 'vitest'
import { nearestName, normaliseName } from '../../src/base/names.ts'
import { MEASURE_NAMES } from '../../src/body/measure.ts'

test('case, spaces, hyphens and underscores are one', () => {
  for (const text of ['Bust Girth', 'bust-girth', 'BUST_GIRTH', ' bust   girth ', 'bust - girth']) {
    expect(normaliseName(text)).toBe('bust girth')
  }
})

test.each([
  ['bakc width', 'back width'],
  ['bust grith', 'bust girth'],
  ['girth waist', 'waist girth'],
  ['wrist-girt', 'wrist girth'],
  ['Elbow_Girth', 'elbow girth'],
])('%s most likely means %s', (typed, meant) => {
  expect(nearestName(typed, MEASURE_NAMES)).toBe(meant)
})

// Each a measure of its own: a suggestion would be wrong.
test.each(['hip girth', 'shoulder width', 'inseam', 'chest', 'knee'])('%s is near to nothing', (typed) => {
  expect(nearestName(typed, MEASURE_NAMES)).toBeUndefined()
})

test('one slip of the finger is always found again', () => {
  fc.assert(
    fc.property(fc.constantFrom(...MEASURE_NAMES), fc.nat(1000), (name, n) => {
      const at = n % (name.length - 1)
      const swapped = name.slice(0, at) + name.charAt(at + 1) + name.charAt(at) + name.slice(at + 2)
      const dropped = name.slice(0, at) + name.slice(at + 1)
      expect(nearestName(swapped, MEASURE_NAMES)).toBe(name)
      // `wist girth` is as near to the waist as to the wrist: any name that loses a letter to become it will do.
      const losing = (other: string) => [...other].some((_, i) => other.slice(0, i) + other.slice(i + 1) === dropped)
      expect(MEASURE_NAMES.filter(losing)).toContain(nearestName(dropped, MEASURE_NAMES))
    }),
    { numRuns: 1000 },
  )
})
