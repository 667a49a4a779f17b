import { describe, expect, it } from 'vitest'
import { inUnit } from '../../src/base/in-unit.ts'

const problem = (actual: string) => ({ code: 'x', where: {}, actual, expected: '4 mm to 76 mm', hint: '' })

describe('words with lengths in mm', () => {
  it('are said in the unit of the reader, ranges at both ends', () => {
    const said = inUnit(problem('an intake of 25.4 mm'), 'in')
    expect([said.actual, said.expected]).toEqual(['an intake of 1 in', '3/16 in to 3 in'])
    expect(inUnit(problem('from 25.4 to 76.2 mm, or 6.35–12.7 mm'), 'in').actual).toBe(
      'from 1 in to 3 in, or 1/4 in–1/2 in',
    )
    expect(inUnit(problem('0 to 25.4 mm'), 'in').actual).toBe('0 to 1 in')
    expect(inUnit(problem('25.4 mm'), 'mm').actual).toBe('25.4 mm')
  })

  it('are said in it in remedies too, what they set stays as it is', () => {
    const remedies = [{ say: 'scye depth 203.2 mm: now 177.8 mm', set: { body: { 'scye depth': '203.2 mm' } } }]
    expect(inUnit({ ...problem('x'), remedies }, 'in').remedies).toEqual([
      { say: 'scye depth 8 in: now 7 in', set: { body: { 'scye depth': '203.2 mm' } } },
    ])
  })

  it('keep mm where inches stand before them, and where a tape is too coarse', () => {
    expect(inUnit(problem('9 1/16 in (230.2 mm), ease −5/16 in (7.9 mm)'), 'in').actual).toBe(
      '9 1/16 in (230.2 mm), ease −5/16 in (7.9 mm)',
    )
    expect(inUnit(problem('within 0.5 mm'), 'in').actual).toBe('within 0.5 mm')
  })
})
