import { describe, expect, test } from 'vitest'
import * as z from 'zod'
import { makeReaders, type Reader } from '../../src/base/readers.ts'

const read = makeReaders('in')

function value(reader: Reader<unknown>, text: string | number) {
  return reader.parse(text)
}

function params(reader: z.ZodType, text: unknown) {
  const result = reader.safeParse(text)
  const issue = result.error?.issues[0]
  return issue?.code === 'custom' ? issue.params : issue?.code
}

describe('readers', () => {
  test.each<[string, Reader<unknown>, string | number, unknown]>([
    ['a length in the unit of the file', read.length(), '1 1/2', 38.1],
    ['a negative length', read.length(), '-1', -25.4],
    ['a number of a program', read.length(), 0.1 + 0.2, 7.62],
    ['a length above zero', read.positiveLength(), '3/8', 9.525],
    ['zero', read.lengthFromZero(), '0', 0],
    ['an angle', read.angle(), '180 deg', Math.PI],
    ['a share', read.share(), '6 %', 0.06],
    ['a length where a share may be', read.lengthOrShare(), '32 mm', { mm: 32 }],
    ['a share where a length may be', read.lengthOrShare(), '6 %', { share: 0.06 }],
    ['a count', read.count(), '2', 2],
    ['yes', read.flag(), 'Yes', true],
    ['no', read.flag(), 'no', false],
    ['words', read.text(), ' tight ', 'tight'],
    ['a leap day', read.date(), '2028-02-29', '2028-02-29'],
    ['a name', read.name('side', ['front notch', 'back notch']), 'Front-Notch', 'front notch'],
    ['one for a list', read.listOf(read.length()) as Reader<unknown>, '1', [25.4]],
  ])('%s', (_, reader, text, expected) => {
    expect(value(reader, text)).toEqual(expected)
  })

  test.each<[string, z.ZodType, unknown, string]>([
    ['zero is not above zero', read.positiveLength(), '0', 'length-out-of-range'],
    ['a minus', read.lengthFromZero(), '-1 mm', 'length-out-of-range'],
    ['a negative share of ease', read.lengthOrShare(), '-6 %', 'length-out-of-range'],
    ['half a mock-up', read.count(), '1/2', 'not-a-count'],
    ['mock-up nought', read.count(), '0', 'not-a-count'],
    ['perhaps', read.flag(), 'perhaps', 'not-yes-or-no'],
    ['blanks', read.text(), '  ', 'empty-text'],
    ['no leap day', read.date(), '2026-02-29', 'not-a-date'],
    ['the 100th year has none', read.date(), '2100-02-29', 'not-a-date'],
    ['a day written the other way', read.date(), '09.10.2026', 'not-a-date'],
    ['a misspelt name', read.name('side', ['left', 'right']), 'lefft', 'unknown-name'],
  ])('%s is refused in words', (_, reader, text, code) => {
    expect(params(reader, text)).toMatchObject({ code, actual: expect.any(String), hint: expect.any(String) })
  })

  test('an empty list, a blank and a section are no value', () => {
    expect(params(read.listOf(read.length()), [])).toBe('too_small')
    expect(params(read.length(), null)).toBe('invalid_union')
    expect(params(read.length(), {})).toBe('invalid_union')
  })

  test('make a JSON Schema of what is written', () => {
    const settings = z.strictObject({
      by: read.positiveLength(),
      side: read.name('side', ['left', 'right']).default('left'),
      at: read.listOf(read.text()).optional(),
    })
    expect(z.toJSONSchema(settings, { io: 'input' })).toMatchObject({
      type: 'object',
      required: ['by'],
      additionalProperties: false,
      properties: {
        by: {
          anyOf: [
            { type: 'number', exclusiveMinimum: 0 },
            { type: 'string', pattern: expect.any(String) },
          ],
          description: expect.stringContaining('1 1/2 in'),
        },
        side: { anyOf: [{ enum: ['left', 'right'] }, { type: 'string', pattern: expect.stringContaining('[rR]') }] },
        at: { anyOf: [{ type: 'array', minItems: 1 }, {}] },
      },
    })
  })
})
