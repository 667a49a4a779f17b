import { describe, expect, it } from 'vitest'
import { isMet } from './bench/bench-case.ts'
import { benchCases } from './bench/cases.ts'
import { median, timeSideBySide } from './bench/side-by-side.ts'
import { SIZES } from './drafting/bodies.ts'

const CASES = benchCases(SIZES).map(
  (one) => [`${one.name}${one.theirs ? ` beside ${one.theirs.library}` : ''}`, one] as const,
)

describe('the bench measures the same thing on both sides', () => {
  it.each(CASES)('%s', (_, { agree, count }) => {
    const { apart, within, what } = agree()
    expect(apart, what).toBeLessThanOrEqual(within)
    expect(count).toBeGreaterThan(0)
  })
})

describe('how it measures', () => {
  const sumTo = (n: number) => () => {
    let sum = 0
    for (let k = 1; k <= n; k++) sum += Math.sqrt(k)
    return sum
  }

  it('finds that ten times the work takes several times as long', () => {
    const [short, long] = timeSideBySide([sumTo(2000), sumTo(20000)], { warmUp: 20, budget: 60 }) as [
      number[],
      number[],
    ]
    expect(short).toHaveLength(long.length)
    expect(median(long) / median(short)).toBeGreaterThan(4)
  })

  it('does not take work that makes no number', () => {
    expect(() => timeSideBySide([() => Number.NaN], { warmUp: 1, budget: 1 })).toThrow('no number')
  })

  it('says what is met', () => {
    expect(median([3, 1, 2])).toBe(2)
    expect(median([4, 1, 2, 3])).toBe(2.5)
    expect(isMet({ ratio: 1.5 }, 9, 1.5)).toBe(true)
    expect(isMet({ ratio: 1.5 }, 9, 1.51)).toBe(false)
    expect(isMet({ milliseconds: 1 }, 1.1, undefined)).toBe(false)
    expect(isMet(undefined, 1, 1)).toBeUndefined()
  })
})
