import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import * as z from 'zod'
import { type CorrectionReaders, makeReaders } from '../src/base/readers.ts'
import { MEASURES } from '../src/body/measure.ts'
import { performerSchema, readPerformer } from '../src/performer-file.ts'

const corrections: CorrectionReaders = {
  names: ['let out', 'underarm reach'],
  settingsOf: (name) => {
    if (name === 'let out') {
      return (read) => {
        const place = z.union([
          read.name('landmark', ['shoulder notch', 'front notch', 'back notch']),
          z.strictObject({ line: read.text(), 'side of cap': read.name('side', ['front', 'back']) }),
        ])
        const listed = read.listOf(place)
        return z.strictObject({
          seam: read.text(),
          by: read.positiveLength(),
          at: listed.optional(),
          'taper to': listed.optional(),
        })
      }
    }
    return name === 'underarm reach'
      ? (read) => z.strictObject({ by: read.positiveLength(), 'along cap': read.positiveLength().default(38.1) })
      : undefined
  },
}

const BODY = `body:
  bust girth: 37 3/4
  waist girth: 29 7/8
  back waist length: 16 3/8
  upper arm girth: 11 3/4
  outer arm length: 22 3/4
`
const HEAD = 'performer: Lamplighter\nunits: in\n'

function read(text: string) {
  const result = readPerformer(text, 'p.yaml', corrections)
  if (!result.ok) throw new Error(JSON.stringify(result.problems, null, 1))
  return result.value
}

function problemsOf(text: string) {
  const result = readPerformer(text, 'p.yaml', corrections)
  if (result.ok) throw new Error('read without a problem')
  return result.problems
}

/** The only problem of a file. */
function problemOf(text: string) {
  const problems = problemsOf(text)
  expect(problems.map(({ code, where }) => [code, where.field])).toHaveLength(1)
  return problems[0] as (typeof problems)[number]
}

describe('a performer file', () => {
  test('with nothing but the least', () => {
    expect(read(HEAD + BODY)).toEqual({
      performer: 'Lamplighter',
      units: 'in',
      body: {
        'bust girth': expect.closeTo(958.85, 9),
        'waist girth': expect.closeTo(758.825, 9),
        'back waist length': expect.closeTo(415.925, 9),
        'upper arm girth': expect.closeTo(298.45, 9),
        'outer arm length': expect.closeTo(577.85, 9),
      },
      choices: { fit: 'close', cloth: 'muslin', opening: 'center back', ease: {} },
      allowances: { standard: { default: 25.4, neckline: 12.7 }, byMockUp: {} },
      fittings: [],
    })
  })

  test('of the demo', () => {
    const text = readFileSync(new URL('../examples/lamplighter.yaml', import.meta.url), 'utf8')
    const { fittings, production, measured, body, choices } = read(text)
    expect([production, measured]).toEqual(['The Tin Orchard', '2026-10-02'])
    expect(body['shoulder slope']).toBeCloseTo((22 * Math.PI) / 180, 12)
    expect(body['upper arm girth']).toBeCloseTo(298.45, 9)
    expect(choices.ease).toEqual({ 'upper arm': 50.8 })
    const line = text.split('\n').findIndex((l) => l.includes('do: let out')) + 1
    // Every setting has its place, entries of lists too.
    const [letOut] = fittings[0]?.corrections ?? []
    expect(letOut?.places?.by).toMatchObject({ line: line + 3, column: 13, field: 'fittings.1.corrections.1.by' })
    expect(letOut?.places?.['taper to.2']).toMatchObject({ line: line + 4, column: 37 })
    const placeless = fittings.map((fitting) => ({
      ...fitting,
      corrections: fitting.corrections.map(({ places: _, ...record }) => record),
    }))
    expect(placeless).toEqual([
      {
        label: 'first fitting',
        date: '2026-10-09',
        mockUp: 1,
        where: { file: 'p.yaml', line: line - 4, column: 5, field: 'fittings.1', fitting: 'first fitting' },
        corrections: [
          {
            do: 'let out',
            side: 'both',
            seen: 'tight over the upper arm',
            settings: {
              seam: 'cap',
              at: [
                { line: 'cap line', 'side of cap': 'front' },
                { line: 'cap line', 'side of cap': 'back' },
              ],
              by: 9.525,
              'taper to': ['shoulder notch', 'front notch', 'back notch'],
            },
            where: {
              file: 'p.yaml',
              line,
              column: 9,
              field: 'fittings.1.corrections.1',
              fitting: 'first fitting',
              correction: 1,
            },
          },
          {
            do: 'underarm reach',
            side: 'both',
            seen: 'cannot reach forward',
            settings: { by: 12.7, 'along cap': 38.1 },
            where: expect.objectContaining({ line: line + 7, correction: 2 }),
          },
        ],
      },
    ])
  })

  test('keys are case-blind and take spaces, hyphens or underscores', () => {
    const written = (HEAD + BODY)
      .replace('bust girth', 'Bust_Girth')
      .replace('waist girth', 'WAIST-GIRTH')
      .replace('body', 'Body')
    expect(read(written)).toEqual(read(HEAD + BODY))
  })

  test('left and right, two units, other units, blanks', () => {
    const { body } = read(
      HEAD +
        BODY.replace('11 3/4', '{ left: 11 3/4, right: 30.5 cm }').replace('16 3/8', '16 3/8 in (41.6 cm)') +
        '  shoulder slope: { left: 22 deg, right: 23° }\n  wrist girth: { left: 6, right: }\n  elbow girth:\n  hand girth: null\n',
    )
    expect(body['upper arm girth']).toEqual({ left: 298.45, right: 305 })
    expect(body['back waist length']).toBeCloseTo(415.925, 9)
    expect(body['wrist girth']).toEqual({ left: expect.closeTo(152.4, 9) })
    expect(Object.keys(body)).not.toContain('elbow girth')
    expect(Object.keys(body)).not.toContain('hand girth')
  })

  test('choices and allowances', () => {
    const { choices, allowances } = read(`${HEAD}${BODY}
draft:
  fit: Standing
  cloth: soft-wool
  opening: none
  ease: { upper arm: 2, cap: 32 mm, waist: -1/2 }
  bust dart: flat
  elbow intake: 1 1/4
mock-up: { allowance: { cap: 1 1/2, underarm seam: 1 1/4, neckline: 3/8 } }
mock-ups: { 2: { allowance: 3/4 }, 3: { allowance: { side seam: 2 } } }
`)
    expect(choices).toEqual({
      fit: 'standing',
      cloth: 'soft wool',
      opening: 'none',
      ease: { 'upper arm': 50.8, waist: -12.7 },
      capEase: { mm: 32 },
      bustDart: 'flat',
      elbowIntake: 31.75,
    })
    expect(allowances.standard).toEqual({
      default: 25.4,
      cap: expect.closeTo(38.1, 9),
      'underarm seam': 31.75,
      neckline: expect.closeTo(9.525, 9),
    })
    expect(allowances.byMockUp).toEqual({ 2: { default: expect.closeTo(19.05, 9) }, 3: { 'side seam': 50.8 } })
  })

  test('cap ease may be a percentage, a bust dart a length', () => {
    const { choices } = read(`${HEAD}${BODY}draft: { ease: { cap: 6 % }, bust dart: 1 }`)
    expect(choices.capEase).toEqual({ share: 0.06 })
    expect(choices.bustDart).toBe(25.4)
    expect(read(`${HEAD}${BODY}draft: { bust: flat }`).choices.bustDart).toBe('flat')
  })

  test('a fitting without a mock-up is of the previous one; voided and provisional keep their reasons', () => {
    const { fittings } = read(`${HEAD}${BODY}
fittings:
  - label: one
  - { label: two, mock-up: 2, provisional: dress form }
  - label: three
    provisional: no
    corrections:
      - { do: Let-Out, seam: cap, by: 1/4, side: left, voided: pinned on the wrong side }
      - { do: let out, seam: cap, by: 1/4, voided: no }
`)
    expect(fittings.map(({ mockUp, provisional }) => [mockUp, provisional])).toEqual([
      [1, undefined],
      [2, 'dress form'],
      [2, undefined],
    ])
    const [first, second] = fittings[2]?.corrections ?? []
    expect(first).toMatchObject({ do: 'let out', side: 'left', voided: 'pinned on the wrong side' })
    expect(second).not.toHaveProperty('voided')
  })

  test('makes a JSON Schema', () => {
    const schema = z.toJSONSchema(performerSchema(makeReaders('in'), corrections), { io: 'input' })
    expect(schema).toMatchObject({
      type: 'object',
      required: ['performer', 'units', 'body'],
      additionalProperties: false,
    })
    expect(JSON.stringify(schema)).toContain('"center front"')
  })
})

describe('one thing wrong', () => {
  test('a required measure is missing: placed at body, with how to take it', () => {
    const problem = problemOf(HEAD + BODY.replace('  waist girth: 29 7/8\n', ''))
    expect(problem).toMatchObject({
      code: 'missing',
      where: { file: 'p.yaml', line: 3, column: 1, field: 'body.waist girth' },
      actual: 'no waist girth',
      hint: `measure it: ${MEASURES['waist girth'].how}`,
    })
  })

  test('a required measure is blank, or there on one side only', () => {
    expect(problemOf(HEAD + BODY.replace('29 7/8', ''))).toMatchObject({
      code: 'missing',
      where: { line: 5, column: 3, field: 'body.waist girth' },
    })
    expect(problemOf(HEAD + BODY.replace('11 3/4', '{ left: 11 3/4 }'))).toMatchObject({
      code: 'missing',
      where: { line: 7, column: 3, field: 'body.upper arm girth.right' },
      actual: 'no right upper arm girth',
    })
  })

  test.each<[string, string, string, string, number, number, RegExp]>([
    ['a word for a length', '37 3/4', 'wide', 'not-a-length', 4, 15, /37|15 1\/2/],
    ['one number too many', '37 3/4', '37 3/4 2', 'not-a-length', 4, 15, /write a number/],
    ['two units that disagree', '37 3/4', '37 3/4 in (90 cm)', 'units-disagree', 4, 15, /tape/],
    ['a length below zero', '37 3/4', '-3', 'length-out-of-range', 4, 15, /minus/],
    ['a list for a length', '37 3/4', '[1, 2]', 'wrong-shape', 4, 15, /a length above zero/],
    ['an unknown unit for the file', 'units: in', 'units: furlong', 'unknown-unit', 2, 8, /in, cm or mm/],
    ['an unknown section', 'units: in', 'units: in\nfitting: x', 'unknown-key', 3, 1, /did you mean "fittings"/],
    [
      'a misspelt measure',
      'bust girth: 37 3/4',
      'bust girth: 37\n  bakc width: 3',
      'unknown-key',
      5,
      3,
      /"back width"/,
    ],
    ['the hip', 'bust girth: 37 3/4', 'bust girth: 37\n  hip girth: 40', 'unknown-key', 5, 3, /ends at the waist/],
    ['a measure without sides', '29 7/8', '{ left: 15, right: 15 }', 'measure-without-sides', 5, 16, /one length/],
    ['a third side', '11 3/4', '{ left: 11, right: 12, middle: 13 }', 'unknown-key', 7, 43, /names above/],
    ['no performer', 'performer: Lamplighter\n', '', 'missing', 1, 1, /role or a code/],
    ['no units', 'units: in\n', '', 'missing', 1, 1, /in, cm or mm/],
    ['a blank performer', 'Lamplighter', '', 'missing', 1, 1, /role or a code/],
    ['no body', BODY, '', 'missing', 1, 1, /scye begin/],
    ['a body that is none', BODY, 'body: tall\n', 'wrong-shape', 3, 7, /measures by name/],
  ])('%s', (_, from, to, code, line, column, hint) => {
    const text = (HEAD + BODY).replace(from, to)
    expect(text).not.toBe(HEAD + BODY)
    const problem = problemOf(text)
    expect([problem.code, problem.where.file, problem.where.line, problem.where.column]).toEqual([
      code,
      'p.yaml',
      line,
      column,
    ])
    expect(problem.hint).toMatch(hint)
  })

  test('across back means two things: both are offered (CASES 24)', () => {
    const problem = problemOf(`${HEAD}${BODY}  Across-Back: 14\n`)
    expect(problem).toMatchObject({ code: 'across-back', where: { line: 9, column: 3 } })
    expect(problem.expected).toMatch(/back width .*shoulder width/)
  })

  test.each<[string, string, string, number, number, RegExp]>([
    ['a fit', 'draft: { fit: closed }', 'unknown-name', 9, 15, /"close"/],
    ['a cloth', 'draft: { cloth: jersey }', 'unknown-name', 9, 17, /muslin/],
    ['an ease', 'draft: { ease: { upper amr: 2 } }', 'unknown-key', 9, 18, /"upper arm"/],
    ['an ease in words', 'draft: { ease: { waist: some } }', 'not-a-length', 9, 25, /write a number/],
    ['a dart and flat', 'draft: { bust: flat, bust dart: 1 }', 'choices-disagree', 9, 8, /take out/],
    ['an allowance', 'mock-up: { allowance: { hem: 1 } }', 'unknown-key', 9, 25, /names above/],
    ['a negative allowance', 'mock-up: { allowance: { cap: -1 } }', 'length-out-of-range', 9, 30, /minus/],
    [
      'a mock-up without a number',
      'mock-ups: { second: { allowance: 1 } }',
      'unknown-key',
      9,
      13,
      /number of a mock-up/,
    ],
  ])('%s', (_, line, code, row, column, hint) => {
    const problem = problemOf(HEAD + BODY + line)
    expect([problem.code, problem.where.line, problem.where.column]).toEqual([code, row, column])
    expect(problem.hint).toMatch(hint)
  })

  test.each<[string, string, string, string, number, number, RegExp]>([
    ['a correction', 'do: let uot, seam: cap, by: 1', 'unknown-name', 'do', 12, 15, /"let out"/],
    ['no correction at all', 'seam: cap', 'missing', 'do', 12, 9, /do/],
    ['an amount in words', 'do: let out, seam: cap, by: much', 'not-a-length', 'by', 12, 39, /write a number/],
    ['no amount', 'do: let out, seam: cap', 'missing', 'by', 12, 9, /by/],
    ['a blank amount', 'do: let out, seam: cap, by: ', 'missing', 'by', 12, 35, /by/],
    [
      'a setting',
      'do: let out, seam: cap, by: 1, tapper to: front notch',
      'unknown-key',
      'tapper to',
      12,
      42,
      /"taper to"/,
    ],
    ['a common setting', 'do: let out, seam: cap, by: 1, sdie: left', 'unknown-key', 'sdie', 12, 42, /"side"/],
    ['a side', 'do: let out, seam: cap, by: 1, side: lefft', 'unknown-name', 'side', 12, 48, /"left"/],
    [
      'a place',
      'do: let out, seam: cap, by: 1, at: [front notch, bak notch]',
      'unknown-name',
      'at.2',
      12,
      60,
      /"back notch"/,
    ],
    [
      'a place with parts',
      'do: let out, seam: cap, by: 1, at: { line: cap line, side of cap: bck }',
      'unknown-name',
      'at.side of cap',
      12,
      77,
      /"back"/,
    ],
    ['no reason', 'do: let out, seam: cap, by: 1, voided: yes', 'reason-missing', 'voided', 12, 50, /reason/],
  ])('in a fitting: %s', (_, written, code, field, line, column, hint) => {
    const problem = problemOf(
      `${HEAD}${BODY}fittings:\n  - label: first fitting\n    corrections:\n      - { ${written} }\n`,
    )
    expect(problem).toMatchObject({
      code,
      where: { line, column, field: `fittings.1.corrections.1.${field}`, fitting: 'first fitting', correction: 1 },
    })
    expect(problem.hint).toMatch(hint)
  })

  test.each<[string, string, string, number, number]>([
    ['two with one label', '  - label: one\n  - label: one\n', 'duplicate-label', 11, 12],
    ['no label', '  - date: 2026-10-09\n', 'missing', 10, 5],
    ['no such day', '  - { label: one, date: 2026-02-30 }\n', 'not-a-date', 10, 25],
    ['no such mock-up', '  - { label: one, mock-up: first }\n', 'not-a-count', 10, 28],
    ['no list', '  label: one\n', 'wrong-shape', 10, 3],
    ['no section', '  - one\n', 'wrong-shape', 10, 5],
  ])('fittings: %s', (_, written, code, line, column) => {
    const problem = problemOf(`${HEAD}${BODY}fittings:\n${written}`)
    expect([problem.code, problem.where.line, problem.where.column]).toEqual([code, line, column])
  })

  test.each([
    ['an empty file', '', 'empty-file'],
    ['a binary file', '\u0000\u0001\u0002', 'not-text'],
    ['a list', '- 1\n', 'not-a-performer'],
    ['a letter', 'Dear cutter\n', 'not-a-performer'],
    ['a key twice', `${HEAD}units: cm\n${BODY}`, 'duplicate-key'],
  ])('%s', (_, text, code) => {
    expect(problemOf(text)).toMatchObject({
      code,
      where: { file: 'p.yaml', line: expect.any(Number), column: expect.any(Number) },
    })
  })
})

test('everything wrong is said at once, in the order of the file', () => {
  const problems = problemsOf(`units: inches
wide: 3
body:
  bust girth: long
  waist girth: 29 7/8 in (80 cm)
  across back: 14
draft: { fit: closed }
fittings:
  - label: first
    date: 2026-13-09
    corrections:
      - { do: let uot }
      - { do: let out, by: tight, att: 4 }
`)
  expect(problems.map(({ code, where }) => `${where.line}:${where.column} ${code} ${where.field}`)).toEqual([
    '1:1 missing performer',
    '2:1 unknown-key wide',
    '3:1 missing body.back waist length',
    '3:1 missing body.upper arm girth',
    '3:1 missing body.outer arm length',
    '4:15 not-a-length body.bust girth',
    '5:16 units-disagree body.waist girth',
    '6:3 across-back body.across back',
    '7:15 unknown-name draft.fit',
    '10:11 not-a-date fittings.1.date',
    '12:15 unknown-name fittings.1.corrections.1.do',
    '13:9 missing fittings.1.corrections.2.seam',
    '13:28 not-a-length fittings.1.corrections.2.by',
    '13:35 unknown-key fittings.1.corrections.2.att',
  ])
})

describe('what a spoilt file once did', () => {
  test('a measure named like a part of the language threw', () => {
    for (const key of ['constructor', 'toString', '__proto__', 'hasOwnProperty']) {
      const problem = problemOf(`${HEAD}${BODY}  ${key}: 14\n`)
      expect(problem.code).toBe('unknown-key')
      expect(typeof problem.hint).toBe('string')
    }
  })

  test('letters that act on a terminal went through names and remarks', () => {
    for (const written of ['"Lamp\\e[31mlighter"', '"\\0"', '"\\u202eLamplighter"', '"\\ud800"', '"a\\x07"']) {
      const problem = problemOf(`performer: ${written}\nunits: in\n${BODY}`)
      expect(problem).toMatchObject({ code: 'not-printable', where: { line: 1, column: 12 } })
      expect(problem.actual).toMatch(/\[U\+[0-9A-F]{4}\]/)
      expect(problem.actual).not.toMatch(/[\p{Cc}\p{Cs}\u202e]/u)
    }
    expect(read(`performer: "Lamp\\n\\tlighter"\nunits: in\n${BODY}`).performer).toBe('Lamp lighter')
  })

  test('a value or a key of 80,000 letters came back whole', () => {
    const long = 'x'.repeat(80_000)
    for (const text of [`${HEAD}${BODY.replace('37 3/4', long)}`, `${HEAD}${BODY}  ${'k'.repeat(900)}: 1\n`]) {
      const { actual, where } = problemOf(text)
      expect(actual.length).toBeLessThan(300)
      expect(where.field?.length).toBeLessThan(200)
    }
    expect(problemOf(`performer: ${long}\nunits: in\n${BODY}`)).toMatchObject({ code: 'text-too-long' })
  })

  test('a key misspelt, or a reference, was missing as well', () => {
    expect(problemOf(`${HEAD}${BODY.replace('waist girth', 'wasit girth')}`).code).toBe('unknown-key')
    expect(problemOf(`${HEAD}${BODY.replace('37 3/4', '*a').replace('29 7/8', '&a 29')}`).code).toBe('not-yaml')
  })

  test('a key twice hid everything else', () => {
    const problems = problemsOf(`${HEAD}units: cm\n${BODY.replace('37 3/4', 'large')}`)
    expect(problems.map(({ code }) => code)).toEqual(['duplicate-key', 'not-a-length'])
  })
})
