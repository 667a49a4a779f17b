import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { formatLength } from '../../src/base/format-length.ts'
import { parseLength } from '../../src/base/lengths.ts'
import { LENGTH_UNITS, type LengthUnit } from '../../src/base/units.ts'

const IN = 25.4

function mm(text: string, unit: LengthUnit = 'in'): number {
  const result = parseLength(text, unit)
  if (!result.ok) throw new Error(`${text}: ${result.problems[0]?.actual}`)
  return result.value
}

function fault(text: string, unit: LengthUnit = 'in') {
  const result = parseLength(text, unit)
  if (result.ok) throw new Error(`"${text}" was read as ${result.value} mm`)
  expect(result.problems).toHaveLength(1)
  return result.problems[0] as (typeof result.problems)[number]
}

describe('what people type (CASES 25)', () => {
  test.each<[string, LengthUnit, number]>([
    ['15½″', 'mm', 15.5 * IN],
    ['15 1/2"', 'mm', 15.5 * IN],
    ['15-1/2 in', 'mm', 15.5 * IN],
    ['15 1/2 in.', 'mm', 15.5 * IN],
    ['15 1⁄2 inches', 'mm', 15.5 * IN],
    ['15–½ Inch', 'mm', 15.5 * IN],
    ["15½''", 'mm', 15.5 * IN],
    ['15½”', 'mm', 15.5 * IN],
    ['15 ½', 'in', 15.5 * IN],
    ['15\u00a01/2', 'in', 15.5 * IN],
    ['15.5', 'in', 15.5 * IN],
    ['15,5 cm', 'in', 155],
    ['39.4 cm', 'in', 394],
    ['39,4cm', 'in', 394],
    ['39,4', 'cm', 394],
    ['394 mm', 'in', 394],
    ['394', 'mm', 394],
    ['⅝', 'in', 0.625 * IN],
    ['2½', 'in', 2.5 * IN],
    ['3/8', 'in', 0.375 * IN],
    ['.5 in', 'mm', 0.5 * IN],
    ['0,125 in', 'mm', 0.125 * IN],
    ['-3/8', 'in', -0.375 * IN],
    ['−1½', 'in', -1.5 * IN],
    ['0', 'in', 0],
    ['015', 'in', 15 * IN],
    ['15 1/2 in (39.4 cm)', 'mm', 15.5 * IN],
    ['39.4 cm (15½″)', 'in', 394],
    ['15 1/2 (394 mm)', 'in', 15.5 * IN],
    ['15⅞', 'in', 15.875 * IN],
    ['1⅔ in', 'mm', (5 / 3) * IN],
  ])('%s, a plain number in %s', (text, unit, expected) => {
    expect(mm(text, unit)).toBeCloseTo(expected, 10)
  })

  test('fractions are exact: eight eighths are an inch, to the last bit', () => {
    for (let n = 1; n < 64; n++) expect(mm(`${n}/64 in`) * 64).toBeCloseTo(n * IN, 12)
    expect(mm('1/8 in') * 8).toBe(25.4)
    expect(mm('3/8')).toBe(9.525)
  })
})

describe('what must not be guessed', () => {
  test.each([
    ['15 1/2 3', 'not-a-length', /more, or less, than one number/, /15 1\/2/],
    ['15 1/2 in 3', 'not-a-length', /./, /./],
    ['15 - 1/2', 'not-a-length', /more, or less/, /15-1\/2/],
    ['11/2', 'not-a-length', /one or more/, /1 1\/2 or 5 1\/2/],
    ['3/2', 'not-a-length', /one or more/, /1 1\/2/],
    ['15 1/0', 'not-a-length', /zero/, /1\/2/],
    ['1,000', 'not-a-length', /thousands or decimals/, /1\.000 or 1000/],
    ['1.2.3', 'not-a-length', /more, or less/, /./],
    ['15½½', 'not-a-length', /more, or less/, /./],
    ['15.5 1/2', 'not-a-length', /more, or less/, /./],
    ['12:30', 'not-a-length', /not a number/, /./],
    ['no', 'not-a-length', /not a number/, /./],
    ['1e3', 'not-a-length', /not a number/, /./],
    ['in', 'not-a-length', /not a number/, /./],
    ['', 'not-a-length', /nothing/, /./],
    ['wide', 'not-a-length', /"wide" is not a number/, /./],
    ['1234567890123', 'not-a-length', /more digits/, /12 digits/],
    ['3 ft', 'unknown-unit', /"ft"/, /inches/],
    [`5' 3"`, 'not-a-length', /has feet/, /inches/],
    ['1.5 m', 'unknown-unit', /"m"/, /cm or mm/],
    ['15 px', 'unknown-unit', /"px"/, /in, cm or mm/],
    ['15 constructor', 'unknown-unit', /"constructor"/, /in, cm or mm/],
    ['15 1/2 in (39.4)', 'unknown-unit', /no unit/, /in, cm or mm/],
    ['15 in (38.5 cm)', 'units-disagree', /381 mm and 385 mm/, /tape/],
    ['10 in (333 mm)', 'units-disagree', /254 mm and 333 mm/, /tape/],
  ])('%s', (text, code, actual, hint) => {
    const problem = fault(text)
    expect(problem.code).toBe(code)
    expect(problem.actual).toMatch(actual)
    expect(problem.hint).toMatch(hint)
  })

  test('two readings agree to 1 %, and not beyond', () => {
    expect(mm('100 mm (10.1 cm)')).toBe(100)
    expect(mm('100 mm (9.9 cm)')).toBe(100)
    expect(fault('100 mm (10.11 cm)').code).toBe('units-disagree')
    expect(fault('100 mm (9.89 cm)').code).toBe('units-disagree')
  })
})

describe('properties', () => {
  const mixed = fc
    .tuple(fc.integer({ min: 0, max: 99 }), fc.integer({ min: 1, max: 64 }), fc.constantFrom(2, 3, 4, 8, 16, 32, 64))
    .filter(([, over, under]) => over < under)

  test('every way of writing a mixed number is the same length, exact to the last bit', () => {
    fc.assert(
      fc.property(mixed, ([whole, over, under]) => {
        const plain = mm(`${whole} ${over}/${under} in`, 'mm')
        // Whole numbers up to here: 5 · under · mm is exact, but for the rounding of mm itself.
        expect(Math.abs(plain * 5 * under - (whole * under + over) * 127)).toBeLessThan(plain * 5 * under * 2.3e-16)
        for (const text of [
          `${whole}-${over}/${under}"`,
          ` ${whole}  ${over} / ${under}  INCHES `,
          `${whole} ${over}⁄${under}″`,
        ]) {
          expect(mm(text, 'mm')).toBe(plain)
        }
      }),
    )
  })

  test('a number too many is never lost', () => {
    fc.assert(
      fc.property(mixed, fc.integer({ min: 0, max: 99 }), ([whole, over, under], more) => {
        expect(fault(`${whole} ${over}/${under} ${more}`).code).toBe('not-a-length')
        expect(fault(`${more} ${whole} ${over}/${under}`).code).toBe('not-a-length')
      }),
    )
  })

  test('any text is a finite length or one problem with words, never a throw', () => {
    const typed = fc.string({ unit: fc.constantFrom(...'0123456789 /-.,½⅝″"\'()incmf'), maxLength: 14 })
    fc.assert(
      fc.property(fc.oneof(typed, fc.string()), fc.constantFrom(...LENGTH_UNITS), (text, unit) => {
        const result = parseLength(text, unit)
        if (result.ok) expect(Number.isFinite(result.value)).toBe(true)
        else expect(result.problems.every((p) => p.actual !== '' && p.expected !== '' && p.hint !== '')).toBe(true)
      }),
      { numRuns: 2000 },
    )
  })

  test.each<[LengthUnit, number]>([
    ['in', IN / 32],
    ['cm', 0.05],
    ['mm', 0.05],
  ])('written in %s and read again, a length stays within half a step', (unit, half) => {
    fc.assert(
      fc.property(fc.double({ min: -3000, max: 3000, noNaN: true }), (length) => {
        const written = formatLength(length, unit)
        const again = mm(written, unit)
        expect(Math.abs(again - length)).toBeLessThanOrEqual(half + 1e-9)
        expect(formatLength(again, unit)).toBe(written)
      }),
    )
  })
})

describe('formatLength', () => {
  test.each<[number, LengthUnit, string]>([
    [15.5 * IN, 'in', '15 1/2 in'],
    [9.525, 'in', '3/8 in'],
    [-9.525, 'in', '-3/8 in'],
    [0.1, 'in', '0 in'],
    [-0.1, 'in', '0 in'],
    [25.3, 'in', '1 in'],
    [15.0625 * IN, 'in', '15 1/16 in'],
    [393.7, 'mm', '393.7 mm'],
    [394, 'mm', '394 mm'],
    [-0.01, 'mm', '0 mm'],
    [394, 'cm', '39.4 cm'],
    [9.525, 'cm', '0.95 cm'],
  ])('%s mm in %s is %s', (length, unit, expected) => {
    expect(formatLength(length, unit)).toBe(expected)
  })

  test('refuses what is no length', () => {
    expect(() => formatLength(Number.NaN, 'in')).toThrow(RangeError)
  })
})
